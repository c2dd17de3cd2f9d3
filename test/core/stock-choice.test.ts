/** Which stock is offered, against every bottle that the rules allow, and how it is to be made. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { saltOf } from "../../src/core/salts.ts";
import { bottleSteps, offerStock, type StockTask } from "../../src/core/stock.ts";
import { drawn } from "../drawn.ts";
import { refusal } from "./refusal.ts";

const feed = (name: string, label: string, densityGPerMl: number | null = null): Feed =>
  feedOf(name, parseLabel(label, densityGPerMl), densityGPerMl);
const BORIC = feed("Boric acid", "B 17.5");
const LIQUID = feed("Green", "N 8 NO3-N 5 NH4-N 2 Urea-N 1 K2O 6", 1.2);

const EASY = [0.1, 0.2, 0.25, 0.5, 1, 2, 2.5, 5, 10, 20, 25, 50, 100, 200, 250, 500];
const BOTTLES = [100, 250, 500, 1000];

interface Bottle {
  readonly solute: number;
  readonly bottleMl: number;
  readonly doseMl: number;
  readonly error: number;
}

/**
 * Every bottle by the rules: at least 20 whole steps of the scale, no stronger than half of what dissolves and 200 g/L
 * (a liquid: half), a dose of at least 10 whole steps of the syringe that it draws at once and the bottle holds. The
 * error is half a step of each tool and the rounding of the dose.
 */
function allowed(task: StockTask, solubility: number | null): Bottle[] {
  const step = task.feed.liquid ? task.syringeStepMl : task.scaleStepG;
  const most = task.feed.liquid ? 0.5 : Math.min((solubility ?? 0) / 2, 200) / 1000;
  return BOTTLES.flatMap((bottleMl) =>
    EASY.flatMap((solute): Bottle[] => {
      const weighed = solute / step;
      const exact = (task.wantedPerBatch * bottleMl) / solute;
      const drawnSteps = Math.round(exact / task.syringeStepMl);
      const doseMl = drawnSteps * task.syringeStepMl;
      const whole = Math.abs(weighed - Math.round(weighed)) < 1e-7;
      if (!whole || weighed < 20 - 1e-9 || solute / bottleMl > most || drawnSteps < 10) return [];
      if (doseMl > (task.syringeMostMl ?? 60) + 1e-9 || doseMl > bottleMl) return [];
      const error = (0.5 * step) / solute + 0.5 / drawnSteps + Math.abs(doseMl - exact) / exact;
      return [{ solute, bottleMl, doseMl, error }];
    }),
  );
}

/** The smallest bottle within 1.5 %, in it the most exact; where none is, the most exact of all. */
function best(bottles: readonly Bottle[]): { bottleMl: number | null; error: number } | null {
  if (bottles.length === 0) return null;
  const good = bottles.filter(({ error }) => error <= 0.015);
  if (good.length === 0) return { bottleMl: null, error: Math.min(...bottles.map(({ error }) => error)) };
  const bottleMl = Math.min(...good.map((one) => one.bottleMl));
  return { bottleMl, error: Math.min(...good.filter((one) => one.bottleMl === bottleMl).map(({ error }) => error)) };
}

describe("the bottle that is offered", () => {
  const tools = fc.record({
    wantedPerBatch: fc.double({ min: 0.001, max: 5, noNaN: true }),
    scaleStepG: fc.constantFrom(0.001, 0.01, 0.05, 0.1),
    syringeStepMl: fc.constantFrom(0.01, 0.1, 0.2, 0.5),
    syringeMostMl: fc.constantFrom(undefined, 5, 10, 20, 60),
  });

  it("is the best of all that the rules allow, for a solid and for a liquid", () => {
    fc.assert(
      fc.property(tools, fc.constantFrom(1, 50, 400, 1200), fc.boolean(), (given, solubility, liquid) => {
        const task: StockTask = liquid
          ? { ...given, feed: LIQUID }
          : { ...given, feed: BORIC, labelSolubilityGPerL: solubility };
        const { stock, reason } = offerStock(task);
        const wanted = best(allowed(task, liquid ? null : solubility));
        if (wanted === null) {
          expect(stock).toBeNull();
          expect(reason).toContain(task.feed.name);
          return;
        }
        expect(stock?.error).toBeCloseTo(wanted.error, 9);
        if (wanted.bottleMl !== null) expect(stock?.bottleMl).toBe(wanted.bottleMl);
        expect(stock?.shareOfSolubility).toEqual(
          liquid ? null : expect.closeTo(((stock?.solute ?? 0) / (stock?.bottleMl ?? 1)) * (1000 / solubility), 9),
        );
        expect(stock?.source).toBe(liquid ? null : "label");
        expect(stock?.unit).toBe(liquid ? "mL" : "g");
      }),
      { numRuns: drawn(400, 100) },
    );
  });

  it("may be right at each limit", () => {
    const base = { feed: BORIC, labelSolubilityGPerL: 1000, scaleStepG: 0.1, syringeStepMl: 1, syringeMostMl: 10 };
    // 20 g in a litre for 0.2 g is 10 mL: 10 steps, and all that the syringe draws
    const drawnWhole = offerStock({ ...base, wantedPerBatch: 0.2 }).stock;
    expect(drawnWhole).toMatchObject({ solute: 20, bottleMl: 1000, doseMl: 10, shareOfSolubility: 0.02 });
    // of 50 g/L half is 25 g/L
    const half = offerStock({ ...base, wantedPerBatch: 0.25, labelSolubilityGPerL: 50 }).stock;
    expect(half).toMatchObject({ solute: 25, bottleMl: 1000, doseMl: 10, shareOfSolubility: 0.5 });
    // 2 g are 20 steps of the scale: all that half of 4 g/L lets into a litre
    const least = offerStock({ ...base, wantedPerBatch: 0.02, labelSolubilityGPerL: 4 }).stock;
    expect(least).toMatchObject({ solute: 2, bottleMl: 1000, doseMl: 10 });
  });
});

describe("the stock as a feed", () => {
  it("of a solid has each share times its strength, and each form of nitrogen", () => {
    const nitrate = feed("Salt", "N 10 NO3-N 7 NH4-N 2 Urea-N 1 K2O 5");
    const { stock } = offerStock({
      ...{ feed: nitrate, wantedPerBatch: 0.2, labelSolubilityGPerL: 1000, scaleStepG: 0.1, syringeStepMl: 1 },
      syringeMostMl: 10,
    });
    // 20 g in a litre: a fiftieth of each percent
    expect(stock).toMatchObject({ solute: 20, bottleMl: 1000 });
    expect(stock?.feed.name).toBe("Salt stock");
    expect(stock?.feed.label.basis).toBe("w/v");
    expect(stock?.feed.label.percent.N).toBeCloseTo(0.2, 12);
    expect(stock?.feed.label.percent.K).toBeCloseTo((nitrate.label.percent.K ?? 0) / 50, 12);
    const { nitrogen } = stock?.feed.label ?? { nitrogen: null };
    expect(nitrogen?.nitrate).toBeCloseTo(0.14, 12);
    expect(nitrogen?.ammonium).toBeCloseTo(0.04, 12);
    expect(nitrogen?.urea).toBeCloseTo(0.02, 12);
    expect(nitrogen?.other).toBe(nitrate.label.nitrogen.other === null ? null : 0);
    expect(
      offerStock({
        feed: feed("Plain", "N 10 K2O 5"),
        wantedPerBatch: 0.2,
        labelSolubilityGPerL: 1000,
        scaleStepG: 0.1,
        syringeStepMl: 1,
      }).stock?.feed.label.nitrogen.nitrate,
    ).toBeNull();
  });

  it("of a liquid by weight counts its density, of one by volume does not", () => {
    const tools = { wantedPerBatch: 0.2, scaleStepG: 0.1, syringeStepMl: 0.1 };
    const byWeight = offerStock({ ...tools, feed: LIQUID }).stock;
    const byVolume = offerStock({ ...tools, feed: feed("Green", "N 8 w/v", 1.2) }).stock;
    const share = (byWeight?.solute ?? 0) / (byWeight?.bottleMl ?? 1);
    expect(byWeight?.feed.label.percent.N).toBeCloseTo(8 * 1.2 * share, 9);
    expect(byVolume?.feed.label.percent.N).toBeCloseTo((8 * (byVolume?.solute ?? 0)) / (byVolume?.bottleMl ?? 1), 9);
  });
});

describe("what to do", () => {
  it("names the feed, the amounts and what the dose is, and warns", () => {
    const steps = bottleSteps({ feed: "Boric acid", solute: 2.5, unit: "g", bottleMl: 500 });
    expect(steps).toHaveLength(3);
    expect(steps[0]).toMatch(/^Weigh 2\.5 g of Boric acid /);
    expect(steps[1]).toMatch(/about 350 mL of low-mineral water.*up to 500 mL/);
    expect(steps[2]).toMatch(/Boric acid, 2\.5 g in 500 mL.*children and pets/);
    expect(bottleSteps({ feed: "Green", solute: 5, unit: "mL", bottleMl: 100 })[0]).toMatch(/^Measure 5 mL of Green /);
    const { stock } = offerStock({ feed: BORIC, wantedPerBatch: 0.05, scaleStepG: 0.01, syringeStepMl: 0.1 });
    expect(stock?.steps).toHaveLength(4);
    expect(stock?.steps[0]).toContain(`${stock?.solute} g of Boric acid`);
    expect(stock?.steps[3]).toContain(`draw ${stock?.doseMl} mL`);
  });

  it("amounts and steps are above 0, and a refusal names the one that is not", () => {
    const task = { feed: BORIC, wantedPerBatch: 0.05, scaleStepG: 0.01, syringeStepMl: 0.1 };
    for (const [change, words] of [
      [{ wantedPerBatch: 0 }, /^The dose of Boric acid is 0 g\./],
      [{ scaleStepG: -1 }, /scale is .1 g\./],
      [{ syringeStepMl: 0 }, /syringe is 0 mL\./],
      [{ labelSolubilityGPerL: 0 }, /solubility of Boric acid is 0 g\/L\./],
    ] as const) {
      expect(refusal(() => offerStock({ ...task, ...change }))).toMatch(words);
    }
    expect(refusal(() => offerStock({ ...task, feed: LIQUID, wantedPerBatch: 0 }))).toMatch(
      /^The dose of Green is 0 mL/,
    );
  });
});

it("diammonium phosphate is known by its label: all of its nitrogen is ammonium", () => {
  // (NH4)2HPO4, 132.06 g/mol: N 28.01 and P2O5 70.97 of it
  expect(saltOf(feed("Dap", "N 21.2 NH4-N 21.2 P2O5 53.7"))?.name).toBe("diammonium phosphate");
  expect(saltOf(feed("Not dap", "N 21.2 NO3-N 21.2 P2O5 53.7"))).toBeNull();
});
