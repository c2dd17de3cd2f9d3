/** Acids and bases in amounts that can be measured, by sums by hand and over many doses. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { measurableAsIs, thinAcid, thinMl, thinSteps, thinWords, toStep } from "../../src/core/acid-measure.ts";
import { drawn } from "../drawn.ts";
import { refusal } from "./refusal.ts";

const ACID = {
  name: "phosphoric acid 85 %",
  kind: "acid",
  hot: false,
  unit: "mL",
  scaleStepG: 0.1,
  syringeStepMl: 0.1,
} as const;

describe("a dose of 0.0381 mL", () => {
  const task = { ...ACID, perBatch: 0.0381 };

  it("cannot be measured with a syringe in steps of 0.1 mL, and 1.5 mL can", () => {
    expect(measurableAsIs(task)).toBe(false);
    expect(measurableAsIs({ ...task, perBatch: 1.5 })).toBe(true);
  });

  it("by hand: 1 mL thinned to 100 mL makes it 3.81 mL, 3.8 on the syringe", () => {
    const thin = thinAcid(task);
    expect(thin).toEqual({ solute: 1, unit: "mL", bottleMl: 100 });
    if (thin !== null) expect(thinMl(0.0381, thin, 0.1)).toBe(3.8);
  });

  it("is thinned by letting the acid into the water, never the other way about", () => {
    const steps = thinSteps(ACID, { solute: 1, unit: "mL", bottleMl: 100 }).join(" ");
    expect(steps).toContain("acid into water, never water into acid");
    expect(steps).toContain("Pour 80 mL");
    expect(steps).not.toContain("hot:");
    expect(steps.indexOf("Pour 80 mL")).toBeLessThan(steps.indexOf("Let 1 mL"));
    expect(steps).toContain("Goggles and gloves on");
    expect(thinSteps({ ...ACID, hot: true }, { solute: 1, unit: "mL", bottleMl: 100 }).join(" ")).toContain(
      "It gets hot",
    );
  });
});

describe("ten steps of what measures it, by hand", () => {
  it.each([
    // perBatch, unit, scale step, syringe step, measurable
    [1, "mL", 1, 0.1, true],
    [0.99, "mL", 0.01, 0.1, false],
    [1, "g", 0.1, 1, true],
    [0.99, "g", 0.1, 0.01, false],
    [50, "g", null, 0.1, false],
    [0, "g", 0.1, 0.1, true],
  ] as const)("%d %s with a scale in steps of %s g and a syringe of %s mL", (perBatch, unit, scaleStepG, step, as) => {
    expect(measurableAsIs({ ...ACID, perBatch, unit, scaleStepG, syringeStepMl: step })).toBe(as);
  });

  it.each([
    // 5 mL is 12.5 steps of 0.4 mL; 10 mL in 100 mL is a tenth and 25 steps, 5 mL of it hold 0.5 mL.
    [0.5, "mL", 0.1, 0.4, { solute: 10, unit: "mL", bottleMl: 100 }],
    // 10 mL in 100 mL, of which 10 mL hold 1 mL: ten steps of 1 mL.
    [1, "mL", 0.1, 1, { solute: 10, unit: "mL", bottleMl: 100 }],
    // 1 mL in 100 mL, of which 60 mL hold 0.6 mL: all that the syringe draws.
    [0.6, "mL", 0.1, 0.1, { solute: 1, unit: "mL", bottleMl: 100 }],
    // 5 g is ten steps of 0.5 g; 5 mL of 5 g in 100 mL hold 0.25 g.
    [0.25, "g", 0.5, 0.1, { solute: 5, unit: "g", bottleMl: 100 }],
    [0.25, "g", null, 0.1, null],
    [0, "mL", 0.1, 0.1, null],
  ] as const)("%d %s, scale %s g, syringe %s mL is thinned to %j", (perBatch, unit, scaleStepG, step, thin) => {
    expect(thinAcid({ ...ACID, perBatch, unit, scaleStepG, syringeStepMl: step })).toEqual(thin);
  });

  it.each([
    ["mL", { syringeStepMl: 0 }],
    ["g", { scaleStepG: 0 }],
  ] as const)("a step of 0 %s is refused", (unit, step) =>
    expect(refusal(() => measurableAsIs({ ...ACID, perBatch: 1, unit, ...step }))).toBe(
      `The step is 0 ${unit}. Give a number above 0.`,
    ),
  );
});

it("a base in flakes is stirred in, a base in a bottle runs in, and the bottle is labelled", () => {
  const flakes = thinSteps(
    { name: "potassium hydroxide 90 %", kind: "base", hot: false },
    { solute: 5, unit: "g", bottleMl: 250 },
  ).join(" ");
  expect(flakes).toContain("Pour 200 mL");
  expect(flakes).toMatch(/Stir in 5 g of potassium hydroxide 90 %.*fill up to 250 mL.*5 g in 250 mL/);
  const liquid = thinSteps(
    { name: "potassium hydroxide 45 %", kind: "base", hot: false },
    { solute: 5, unit: "mL", bottleMl: 100 },
  ).join(" ");
  expect(liquid).toMatch(/Let 5 mL of potassium hydroxide 45 % run slowly/);
  expect(liquid).not.toContain("acid into water");
  expect(thinWords("citric acid", { solute: 5, unit: "g", bottleMl: 250 })).toBe("citric acid, 5 g in 250 mL");
});

it("a solid is weighed in at least ten steps and dissolved: 0.3 g of citric acid, 1 g in 100 mL, 30 mL", () => {
  const thin = thinAcid({ ...ACID, name: "citric acid", unit: "g", perBatch: 0.3 });
  expect(thin).toEqual({ solute: 1, unit: "g", bottleMl: 100 });
  if (thin !== null) expect(thinMl(0.3, thin, 0.1)).toBe(30);
});

it("to a step, without binary tails", () =>
  expect([toStep(1.48, 0.1), toStep(0.3, 0.1), toStep(7, 0.5)]).toEqual([1.5, 0.3, 7]));

it("whatever the dose, the bottle is at most a tenth acid (sulfuric a twentieth), and the dose is whole steps within 5 %", () => {
  const cases = fc.record({
    perBatch: fc.integer({ min: 1, max: 20_000 }).map((n) => n / 10_000),
    syringeStepMl: fc.constantFrom(0.01, 0.1, 0.2, 0.5, 1),
    hot: fc.boolean(),
  });
  let thinned = 0;
  fc.assert(
    fc.property(cases, ({ perBatch, syringeStepMl, hot }) => {
      const task = { ...ACID, perBatch, syringeStepMl, hot };
      const thin = thinAcid(task);
      if (thin === null) return;
      thinned += 1;
      expect(thin.solute / thin.bottleMl).toBeLessThanOrEqual(hot ? 0.05 : 0.1);
      expect(thin.solute / syringeStepMl).toBeGreaterThanOrEqual(10 - 1e-9);
      const doseMl = thinMl(perBatch, thin, syringeStepMl);
      expect(doseMl).toBeLessThanOrEqual(60 + syringeStepMl);
      expect(Math.abs((doseMl * thin.solute) / thin.bottleMl / perBatch - 1)).toBeLessThanOrEqual(0.05 + 1e-9);
    }),
    { numRuns: drawn(500) },
  );
  expect(thinned).toBeGreaterThan(0.4 * drawn(500));
});

it("says of a liquid that is no acid and stays cool only to let it run slowly", () => {
  const [, pour] = thinSteps({ name: "base", kind: "base", hot: false }, { solute: 5, unit: "mL", bottleMl: 100 });
  expect(pour).toBe("Let 5 mL of base run slowly into the water.");
});
