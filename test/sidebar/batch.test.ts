/** What a batch works out to, against published solutions and units, and what keeps it from being logged. */

import { describe, expect, test } from "vitest";
import { work } from "../../sidebar/batch.ts";
import {
  type BatchDraft,
  chooseFeed,
  fillDoses,
  freshBatch,
  makeBatch,
  readBatch,
  switchMode,
} from "../../sidebar/batch-draft.ts";
import { readChoices } from "../../sidebar/batch-shelf.ts";
import { perLitreOf, unitsFor } from "../../sidebar/batch-typed.ts";
import { sheet } from "./sheet.ts";

const loaded = sheet();
const shelf = readChoices(loaded);
const SALTS = [
  "Potassium nitrate",
  "Calcium nitrate tetrahydrate",
  "Potassium dihydrogen phosphate",
  "Magnesium sulfate heptahydrate",
];

function draft(change: Partial<BatchDraft> = {}): BatchDraft {
  return {
    ...freshBatch(() => "made-id-1"),
    water: "(pure water)",
    target: "foliage, half strength",
    feeds: SALTS,
    litres: "10",
    ...change,
  };
}

describe("worked out for a target", () => {
  // Hoagland & Arnon 1950, Calif. Agr. Exp. Sta. Circular 347, solution 1: KNO3 5, Ca(NO3)2·4H2O 5, KH2PO4 1,
  // MgSO4·7H2O 2 mmol/L, published as N 210, P 31, K 235, Ca 200, Mg 48.6, S 64 mg/L; grams from the CIAAW weights.
  const hoagland = readChoices({
    ...loaded,
    targets: [{ row: 2, fields: { Target: "Full", N: 210, P: 31, K: 235, Ca: 200, Mg: 48.6, S: 64 } }],
  });
  const RECIPE_G_L = [0.5055, 1.1807, 0.1361, 0.4929];

  test("the published recipe comes out, to within the rounding of the published mg/L", () => {
    const worked = work(draft({ target: "full" }), hoagland);
    expect(worked.lines.map(({ feed }) => feed)).toEqual(SALTS);
    worked.lines.forEach(({ perLitre, unit }, index) => {
      expect(unit).toBe("g");
      expect(Math.abs(perLitre / (RECIPE_G_L[index] ?? 0) - 1)).toBeLessThan(0.015);
    });
    expect(worked.notReached).toEqual([]);
  });

  test("what the water brings is counted first", () => {
    const worked = work(draft({ water: "tap" }), shelf);
    expect(worked.water?.amounts.Ca).toBe(62);
    expect(worked.reached?.Ca).toBeGreaterThanOrEqual(62);
  });

  test("what no feed holds is told", () => {
    const worked = work(draft(), shelf);
    expect(worked.notReached.map(({ why }) => why)).toContain(
      "Iron stays at 0 of 1 mg/L: none of these feeds holds iron.",
    );
  });

  test.each([
    [{ water: "" }, "Choose a water."],
    [{ water: "", target: "", feeds: [] }, "Choose a water, a target and at least one feed."],
    [{ target: "gone from the sheet" }, "Choose a target."],
    [{ feeds: ["Fish and kelp brew"] }, "Choose at least one feed."],
  ])("%o: what is missing is said", (change, missing) => {
    expect(work(draft(change), shelf)).toMatchObject({ missing, reached: null, lines: [] });
  });
});

describe("doses given", () => {
  // 10-5-5 at 1.20 g/mL, one US teaspoon in a US gallon: 768 teaspoons make a gallon (NIST Handbook 44, App. C);
  // P2O5 and K2O to P and K with 0.43643 and 0.83015.
  const liquid = readChoices({
    ...loaded,
    feeds: [{ row: 2, fields: { Feed: "Liquid", N: 10, P2O5: 5, K2O: 5, Density: 1.2 } }],
  });
  const given = draft({
    mode: "doses",
    target: "",
    feeds: ["Liquid"],
    doses: { Liquid: "1" },
    units: { Liquid: "tsp/gal" },
  });

  test("a teaspoon in a gallon is worked out in mg/L and in mL for each litre", () => {
    const worked = work(given, liquid);
    expect(worked.reached?.N).toBeCloseTo(156.25, 2);
    expect(worked.reached?.P).toBeCloseTo(34.1, 2);
    expect(worked.reached?.K).toBeCloseTo(64.86, 2);
    expect(worked.lines).toMatchObject([{ feed: "Liquid", perLitre: expect.closeTo(1000 / 768, 9), unit: "mL" }]);
  });

  test("an ounce in a gallon of a liquid is measured out in mL", () => {
    const [feed] = work(given, liquid).feeds;
    if (feed === undefined) throw new Error("There should be a feed.");
    // An ounce is 28.349523125 g, a gallon 3.785411784 L (NIST Handbook 44, App. C).
    expect(perLitreOf(feed, 1, "oz/gal")).toBeCloseTo(28.349523125 / 1.2 / 3.785411784, 9);
  });

  test("a solid without a density is given by weight only", () => {
    const [salt] = work(draft(), shelf).feeds;
    if (salt === undefined) throw new Error("There should be a feed.");
    expect(unitsFor(salt)).toEqual(["g/L", "g/gal", "oz/gal"]);
  });

  test("decimal commas are read; a dose that cannot be read is told and left out", () => {
    const worked = work(
      draft({ mode: "doses", doses: { "Potassium nitrate": "0,5", "Calcium nitrate tetrahydrate": "1,234.5" } }),
      shelf,
    );
    expect(worked.reached?.N).toBeCloseTo(5 * 13.854, 6);
    expect(worked.doses["Calcium nitrate tetrahydrate"]?.problem).toContain('"1,234.5"');
    expect(worked.uncounted).toEqual(SALTS.slice(1));
  });

  test("a negative dose is refused", () => {
    const worked = work(draft({ mode: "doses", doses: { "Potassium nitrate": "-1" } }), shelf);
    expect(worked.doses["Potassium nitrate"]?.problem).toBe("The dose is -1 g/L. Give a number from 0 to 500 g/L.");
  });
});

describe("feeds that may not enter a recipe", () => {
  test("stand on the shelf with their reasons", () => {
    const reasons = shelf.feeds.filter(({ feed }) => feed === null);
    expect(reasons.map(({ name }) => name)).toEqual(["Fish and kelp brew", "Green bottle without a label"]);
    expect(reasons[0]?.reason).toContain("organic");
    expect(reasons[1]?.reason).toContain("no published analysis");
  });
});

describe("the request", () => {
  const make = (change: Partial<BatchDraft>, who = "Ama") => {
    const now = draft(change);
    return makeBatch(now, work(now, shelf), {
      who,
      today: loaded.today,
      chemistry: { predictedEcMsCm: 1.1, acid: "Phosphoric acid 85 %: 1 mL, to pH 5.8", adds: { P: 12.5 } },
    });
  };

  test("holds unrounded doses for a litre and for the batch, without feeds that are not needed", () => {
    const request = make({
      water: "tap",
      feeds: [...SALTS, "Complete liquid 4-2-6"],
      note: " first try ",
      litres: "7,5",
    });
    if (typeof request === "string") throw new Error(request);
    expect(request).toMatchObject({ ask: "log batch", who: "Ama" });
    expect(request.batch).toMatchObject({
      id: "made-id-1",
      day: "2026-03-14",
      litres: 7.5,
      water: "Tap",
      target: "Foliage, half strength",
      note: "first try",
      predictedEcMsCm: 1.1,
      acid: "Phosphoric acid 85 %: 1 mL, to pH 5.8",
    });
    const without = work(draft({ water: "tap", feeds: [...SALTS, "Complete liquid 4-2-6"], litres: "7,5" }), shelf);
    expect(request.batch.reached.P).toBeCloseTo((without.reached?.P ?? 0) + 12.5, 9);
    expect(request.batch.reached.N).toBe(without.reached?.N);
    for (const { perLitre, perBatch } of request.batch.doses) {
      expect(perLitre).toBeGreaterThan(0);
      expect(perBatch).toBe(perLitre * 7.5);
    }
  });

  test.each<[Partial<BatchDraft>, string, string]>([
    [{}, "", "Type your name first, so that the log can say who did this."],
    [{ water: "" }, "Ama", "Choose a water."],
    [{ litres: "" }, "Ama", "Type how many litres you mix."],
    [{ litres: "0" }, "Ama", "Type how many litres you mix."],
    [{ litres: "ten" }, "Ama", 'The batch is "ten". Give a plain number in L, like 1.2.'],
    [{ day: "none" }, "Ama", "Choose the date."],
    [{ mode: "doses" }, "Ama", "Type a dose for each feed."],
    [
      { mode: "doses", doses: { "Potassium nitrate": "1" } },
      "Ama",
      "Type the dose of Calcium nitrate tetrahydrate, or take that feed out of the choice.",
    ],
    [
      { mode: "doses", feeds: ["Potassium nitrate"], doses: { "Potassium nitrate": "0" } },
      "Ama",
      "There is nothing to weigh: every dose is 0.",
    ],
  ])("%o by “%s” is not made: %s", (change, who, sentence) => {
    expect(make(change, who)).toBe(sentence);
  });
});

describe("the draft", () => {
  test("keeps the doses worked out when doses are to be typed, and never types over typed ones unasked", () => {
    const now = draft({ feeds: ["Potassium nitrate"] });
    const typed = switchMode(now, "doses", work(now, shelf));
    expect(Object.keys(typed.doses)).toEqual(["Potassium nitrate"]);
    const own = { ...typed, doses: { "Potassium nitrate": "9" } };
    expect(switchMode(switchMode(own, "target", work(own, shelf)), "doses", work(now, shelf)).doses).toEqual(own.doses);
    expect(fillDoses(own, work(now, shelf)).doses).toEqual(typed.doses);
  });

  test("comes back as it was kept; one of another version does not", () => {
    const now = chooseFeed(draft({ logged: true, units: { a: "g/L" } }), "Complete liquid 4-2-6", true);
    expect(readBatch(JSON.parse(JSON.stringify(now)))).toEqual(now);
    for (const kept of [null, 3, [], "x", {}, { id: "NO" }]) expect(readBatch(kept)).toBeNull();
  });
});
