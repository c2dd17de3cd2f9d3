/** The sample's tap water, whose numbers are published, against what the chemistry makes of its ions. */

import { describe, expect, test } from "vitest";
import { WATER_ROWS } from "../../src/build/sample-waters.ts";
import { checkWater } from "../../src/core/water-check.ts";
import { WATER_LINES, type WaterLines } from "../../src/core/water-lines.ts";

describe("Town of Vöhringen, Bavaria, drinking water, sample of 2025-06-12 (published report)", () => {
  const row = WATER_ROWS.find(({ Water }) => Water === "Town tap") ?? {};
  const lines: WaterLines = Object.fromEntries(
    WATER_LINES.flatMap((line) => (typeof row[line] === "number" ? [[line, row[line]]] : [])),
  );
  const check = checkWater(lines);

  test("EC from the ions is within 1 % of the printed 651 µS/cm", () => {
    expect(Math.abs((check.predictedEcMsCm ?? 0) / 0.651 - 1)).toBeLessThan(0.01);
  });

  test("the ion sums are the printed 6.88 and 7.05 meq/L to within 1 %, and they add up", () => {
    const { cationsMeqL, anionsMeqL, acceptable } = check.balance;
    const sums = [cationsMeqL, anionsMeqL].sort((a, b) => a - b);
    expect(Math.abs((sums[0] ?? 0) / 6.88 - 1)).toBeLessThan(0.01);
    expect(Math.abs((sums[1] ?? 0) / 7.05 - 1)).toBeLessThan(0.01);
    expect(acceptable).toBe(true);
  });

  test("it is very hard: the printed 17.4 °dH are 310.6 mg/L CaCO3 (17.848 mg/L each)", () => {
    expect(Math.abs((check.hardnessMgCaCO3L ?? 0) - 310.6)).toBeLessThan(1);
    expect(check.hardnessClass).toBe("very hard");
  });
});
