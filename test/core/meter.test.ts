/** Meter readings, against EPA 120.1 and the scales of meters. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ecAt25, ecFromTds, METER_SCALES, tdsFromEc } from "../../src/core/meter.ts";
import { readReference } from "./reference.ts";
import { refusal } from "./refusal.ts";

interface Reference {
  kcl_uS_cm_at_C: [number, number][];
  factor_at_1413_uS_cm: Record<string, number>;
}
const reference = readReference<Reference>("meters.json");

describe("EPA 120.1, 0.01 M KCl", () => {
  it.each(reference.kcl_uS_cm_at_C)("at %d °C %d µS/cm is 1413 at 25 °C", (tempC, microS) => {
    // Printed in whole µS/cm.
    const half = 0.5 / (1 + 0.0191 * (tempC - 25));
    expect(Math.abs(1000 * ecAt25(microS / 1000, tempC) - 1413)).toBeLessThanOrEqual(half);
  });
});

describe("scales", () => {
  it.each(METER_SCALES)("the %d scale is nominal, and near what its salt really gives at 1413 µS/cm", (scale) => {
    expect(tdsFromEc(1, scale)).toBe(scale);
    const measured = reference.factor_at_1413_uS_cm[String(scale)] ?? 0;
    expect(Math.abs(tdsFromEc(1.413, scale) / (1413 * measured) - 1)).toBeLessThan(0.012);
  });

  it("go back to what was read", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100, noNaN: true }), fc.constantFrom(...METER_SCALES), (ec, scale) => {
        expect(ecFromTds(tdsFromEc(ec, scale), scale)).toBeCloseTo(ec, 9);
      }),
    );
  });
});

describe("refused readings", () => {
  it.each([
    [() => ecAt25(-1, 20), "The EC is -1 mS/cm. Give a number from 0 to 1000 mS/cm."],
    [() => ecAt25(1, 68), "The temperature is 68 °C. Give a number from 0 to 50 °C."],
    [() => ecAt25(1, Number.NaN), "The temperature is no number. Give a number from 0 to 50 °C."],
    [() => tdsFromEc(1, 600), "The scale is 600. Give 500, 640 or 700, as printed on the meter."],
    [() => tdsFromEc(-1, 500), "The EC is -1 mS/cm. Give a number from 0 to 1000 mS/cm."],
    [() => ecFromTds(-1, 500), "The reading is -1 ppm. Give a number from 0 to 700000 ppm."],
    [() => ecFromTds(1, 0.5), "The scale is 0.5. Give 500, 640 or 700, as printed on the meter."],
  ])("%#", (call, sentence) => {
    expect(refusal(call)).toBe(sentence);
  });
});
