/** What is typed in "Go away", and the plan that follows from it. */

import type { BatchRow, Loaded } from "../src/app/contract.ts";
import { dayFromIso } from "../src/core/calendar.ts";
import { nameKey } from "../src/core/cell.ts";
import { type Due, dueList } from "../src/core/due.ts";
import { type DueSetting, dueRules } from "../src/core/due-rules.ts";
import { type EventRule, eventRule } from "../src/core/events.ts";
import { type SitterPlan, sitterPlan } from "../src/core/sitter.ts";
import { isRecord, textOf } from "./drafts.ts";
import { mixedBatches } from "./testing.ts";
import { typedNumber } from "./typed.ts";

export interface SitterDraft {
  /** ISO days; "" until chosen. */
  readonly from: string;
  readonly to: string;
  readonly sitter: string;
  /** Days from one visit to the next, as chosen. */
  readonly every: string;
  /** Places that are left out; "" stands for plants without one. */
  readonly without: readonly string[];
  readonly filledBefore: boolean;
  /** Id of the batch in the can; "" for the newest, "plain" for plain water. */
  readonly batch: string;
  /** How the household can be reached, as it stands on the page. */
  readonly reach: string;
}

export const PLAIN = "plain";
/** A longer absence than this is no holiday, and its page no page. */
const MOST_DAYS = 120;

export const freshSitter = (): SitterDraft => ({
  from: "",
  to: "",
  sitter: "",
  every: "3",
  without: [],
  filledBefore: true,
  batch: "",
  reach: "",
});

export function readSitter(kept: unknown): SitterDraft | null {
  if (!isRecord(kept)) return null;
  const without = Array.isArray(kept.without) ? kept.without.filter((each) => typeof each === "string") : [];
  return {
    from: textOf(kept, "from"),
    to: textOf(kept, "to"),
    sitter: textOf(kept, "sitter"),
    every: textOf(kept, "every", "3"),
    without,
    filledBefore: kept.filledBefore !== false,
    batch: textOf(kept, "batch"),
    reach: textOf(kept, "reach"),
  };
}

export interface Span {
  readonly fromDay: number;
  readonly toDay: number;
}

/** The days away, or the sentence that says what is missing. */
export function spanOf(draft: SitterDraft): Span | string {
  const [fromDay, toDay] = [dayFromIso(draft.from), dayFromIso(draft.to)];
  if (fromDay === null || toDay === null) return "Choose the first and the last day away.";
  if (toDay < fromDay) return "The last day away lies before the first one. Choose a later one.";
  if (toDay - fromDay >= MOST_DAYS) return `That is more than ${MOST_DAYS} days. Choose a shorter time.`;
  return { fromDay, toDay };
}

/** A rule of Settings: its number, "off", or null where it is blank or cannot be read. */
function ruleIn(settings: Readonly<Record<string, string>>, { setting, unit, max }: DueSetting): number | "off" | null {
  const found = Object.entries(settings).find(([name]) => nameKey(name) === nameKey(setting));
  const text = found?.[1].trim() ?? "";
  if (/^(?:off|never|no)$/i.test(text)) return "off";
  return typedNumber(text, { what: setting, unit, min: 0, max }).value;
}

export interface Sitting extends Span {
  readonly plan: SitterPlan;
  /** Flushes, changes and the like that fall due before the household is back. */
  readonly beforeYouGo: readonly Due[];
  /** null for plain water. */
  readonly batch: BatchRow | null;
}

/** Day numbers of the log; rows whose date cannot be read are told of by the load. */
export function careRows(loaded: Pick<Loaded, "care">) {
  return loaded.care.rows.flatMap((row) => {
    const day = dayFromIso(row.day);
    return day === null ? [] : [{ ...row, day }];
  });
}

export const rulesOfEvents = (loaded: Pick<Loaded, "events">): EventRule => eventRule(loaded.events);

/** Mixed batches, the newest first. */
export function newestBatches({ batches }: Pick<Loaded, "batches">): readonly (BatchRow & { readonly day: string })[] {
  return mixedBatches(batches).reverse();
}

export function chosenBatch(draft: SitterDraft, loaded: Pick<Loaded, "batches">): BatchRow | null {
  if (draft.batch === PLAIN) return null;
  const mixed = newestBatches(loaded);
  return mixed.find(({ id }) => id === draft.batch) ?? mixed[0] ?? null;
}

export function planSitting(draft: SitterDraft, loaded: Loaded, { fromDay, toDay }: Span): Sitting {
  const today = dayFromIso(loaded.today) ?? fromDay;
  const out = new Set(draft.without.map(nameKey));
  const plants = loaded.plants.filter(({ place }) => !out.has(nameKey(place)));
  const [rows, events] = [careRows(loaded), rulesOfEvents(loaded)];
  const rules = dueRules((setting) => ruleIn(loaded.settings, setting));
  const plan = sitterPlan({
    plants,
    rows,
    events,
    todayDay: Math.min(today, fromDay),
    fromDay,
    toDay,
    everyDays: Number(draft.every),
    filledBefore: draft.filledBefore,
    topUpDays: rules.topUpDays,
  });
  const due = dueList({ plants: plants.map(({ plant }) => plant), rows, events, asOfDay: toDay, rules });
  return {
    fromDay,
    toDay,
    plan,
    beforeYouGo: due.filter((each) => each.due !== "Top up" && each.due !== "Look again"),
    batch: chosenBatch(draft, loaded),
  };
}
