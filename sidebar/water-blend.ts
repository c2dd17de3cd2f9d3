/** Waters to choose for a blend or a treatment, and what a blend of two comes to. */

import type { FieldRow } from "../src/app/contract.ts";
import { WATER_NUMBERS } from "../src/app/requests.ts";
import { nameKey } from "../src/core/cell.ts";
import { isBadInput } from "../src/core/errors.ts";
import { type Fields, fieldCell } from "../src/core/feeds.ts";
import { readNumber } from "../src/core/reading.ts";
import { solveState, type Totals } from "../src/core/speciation.ts";
import { waterState } from "../src/core/water-check.ts";
import { blendLines, WATER_LINES, type WaterLine, type WaterLines } from "../src/core/water-lines.ts";

export interface WaterChoice {
  readonly key: string;
  readonly name: string;
  readonly lines: WaterLines;
}

export const THIS_REPORT = "(this report)";
export const PURE = "(pure water)";

/** Distilled water to compare with: nothing in it, neutral. */
const NOTHING: WaterLines = { ...Object.fromEntries(WATER_LINES.map((line) => [line, 0])), pH: 7 };

/** The lines of a row of the Waters tab. Throws BadInput for a number that cannot be read. */
export function linesOfRow(fields: Fields, where: string): WaterLines {
  const lines: Partial<Record<WaterLine, number>> = {};
  for (const line of WATER_NUMBERS) {
    const value = readNumber(fieldCell(fields, line), { what: `${line} in ${where}`, min: 0 });
    if (value !== null) lines[line] = value;
  }
  return lines;
}

/** The report (when it has a line), the waters of the tab, pure water. */
export function waterChoices(rows: readonly FieldRow[], report: WaterLines): readonly WaterChoice[] {
  const byKey = new Map<string, WaterChoice>();
  if (Object.keys(report).length > 0) byKey.set(THIS_REPORT, { key: THIS_REPORT, name: "This report", lines: report });
  for (const { row, fields } of rows) {
    const name = String(fields.Water ?? "").trim();
    const key = nameKey(name);
    if (key === "" || byKey.has(key)) continue;
    try {
      byKey.set(key, { key, name, lines: linesOfRow(fields, `row ${row} of Waters`) });
    } catch (error) {
      // The load tells of a row that cannot be read.
      if (!isBadInput(error)) throw error;
    }
  }
  return [...byKey.values(), { key: PURE, name: "Pure water (distilled)", lines: NOTHING }];
}

/** The chosen water; the first of the list while nothing was chosen. */
export function waterAt(choices: readonly WaterChoice[], key: string, otherwise: string): WaterChoice | null {
  const at = (wanted: string) => choices.find((choice) => choice.key === wanted);
  return at(key) ?? at(otherwise) ?? choices[0] ?? null;
}

/** Pure water brings as many lines to a blend as the other water states; more would only look measured. */
export function besides(choice: WaterChoice, other: WaterChoice): WaterLines {
  if (choice.key !== PURE) return choice.lines;
  const lines: Partial<Record<WaterLine, number>> = {};
  for (const line of WATER_LINES) if (other.lines[line] !== undefined) lines[line] = NOTHING[line] ?? 0;
  return lines;
}

export interface Blend {
  /** What can be said of the blend; pH as long as both waters state pH and alkalinity. */
  readonly lines: WaterLines;
  /** Lines that only one of the two states, so the blend's is not known. */
  readonly unknown: readonly WaterLine[];
}

export function blendOf(one: WaterLines, other: WaterLines, share: number): Blend {
  const { pH: _, ...lines } = blendLines(one, other, share);
  const pH = blendedPH(one, other, share);
  const unknown = WATER_LINES.filter((line) => (one[line] === undefined) !== (other[line] === undefined));
  return {
    lines: pH === null ? lines : { ...lines, pH },
    unknown: pH === null && !unknown.includes("pH") ? [...unknown, "pH"] : unknown,
  };
}

/** pH just after pouring together, 25 °C, no CO2 in or out: protons and carbon add up, pH does not. */
function blendedPH(one: WaterLines, other: WaterLines, share: number): number | null {
  const stated = [one, other].every(({ pH, Alkalinity }) => pH !== undefined && Alkalinity !== undefined);
  const [a, b] = [waterState(one), waterState(other)];
  if (!stated || a === null || b === null) return null;
  const mix = (x: number, y: number) => share * x + (1 - share) * y;
  const totals: { -readonly [part in keyof Totals]: number } = {};
  for (const part of Object.keys({ ...a.totals, ...b.totals }) as (keyof Totals)[]) {
    totals[part] = mix(a.totals[part] ?? 0, b.totals[part] ?? 0);
  }
  try {
    return solveState({
      totals,
      carbon: { totalMolKg: mix(a.totalCarbonMolKg, b.totalCarbonMolKg) },
      pH: { protonsMolKg: mix(a.protonsMolKg, b.protonsMolKg) },
      tempC: 25,
    }).pH;
  } catch (error) {
    if (isBadInput(error)) return null;
    throw error;
  }
}
