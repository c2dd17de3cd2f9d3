/** A batch of the log, to be repeated or corrected: what its row says, and what has changed on the shelf since. */

import type { BatchRow } from "../src/app/contract.ts";
import { FIRST_SHARE } from "../src/core/acid-dose.ts";
import { nameKey } from "../src/core/cell.ts";
import { type LoggedDose, parseDoses } from "../src/core/dose-text.ts";
import { type Amounts, ELEMENT_NAMES, SYMBOLS } from "../src/core/elements.ts";
import { isBadInput } from "../src/core/errors.ts";
import type { Feed } from "../src/core/feeds.ts";
import { differing } from "../src/core/logged-batch.ts";
import { mixtureOf } from "../src/core/mixture.ts";
import type { OrderAcid } from "../src/core/order.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { Shelf } from "./batch-shelf.ts";
import { namedWater } from "./choices.ts";
import { isRecord, textOf } from "./drafts.ts";

export interface PastBatch {
  readonly id: string;
  /** ISO day; "" where none is noted. */
  readonly day: string;
  readonly litres: number;
  readonly water: string;
  readonly target: string;
  readonly doses: readonly LoggedDose[];
  /** mg/L as logged, acid included. */
  readonly reached: Amounts;
  readonly predictedEcMsCm: number | null;
  readonly acid: string;
  readonly measuredEcMsCm: number | null;
  readonly measuredPH: number | null;
}

function amountsOf(record: Readonly<Record<string, unknown>>): Amounts {
  return Object.fromEntries(
    SYMBOLS.flatMap((symbol) => {
      const value = record[symbol];
      return typeof value === "number" ? [[symbol, value]] : [];
    }),
  );
}

/** The batch of a row, or the sentence that says why it cannot be taken up again. */
export function pastOf(row: BatchRow): PastBatch | string {
  if (row.litres === null || !(row.litres > 0)) return "Its litres cannot be read in the log. Mend that cell first.";
  if (row.doses.trim() === "") return "It has no doses in the log.";
  try {
    return {
      ...row,
      day: row.day ?? "",
      litres: row.litres,
      doses: parseDoses(row.doses),
      reached: amountsOf(row.reached),
    };
  } catch (error) {
    if (isBadInput(error)) return error.message;
    throw error;
  }
}

/** As it was kept with the draft; null where it is damaged. */
export function readPast(kept: unknown): PastBatch | null {
  if (!isRecord(kept) || typeof kept.litres !== "number" || !(kept.litres > 0)) return null;
  if (!isRecord(kept.reached) || !Array.isArray(kept.doses)) return null;
  const number = (key: string): number | null => (typeof kept[key] === "number" ? (kept[key] as number) : null);
  const doses = kept.doses.flatMap((dose: unknown): LoggedDose[] => {
    if (!isRecord(dose) || typeof dose.perLitre !== "number" || typeof dose.perBatch !== "number") return [];
    const { perLitre, perBatch } = dose;
    return [{ feed: textOf(dose, "feed"), perLitre, perBatch, unit: dose.unit === "mL" ? "mL" : "g" }];
  });
  return {
    id: textOf(kept, "id"),
    day: textOf(kept, "day"),
    litres: kept.litres,
    water: textOf(kept, "water"),
    target: textOf(kept, "target"),
    doses,
    reached: amountsOf(kept.reached),
    predictedEcMsCm: number("predictedEcMsCm"),
    acid: textOf(kept, "acid"),
    measuredEcMsCm: number("measuredEcMsCm"),
    measuredPH: number("measuredPH"),
  };
}

export interface Since {
  /** For each dose: the feed as it stands on the shelf, where it still is dosed in that unit. */
  readonly feeds: readonly (Feed | null)[];
  /** Sentences on what is no longer as it was; none: it can be worked out anew as it was. */
  readonly changes: readonly string[];
}

/** What changed on the shelf and among the waters since the batch was logged. */
export function changesSince(past: PastBatch, shelf: Shelf): Since {
  const changes: string[] = [];
  const feeds = past.doses.map((dose): Feed | null => {
    const entry = shelf.feeds.find(({ name }) => nameKey(name) === nameKey(dose.feed));
    if (entry === undefined) {
      changes.push(`${dose.feed} is no longer on the shelf. Its dose stays as it was.`);
      return null;
    }
    if (entry.feed === null) {
      changes.push(`${entry.reason ?? `${dose.feed} may no longer enter a recipe.`} Its dose stays as it was.`);
      return null;
    }
    if (entry.feed.liquid !== (dose.unit === "mL")) {
      changes.push(
        `${dose.feed} was dosed in ${dose.unit} then and is now in ${entry.feed.liquid ? "mL" : "g"}. Its dose stays as it was.`,
      );
      return null;
    }
    return entry.feed;
  });
  const water = namedWater(shelf.waters, past.water);
  if (water === null && past.water !== "") changes.push(`The water “${past.water}” is no longer on the Waters tab.`);
  const parts = past.doses.flatMap(({ perLitre }, at) => {
    const feed = feeds[at];
    return feed == null ? [] : [{ feed, perLitre }];
  });
  const whole = changes.length === 0 && water !== null;
  const now = mixtureOf(parts, water?.amounts ?? {});
  for (const symbol of differing(now, past, whole)) {
    changes.push(
      `With labels and water as they stand now, ${ELEMENT_NAMES[symbol]} would come to ${sayNumber(now.amounts[symbol] ?? 0)} mg/L. The log says ${sayNumber(past.reached[symbol] ?? 0)}.`,
    );
  }
  return { feeds, changes };
}

/** "phosphoric acid 85 %: 1.5 mL, to pH 5.8" for another volume; a text without an amount stays as it is. */
export function acidForVolume(acid: string, ratio: number): string {
  // Before the colon stand the acid's strength and the bottle it was thinned in.
  const from = acid.indexOf(": ") + 1;
  const amount = acid.slice(from).replace(/(\d+(?:\.\d+)?)( ?(?:mL|g)\b)/, (_, number: string, unit: string) => {
    return `${sayNumber(Number(number) * ratio)}${unit}`;
  });
  return acid.slice(0, from) + amount;
}

/** The acid or base of a logged text as the steps take it; null for a text of another form. */
export function orderAcidOf(acid: string): OrderAcid | null {
  const [, name = "", amount = "", unit = "", of = ""] =
    /^(.+): (\d+(?:\.\d+)?) (mL|g)( of the thinned (?:acid|base))?(?:, to pH [\d.]+)?$/.exec(acid.trim()) ?? [];
  if (name === "") return null;
  const part = (share: number): string => `${sayNumber(share * Number(amount))} ${unit}${of}`;
  return {
    name,
    kind: /potassium/i.test(name) ? "base" : "acid",
    amount: Number(amount),
    unit: unit === "g" ? "g" : "mL",
    first: of === "" ? `${part(FIRST_SHARE)} of ${name}` : `${part(FIRST_SHARE)} (${name})`,
    rest: part(1 - FIRST_SHARE),
  };
}
