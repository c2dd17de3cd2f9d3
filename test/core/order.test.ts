/** The order of mixing and two stock bottles, by the rules of chemistry and sums by hand. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ACID_CAUTION, BASE_CAUTION } from "../../src/core/acid-dose.ts";
import { splitIntoBottles } from "../../src/core/bottles.ts";
import { type Feed, feedOf } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { keepApart, mixingSteps, partOf } from "../../src/core/order.ts";
import { gramsPerMole, percentOf } from "./formula.ts";
import { refusal } from "./refusal.ts";

const salt = (formula: string): Feed => feedOf(formula, { ...parseLabel("0-0-0"), percent: percentOf(formula) }, null);
const feed = (name: string, label: string, density: number | null = null): Feed =>
  feedOf(name, parseLabel(label, density), density);

const CALCIUM = salt("Ca(NO3)2.4H2O");
const EPSOM = salt("MgSO4.7H2O");
const POTASSIUM = salt("KNO3");
const PHOSPHATE = salt("KH2PO4");
const SILICATE = feed("Silicate", "Si 5 K2O 10", 1.2);
const ALL = feed("All in one", "10-5-5 Ca 4 Mg 1");

describe("parts", () => {
  it.each([
    [CALCIUM, "calcium"],
    [EPSOM, "sulfate or phosphate"],
    [POTASSIUM, "plain"],
    [PHOSPHATE, "sulfate or phosphate"],
    [SILICATE, "silicate"],
    [ALL, "calcium with sulfate or phosphate"],
    [feed("Iron", "Fe 13"), "plain"],
  ])("%#: %s", (one, part) => {
    expect(partOf(one)).toBe(part);
  });
});

describe("steps", () => {
  const doses = [CALCIUM, EPSOM, SILICATE, POTASSIUM].map((one) => ({ feed: one, perBatch: 5 }));
  const acid = {
    name: "phosphoric acid 10 %",
    kind: "acid" as const,
    amount: 12,
    unit: "mL" as const,
    first: "9.6 mL of phosphoric acid 10 %",
    rest: "2.4 mL",
  };
  const base = { litres: 10, doses, acid: null, alkalinityMgCaCO3L: 10 };

  it("water first, silicate before all, calcium last and apart, then fill up and read", () => {
    const steps = mixingSteps(base);
    expect(steps.map(({ kind, what }) => what || kind)).toEqual([
      "water",
      "Silicate",
      "MgSO4.7H2O",
      "KNO3",
      "Ca(NO3)2.4H2O",
      "fill",
      "measure",
    ]);
    expect(steps[4]?.text).toBe(
      "Dissolve 5 g of Ca(NO3)2.4H2O in a cup of water apart from the rest, then stir it in slowly.",
    );
    expect(steps[0]?.text).toBe("Pour 8 L of the water into a clean can, at room temperature.");
  });

  it("acid before calcium and phosphate in alkaline or unknown water, at the end in soft water; always with its caution", () => {
    const at = (alkalinityMgCaCO3L: number | null) => {
      const steps = mixingSteps({ ...base, acid, alkalinityMgCaCO3L });
      expect(steps.find(({ kind }) => kind === "acid")?.caution).toBe(ACID_CAUTION);
      return steps.findIndex(({ kind }) => kind === "acid");
    };
    expect([at(200), at(null), at(10)]).toEqual([2, 2, 6]);
  });

  it("four fifths of the acid first, the rest where the pH is read", () => {
    const steps = mixingSteps({ ...base, acid, alkalinityMgCaCO3L: 200 });
    expect(steps[2]?.text).toBe(
      "Stir in 9.6 mL of phosphoric acid 10 %, four fifths of the dose; the rest follows at the end, when the pH has been read.",
    );
    expect(steps[steps.length - 1]?.text).toContain("the rest of the acid, about 2.4 mL, bit by bit");
  });

  it("a base comes at the end, with its own caution, whatever the water", () => {
    const potash = { ...acid, kind: "base" as const, name: "potassium hydroxide" };
    const steps = mixingSteps({ ...base, acid: potash, alkalinityMgCaCO3L: 200 });
    expect(steps.map(({ kind }) => kind).slice(-3)).toEqual(["fill", "acid", "measure"]);
    expect(steps.find(({ kind }) => kind === "acid")?.caution).toBe(BASE_CAUTION);
  });

  it("a stock goes in by the millilitre, spoonfuls by the spoon, each in its feed's place", () => {
    const some = [
      { feed: PHOSPHATE, perBatch: 1.36, stockMl: 27.2 },
      { feed: CALCIUM, perBatch: 6, how: "1 level spoon of 1.2 g and 1 level spoon of 4.8 g" },
    ];
    const steps = mixingSteps({ ...base, doses: some, syringeMostMl: 20 });
    expect(steps[1]?.text).toBe("Stir in 27.2 mL of the stock of KH2PO4, in 2 goes.");
    expect(steps[2]?.text).toBe(
      "Dissolve 1 level spoon of 1.2 g and 1 level spoon of 4.8 g of Ca(NO3)2.4H2O (6 g) in a cup of water apart from the rest, then stir it in slowly.",
    );
  });

  it("calcium is kept apart from sulfate and phosphate by name; without calcium there is nothing to keep apart", () => {
    expect(keepApart([CALCIUM, POTASSIUM, EPSOM, PHOSPHATE])).toMatch(
      /^Never mix Ca\(NO3\)2\.4H2O with MgSO4\.7H2O or KH2PO4 undiluted/,
    );
    expect(keepApart([EPSOM, PHOSPHATE])).toBeNull();
    expect(keepApart([CALCIUM, POTASSIUM])).toBeNull();
  });

  it("a small scale is filled several times", () => {
    const steps = mixingSteps({ ...base, doses: [{ feed: EPSOM, perBatch: 250 }], scaleMostG: 100 });
    expect(steps[1]?.text).toContain("250 g of MgSO4.7H2O, in 3 goes");
  });

  it("nothing that falls out stands beside calcium in any order given, and every dose stands once", () => {
    const feeds = [CALCIUM, EPSOM, POTASSIUM, PHOSPHATE, SILICATE];
    fc.assert(
      fc.property(fc.shuffledSubarray(feeds, { minLength: 1 }), (some) => {
        const steps = mixingSteps({ ...base, doses: some.map((one) => ({ feed: one, perBatch: 1 })) });
        const names = steps.filter(({ kind }) => kind === "feed").map(({ what }) => what);
        expect([...names].sort()).toEqual(some.map(({ name }) => name).sort());
        if (some.includes(CALCIUM)) expect(names[names.length - 1]).toBe(CALCIUM.name);
        if (some.includes(SILICATE)) expect(names[0]).toBe("Silicate");
      }),
    );
  });

  it("a dose of 0 is left out", () => {
    expect(mixingSteps({ ...base, doses: [{ feed: EPSOM, perBatch: 0 }] }).some(({ kind }) => kind === "feed")).toBe(
      false,
    );
  });
});

describe("two bottles of Hoagland & Arnon 1950, solution 1", () => {
  // Circular 347, mmol in a litre: KNO3 5, Ca(NO3)2 5, KH2PO4 1, MgSO4 2.
  const gPerL = (formula: string, mmol: number) => (gramsPerMole(formula) * mmol) / 1000;
  const doses = [
    { feed: POTASSIUM, perLitre: gPerL("KNO3", 5) },
    { feed: CALCIUM, perLitre: gPerL("Ca(NO3)2.4H2O", 5) },
    { feed: PHOSPHATE, perLitre: gPerL("KH2PO4", 1) },
    { feed: EPSOM, perLitre: gPerL("MgSO4.7H2O", 2) },
  ];
  const names = (parts: readonly { feed: Feed }[]) => parts.map(({ feed: one }) => one.name).sort();

  it("by hand, 100 times: potassium nitrate goes to calcium, where it stands at 50.6 of 209 g/L; beside Epsom salt it would make potassium sulfate at 34.9 of 111", () => {
    const split = splitIntoBottles({ doses, factor: 100, bottleLitres: 2, water: {} });
    expect(names(split.a.parts)).toEqual(["Ca(NO3)2.4H2O", "KNO3"]);
    expect(names(split.b.parts)).toEqual(["KH2PO4", "MgSO4.7H2O"]);
    expect(split.a.tightest?.name).toBe("potassium nitrate");
    expect(split.a.share).toBeCloseTo((0.5 * gramsPerMole("KNO3")) / 209, 6);
    expect(split.fits).toBe(true);
    expect(split.notices).toEqual([]);
    expect(split.mlPerLitre).toBe(10);
    expect(split.a.parts.find(({ feed: one }) => one === POTASSIUM)?.amount).toBeCloseTo(2 * 100 * gPerL("KNO3", 5), 9);
    // Half of 209 g/L over 0.5055 g/L.
    expect(split.mostFactor).toBeCloseTo(104.5 / gPerL("KNO3", 5), 6);
  });

  it("300 times is too strong, and the greatest factor that works is named and works", () => {
    const split = splitIntoBottles({ doses, factor: 300, bottleLitres: 1, water: {} });
    expect(split.fits).toBe(false);
    expect(split.notices[0]).toBe(
      "Bottle A is too strong: potassium nitrate would stand at 72.6 % of what dissolves at room temperature, and half is safe. Make it at most 206 times as strong.",
    );
    expect(splitIntoBottles({ doses, factor: Math.floor(split.mostFactor), bottleLitres: 1, water: {} }).fits).toBe(
      true,
    );
  });

  it("calcium never stands beside sulfate or phosphate", () => {
    for (const factor of [2, 50, 500]) {
      const { a, b } = splitIntoBottles({ doses, factor, bottleLitres: 1, water: {} });
      expect(a.parts.some(({ feed: one }) => (one.label.percent.S ?? 0) + (one.label.percent.P ?? 0) > 0)).toBe(false);
      expect(b.parts.some(({ feed: one }) => (one.label.percent.Ca ?? 0) > 0)).toBe(false);
    }
  });

  it("hard water in bottle B may bring gypsum: by hand, 2.5 mmol/L of calcium and 0.2 mol/L of sulfate are 10^-3.3, gypsum is 10^-4.58", () => {
    const hard = splitIntoBottles({ doses, factor: 100, bottleLitres: 1, water: { Ca: 100 } });
    expect(hard.notices.join(" ")).toContain("low-mineral water");
  });

  it("what cannot be split stands apart, and what is not known is said", () => {
    const more = [
      ...doses,
      { feed: ALL, perLitre: 0.1 },
      { feed: SILICATE, perLitre: 0.1 },
      { feed: feed("Trace mix", "Fe 7 Mn 2"), perLitre: 0.02 },
    ];
    const split = splitIntoBottles({ doses: more, factor: 100, bottleLitres: 1, water: {} });
    expect(names(split.apart.map((one) => ({ feed: one })))).toEqual(["All in one", "Silicate"]);
    expect(split.notices).toContain(
      "How much of Trace mix dissolves is not published here. Look at the label, and watch the bottle for a sediment.",
    );
  });

  it("more liquid than the bottle holds does not fit", () => {
    const split = splitIntoBottles({
      doses: [{ feed: feed("L", "N 4 NO3-N 4 K2O 2", 1.1), perLitre: 20 }],
      factor: 100,
      bottleLitres: 1,
      water: {},
    });
    expect(split.fits).toBe(false);
    expect(split.notices[0]).toContain("more than the bottle holds");
  });

  it("a factor of 1 and a bottle of nothing are refused", () => {
    expect(refusal(() => splitIntoBottles({ doses, factor: 1, bottleLitres: 1, water: {} }))).toBe(
      "The factor is 1. Give a number above 1, like 100.",
    );
    expect(refusal(() => splitIntoBottles({ doses, factor: 100, bottleLitres: 0, water: {} }))).toBe(
      "The bottle holds 0 L. Give a number above 0.",
    );
  });
});
