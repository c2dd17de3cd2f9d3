/** The draft of a batch: what was chosen and typed, and the id of its row. */

import type { RequestFor } from "../src/app/contract.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { Worked } from "./batch.ts";
import { type BatchChemistry, withAcid } from "./batch-chemistry.ts";
import { isRecord, textOf, textsOf } from "./drafts.ts";
import type { NewId } from "./ids.ts";
import { typedDay } from "./typed.ts";

export interface BatchDraft {
  /** Of the row, made once and kept until it is in the log. */
  readonly id: string;
  /** "target": doses are worked out; "doses": they are typed. */
  readonly mode: "target" | "doses";
  /** Keys of the choices. */
  readonly water: string;
  readonly target: string;
  /** Names of the chosen feeds. */
  readonly feeds: readonly string[];
  readonly litres: string;
  /** Feed → dose and unit as typed. */
  readonly doses: Readonly<Record<string, string>>;
  readonly units: Readonly<Record<string, string>>;
  /** ISO day, "" for today. */
  readonly day: string;
  readonly note: string;
  /** True from when the row is in the log until another batch is begun. */
  readonly logged: boolean;
}

export function freshBatch(newId: NewId): BatchDraft {
  return {
    id: newId(),
    mode: "target",
    water: "",
    target: "",
    feeds: [],
    litres: "",
    doses: {},
    units: {},
    day: "",
    note: "",
    logged: false,
  };
}

export function readBatch(kept: unknown): BatchDraft | null {
  if (!isRecord(kept) || !/^[a-z0-9-]{8,64}$/.test(textOf(kept, "id"))) return null;
  return {
    id: textOf(kept, "id"),
    mode: kept.mode === "doses" ? "doses" : "target",
    water: textOf(kept, "water"),
    target: textOf(kept, "target"),
    feeds: Array.isArray(kept.feeds) ? kept.feeds.filter((name): name is string => typeof name === "string") : [],
    litres: textOf(kept, "litres"),
    doses: textsOf(kept.doses),
    units: textsOf(kept.units),
    day: textOf(kept, "day"),
    note: textOf(kept, "note"),
    logged: kept.logged === true,
  };
}

/** The next batch: the choices stay, as most people mix the same again; what belongs to one batch goes. */
export function nextBatch(draft: BatchDraft, newId: NewId): BatchDraft {
  return { ...draft, id: newId(), day: "", note: "", logged: false };
}

/** The request for what is worked out now, or the sentence that says what is missing. */
export function makeBatch(
  draft: BatchDraft,
  worked: Worked,
  { who, today, chemistry }: { who: string; today: string; chemistry: BatchChemistry },
): RequestFor<"log batch"> | string {
  if (who === "") return "Type your name first, so that the log can say who did this.";
  const wrongDose = Object.values(worked.doses).find(({ problem }) => problem !== null)?.problem ?? null;
  const problem = worked.missing ?? worked.problem ?? wrongDose ?? worked.litres.problem;
  if (problem !== null) return problem;
  const litres = worked.litres.value;
  if (litres === null || litres === 0) return "Type how many litres you mix.";
  const undosed = worked.feeds.filter(({ name }) => !worked.lines.some(({ feed }) => feed === name));
  if (undosed.length > 0) return `Type the dose of ${undosed[0]?.name}, or take that feed out of the choice.`;
  const doses = worked.lines
    .filter(({ perLitre }) => perLitre > 0)
    .map((line) => ({ ...line, perBatch: line.perLitre * litres }));
  if (doses.length === 0) return "There is nothing to weigh: every dose is 0.";
  const day = typedDay(draft.day, today);
  if (day === null) return "Choose the date.";
  return {
    ask: "log batch",
    who,
    batch: {
      id: draft.id,
      day,
      litres,
      water: worked.water?.name ?? "",
      target: worked.target?.name ?? "",
      doses,
      reached: withAcid(worked.reached ?? {}, chemistry.adds),
      predictedEcMsCm: chemistry.predictedEcMsCm,
      acid: chemistry.acid,
      note: draft.note.trim(),
    },
  };
}

/** Takes a feed into the choice, or out of it. */
export function chooseFeed(draft: BatchDraft, name: string, on: boolean): BatchDraft {
  const others = draft.feeds.filter((feed) => feed !== name);
  return { ...draft, feeds: on ? [...others, name] : others };
}

/**
 * Going over to typing doses starts from what was worked out, so that a person can change one of them;
 * what was typed before stays.
 */
export function switchMode(draft: BatchDraft, mode: BatchDraft["mode"], worked: Worked): BatchDraft {
  if (mode === draft.mode) return draft;
  if (mode === "target" || Object.keys(draft.doses).length > 0) return { ...draft, mode };
  return fillDoses({ ...draft, mode }, worked);
}

/** Types the doses that were worked out, rounded as they are shown, over what was typed before. */
export function fillDoses(draft: BatchDraft, worked: Worked): BatchDraft {
  const doses: Record<string, string> = { ...draft.doses };
  const units: Record<string, string> = { ...draft.units };
  for (const { feed, perLitre, unit } of worked.lines) {
    doses[feed] = sayNumber(perLitre);
    units[feed] = unit === "mL" ? "mL/L" : "g/L";
  }
  return { ...draft, doses, units };
}
