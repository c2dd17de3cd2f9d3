/** A report as it is typed: each line with how it is understood, and the water they make together. */

import { type ReportLine, readReport } from "../src/core/report.ts";
import { sayNumber } from "../src/core/saying.ts";
import { LINE_UNITS, type WaterLine, type WaterLines } from "../src/core/water-lines.ts";
import type { WaterDraft } from "./water-draft.ts";

export interface TypedLine extends ReportLine {
  /** Position among the lines of the text, from 0, blank ones counted. */
  readonly at: number;
  /** As it stands in the text, spaces included. */
  readonly typed: string;
  /** Of the readings, the one that counts; null while the line is asked about, or has none. */
  readonly chosen: number | null;
}

export interface TypedReport {
  readonly lines: readonly TypedLine[];
  /** Everything that was understood or chosen; where two lines say the same thing, the later one. */
  readonly water: WaterLines;
  /** Sentences on what two lines say differently. */
  readonly twice: readonly string[];
  /** Some line waits for a choice. */
  readonly asks: boolean;
}

type Typed = Pick<WaterDraft, "text" | "unit" | "answers" | "open">;

export function splitLines(text: string): string[] {
  return text.split(/\r?\n/);
}

/** A line that was emptied while it is being corrected. */
const emptied = (at: number, typed: string): TypedLine => ({
  ...{ at, typed, text: "", chosen: null },
  ...{ status: "passed over", readings: [], words: "Nothing is left of this line." },
});

export function readTyped({ text, unit, answers, open }: Typed): TypedReport {
  const read = readReport(text, unit === "" ? {} : { unit });
  let next = 0;
  const lines = splitLines(text).flatMap((typed, at): TypedLine[] => {
    const line = typed.trim() === "" ? undefined : read[next++];
    if (line === undefined) return open.includes(at) ? [emptied(at, typed)] : [];
    const answer = answers[line.text];
    const found = line.status === "ask" ? line.readings.findIndex(({ words }) => words === answer) : 0;
    return [{ ...line, at, typed, chosen: line.readings.length === 0 || found === -1 ? null : found }];
  });
  const water: Partial<Record<WaterLine, number>> = {};
  const twice: string[] = [];
  for (const { readings, chosen } of lines) {
    const reading = chosen === null ? undefined : readings[chosen];
    if (reading === undefined) continue;
    const { line, value } = reading;
    const before = water[line];
    if (before !== undefined && differ(before, value)) {
      const unitWords = LINE_UNITS[line] === "" ? "" : ` ${LINE_UNITS[line]}`;
      twice.push(
        `${line} stands there twice, as ${sayNumber(before)} and ${sayNumber(value)}${unitWords}. The later one counts; take out the wrong one.`,
      );
    }
    water[line] = value;
  }
  return { lines, water, twice, asks: lines.some(({ status, chosen }) => status === "ask" && chosen === null) };
}

/** Reports round to about a percent, and print the same thing in two units. */
function differ(one: number, other: number): boolean {
  return Math.abs(one - other) > 0.02 * Math.max(one, other);
}

/** The line as one says it: "Ca 62 mg/L", "pH 7.6". */
export function sayLine(line: WaterLine, value: number): string {
  return `${line} ${sayNumber(value)}${LINE_UNITS[line] === "" ? "" : ` ${LINE_UNITS[line]}`}`;
}
