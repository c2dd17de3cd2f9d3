/** One line of a water report, in each way of writing it. */

import { expect } from "vitest";
import { type ReportLine, readReport } from "../../src/core/report.ts";
import type { WaterLine } from "../../src/core/water-lines.ts";

export function one(text: string): ReportLine {
  const [line] = readReport(text);
  if (line === undefined) throw new Error(`Nothing came of "${text}".`);
  return line;
}
/** "·" is a blank that may be left out, " " one that may be doubled; each way of writing is tried. */
export const written = (text: string): string[] => [
  ...new Set([text.replaceAll("·", ""), text.replaceAll("·", " "), text.replaceAll("·", "").replaceAll(" ", "  ")]),
];
export function expectRead(text: string, line: WaterLine, value: number): void {
  for (const way of written(text)) {
    const { status, readings } = one(way);
    expect([way, status, readings.map((reading) => reading.line)]).toEqual([way, "read", [line]]);
    expect(readings[0]?.value).toBeCloseTo(value, 2);
  }
}
