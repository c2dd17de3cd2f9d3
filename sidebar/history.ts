/** EC and pH of one's batches over time, by water and feeds, with limits, new lots and calibrations. */

import type { BatchRow, Loaded, Records } from "../src/app/contract.ts";
import { dayFromIso } from "../src/core/calendar.ts";
import { type Band, spreadBand } from "../src/core/spread.ts";
import type { Chart } from "../src/core/tolerance.ts";
import { feedsOf, groupKey, lotChanges } from "./batch-parts.ts";
import { standardRows } from "./meters-log.ts";
import { type PHRange, pHRange } from "./ph-range.ts";
import { ratiosOf } from "./readings-check.ts";
import { count, showDay } from "./show.ts";
import { mixedBatches } from "./testing.ts";

export type Batch = BatchRow & { readonly day: string };

export interface Group {
  readonly key: string;
  readonly words: string;
  /** Names of the feeds; none for all batches together. */
  readonly feeds: readonly string[];
}

/** Key of all batches together; no group of one water and its feeds has it. */
export const ALL = "all";

/** Groups of batches of the same water and feeds, the one of the newest batch first, then all together. */
export function groupsOf(batches: readonly BatchRow[]): Group[] {
  const groups = new Map<string, { batch: Batch; many: number }>();
  for (const batch of mixedBatches(batches).reverse()) {
    const key = groupKey(batch);
    const found = groups.get(key);
    if (found === undefined) groups.set(key, { batch, many: 1 });
    else found.many += 1;
  }
  const named = [...groups].map(([key, { batch, many }]) => {
    const feeds = feedsOf(batch.doses);
    const with_ = feeds.length === 0 ? "" : `, ${feeds.length === 1 ? feeds[0] : count(feeds.length, "feed")}`;
    const water = batch.water === "" ? "No water named" : batch.water;
    const words = `${water}${with_}, last ${showDay(batch.day)}: ${count(many, "batch", "batches")}`;
    return { key, words, feeds };
  });
  return [...named, { key: ALL, words: "All batches", feeds: [] }];
}

export interface Mark {
  readonly day: number;
  readonly kind: "lot" | "EC" | "pH";
  /** A letter that stands on the drawing. */
  readonly letter: "L" | "C";
  readonly words: string;
}

export interface History {
  /** Oldest first. */
  readonly batches: readonly Batch[];
  readonly marks: readonly Mark[];
  readonly range: PHRange;
  /** Limits for the next pH of this group; null with too few readings. */
  readonly chart: Chart | null;
  /** Measured over expected EC of this household; null with too few. */
  readonly band: Band | null;
}

function marksOf({ purchases, meterLog }: Records, batches: readonly Batch[]): Mark[] {
  const used = new Set(batches.flatMap(({ doses }) => feedsOf(doses).map((feed) => feed.toLowerCase())));
  const lots = lotChanges(purchases).flatMap(({ date, feed, lot }): Mark[] =>
    used.has(feed.toLowerCase())
      ? [{ day: dayFromIso(date) ?? 0, kind: "lot", letter: "L", words: `${showDay(date)}: lot ${lot} of ${feed}` }]
      : [],
  );
  const calibrations = standardRows(meterLog).rows.flatMap(({ adjusted, kind, day, date }): Mark[] =>
    adjusted ? [{ day, kind, letter: "C", words: `${showDay(date)}: ${kind} meter calibrated` }] : [],
  );
  const days = batches.map(({ day }) => dayFromIso(day) ?? 0);
  const [from, to] = [Math.min(...days), Math.max(...days)];
  return [...lots, ...calibrations].filter(({ day }) => day >= from && day <= to).sort((a, b) => a.day - b.day);
}

export function historyOf(key: string, loaded: Loaded, records: Records, chart: Chart | null): History {
  const batches = mixedBatches(loaded.batches).filter((batch) => key === ALL || groupKey(batch) === key);
  // What labels allow differs from batch to batch; the drawing has this household's own spread only.
  const band = spreadBand({ ratios: ratiosOf(loaded.batches, ""), labelShare: 0 });
  return {
    batches,
    marks: marksOf(records, batches),
    range: pHRange(loaded.settings),
    chart,
    band: band.enough ? band : null,
  };
}

/** From, to and last of the numbers that are there. */
interface Reach {
  readonly low: number;
  readonly high: number;
  readonly last: number;
  readonly many: number;
}

function reach(values: readonly (number | null)[]): Reach | null {
  const there = values.filter((value) => value !== null);
  const last = there[there.length - 1];
  return last === undefined ? null : { low: Math.min(...there), high: Math.max(...there), last, many: there.length };
}

function span(batches: readonly Batch[]): string {
  const [first, last] = [batches[0], batches[batches.length - 1]];
  if (first === undefined || last === undefined) return "";
  return first.day === last.day ? ` of ${showDay(first.day)}` : ` from ${showDay(first.day)} to ${showDay(last.day)}`;
}

/** The drawing of the EC, said. */
export function sayEc({ batches, band }: History): string {
  const read = batches.filter(({ measuredEcMsCm }) => measuredEcMsCm !== null);
  const found = reach(read.map(({ measuredEcMsCm }) => measuredEcMsCm));
  if (found === null) return "No EC was read yet.";
  const { low, high, last, many } = found;
  const to =
    many === 1 ? `${last.toFixed(2)} mS/cm` : `${low.toFixed(2)} to ${high.toFixed(2)} mS/cm, last ${last.toFixed(2)}`;
  const judged = read.filter(({ predictedEcMsCm }) => predictedEcMsCm !== null && predictedEcMsCm > 0);
  const off = judged.filter(({ measuredEcMsCm, predictedEcMsCm }) => {
    const ratio = (measuredEcMsCm ?? 0) / (predictedEcMsCm ?? 1);
    return band !== null && (ratio < band.low || ratio > band.high);
  });
  const within =
    band === null || judged.length === 0
      ? ""
      : ` ${judged.length - off.length} of ${judged.length} lie where this meter usually reads.`;
  return `EC of ${count(many, "batch", "batches")}${span(read)}: ${to}.${within}`;
}

/** The drawing of the pH, said. */
export function sayPHs({ batches, range }: History): string {
  const read = batches.filter(({ measuredPH }) => measuredPH !== null);
  const found = reach(read.map(({ measuredPH }) => measuredPH));
  if (found === null) return "No pH was read yet.";
  const { low, high, last, many } = found;
  const to = many === 1 ? String(last) : `${low} to ${high}, last ${last}`;
  const out = read.filter(({ measuredPH }) => (measuredPH ?? 0) < range.low || (measuredPH ?? 0) > range.high).length;
  const limits = `${range.low} to ${range.high}`;
  const within =
    many === 1
      ? `It lies ${out === 0 ? "within" : "outside"} ${limits}.`
      : out === 0
        ? `All lie within ${limits}.`
        : `${out} of ${many} ${out === 1 ? "lies" : "lie"} outside ${limits}.`;
  return `pH of ${count(many, "batch", "batches")}${span(read)}: ${to}. ${within}`;
}
