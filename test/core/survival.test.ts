/** Kaplan–Meier and log-rank against the values printed for the 1963 leukaemia trial, and by hand. */

import { describe, expect, it } from "vitest";
import { logRank, survivalCurve, type Waiting } from "../../src/core/survival.ts";
import { readReference } from "./reference.ts";
import { refusal } from "./refusal.ts";

interface Printed {
  readonly freireich: Readonly<Record<"treated" | "placebo", string>> &
    Readonly<
      Record<"treatedTimes" | "treatedAtRisk" | "treatedSurvival" | "medians" | "expected", readonly number[]>
    > & { readonly chiSquare: number };
}
const { freireich } = readReference<Printed>("statistics.json");

/** "6 6+" as the literature writes it: a plus for a wait that broke off. */
const waits = (text: string): Waiting[] =>
  text.split(" ").map((one) => ({ days: Number.parseInt(one, 10), happened: !one.endsWith("+") }));

describe("Freireich et al. 1963, 21 and 21 patients", () => {
  const treated = waits(freireich.treated);
  const placebo = waits(freireich.placebo);

  it("survival, numbers at risk and medians as R's survival prints them", () => {
    const curve = survivalCurve(treated);
    expect(curve).toMatchObject({ count: 21, happened: 9, lastDays: 35 });
    expect(curve.steps.map(({ days }) => days)).toEqual(freireich.treatedTimes);
    expect(curve.steps.map(({ atRisk }) => atRisk)).toEqual(freireich.treatedAtRisk);
    expect(curve.steps.map(({ share }) => Number(share.toFixed(3)))).toEqual(freireich.treatedSurvival);
    expect([curve, survivalCurve(placebo)].map(({ median }) => median)).toEqual(freireich.medians);
    expect(survivalCurve(placebo).steps.at(-1)?.share).toBe(0);
  });

  it("log-rank 16.7929 on 1 degree of freedom, expected 19.2505 and 10.7495", () => {
    const test = logRank([treated, placebo]);
    expect(test?.chiSquare).toBeCloseTo(freireich.chiSquare, 4);
    expect(test?.expected[0]).toBeCloseTo(freireich.expected[0] as number, 4);
    expect(test?.expected[1]).toBeCloseTo(freireich.expected[1] as number, 4);
    expect(test).toMatchObject({ freedom: 1, observed: [9, 21] });
    // 16.7929 = 4.0979²; two-sided normal tail 4.17e-5, as R prints it.
    expect(test?.p).toBeCloseTo(4.17e-5, 7);
    expect(logRank([placebo, treated])?.chiSquare).toBeCloseTo(freireich.chiSquare, 4);
  });

  it("three groups: the same patients split in two make no third group of news", () => {
    const test = logRank([treated, placebo.filter((_, k) => k % 2 === 0), placebo.filter((_, k) => k % 2 === 1)]);
    expect(test?.freedom).toBe(2);
    expect(test?.chiSquare ?? 0).toBeGreaterThan(freireich.chiSquare);
    expect((test?.chiSquare ?? 0) - freireich.chiSquare).toBeLessThan(1);
  });
});

describe("by hand", () => {
  it("four plants: 3, 5+, 5, 8 days", () => {
    const { steps, median } = survivalCurve(waits("3 5+ 5 8"));
    expect(steps.map(({ share }) => share)).toEqual([0.75, 0.75 * (1 - 1 / 3), 0]);
    expect(median).toBe(5);
  });

  it("nothing happened yet: no step, no median, no test", () => {
    expect(survivalCurve(waits("3+ 5+"))).toEqual({ steps: [], count: 2, happened: 0, lastDays: 5, median: null });
    expect(survivalCurve([])).toEqual({ steps: [], count: 0, happened: 0, lastDays: 0, median: null });
    expect(logRank([waits("3+"), waits("4+")])).toBeNull();
    expect(logRank([waits("3 4"), []])).toBeNull();
    expect(logRank([waits("3 4"), waits("1+")])).toBeNull();
  });

  it("alike groups differ by nothing", () => {
    expect(logRank([waits("3 4 9"), waits("3 4 9")])?.chiSquare).toBeCloseTo(0, 12);
    expect(logRank([waits("3 4 9"), waits("3 4 9")])?.p).toBeCloseTo(1, 6);
  });

  it("a wait below 0 is refused", () => {
    expect(refusal(() => survivalCurve([{ days: -1, happened: true }]))).toBe("A wait is -1 days. Give 0 or more.");
  });

  it("a wait of 0 days counts, and the days come in their order whatever that of the waits is", () => {
    // two wait, then one of them does: a half
    expect(survivalCurve(waits("2 0")).steps[0]).toEqual({ days: 0, atRisk: 2, happened: 1, share: 0.5 });
    // 3 of 4, then 2 of 3 and 1 of 2 of those still waiting
    const { steps, median } = survivalCurve(waits("9 3 20+ 5"));
    expect(steps.map(({ days, atRisk }) => [days, atRisk])).toEqual([
      [3, 4],
      [5, 3],
      [9, 2],
    ]);
    expect(median).toBe(5);
  });
});

it("a log-rank test comes back where the last one waiting has it happen alone", () => {
  expect(logRank([waits("1 3"), waits("2 4")])).toMatchObject({ freedom: 1, observed: [2, 2] });
});
