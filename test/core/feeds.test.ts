/** The shelf: rows that become feeds, and the reason beside each that may not enter a recipe. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LABEL_TERMS } from "../../src/core/analysis.ts";
import { type Fields, feedByName, feedOf, readShelf, readShelfFeed } from "../../src/core/feeds.ts";
import { parseLabel } from "../../src/core/label.ts";
import { percentOf } from "./formula.ts";
import { refusal } from "./refusal.ts";

const WHERE = "row 7 of Feeds";
const reasonOf = (fields: Fields) => {
  const { feed, reason } = readShelfFeed(fields, WHERE);
  expect(feed).toBeNull();
  return reason;
};

describe("a row becomes a feed", () => {
  it("with P and K as elements, P2O5 and K2O as oxides, blank basis w/w, a solid", () => {
    const { feed, reason, name } = readShelfFeed({ Feed: " Potassium nitrate ", ...percentOf("KNO3") }, WHERE);
    expect(reason).toBeNull();
    expect(name).toBe("Potassium nitrate");
    // Percent of KNO3, 101.102 g/mol, by hand: 14.007 / 101.102 and 39.098 / 101.102.
    expect(feed?.label.percent.N).toBeCloseTo(13.854, 3);
    expect(feed?.label.percent.K).toBeCloseTo(38.672, 3);
    expect(feed?.label.basis).toBe("w/w");
    expect(feed?.liquid).toBe(false);
    expect(readShelfFeed({ Feed: "x", P2O5: 20, K2O: 10 }, WHERE).feed?.label.percent.P).toBeCloseTo(8.729, 3);
  });

  it("a density or a w/v basis makes a liquid", () => {
    expect(readShelfFeed({ Feed: "x", N: 5, Density: 1.2 }, WHERE).feed?.liquid).toBe(true);
    expect(readShelfFeed({ Feed: "x", N: 5, Basis: "w/v" }, WHERE).feed?.liquid).toBe(true);
    expect(readShelfFeed({ Feed: "x", N: 5, Basis: "W/W" }, WHERE).feed?.liquid).toBe(false);
  });

  it("numbers may be text in one's own way of writing; a percent is never grouped by thousands", () => {
    const { feed } = readShelfFeed({ Feed: "x", N: "10,5 %", Fe: "0.125", Ca: "1,234" }, WHERE);
    expect(feed?.label.percent).toEqual({ N: 10.5, Fe: 0.125, Ca: 1.234 });
  });

  it("unknown columns are left alone; mineral origin and a published analysis are no hindrance", () => {
    const fields = { Feed: "x", N: 5, Colour: "blue", Origin: "Mineral", "Analysis published": "yes", Lot: 3 };
    expect(readShelfFeed(fields, WHERE).reason).toBeNull();
  });
});

describe("a row that may not enter a recipe says why", () => {
  it.each<[Fields, string]>([
    [
      { Feed: "Seaweed brew", N: 5, Origin: "organic" },
      "Seaweed brew is organic: it feeds only where a soil's life breaks it down, and it fouls a reservoir. It may stand on the shelf but enters no recipe.",
    ],
    [
      { Feed: "Green drops", N: 5, "Analysis published": "no" },
      "Green drops has no published analysis, so nobody can say what a dose of it brings. It may stand on the shelf but enters no recipe.",
    ],
    [
      { Feed: "Green drops", "Analysis published": false },
      "Green drops has no published analysis, so nobody can say what a dose of it brings. It may stand on the shelf but enters no recipe.",
    ],
    [
      { Feed: "Green drops" },
      "Green drops has nothing on its label in row 7 of Feeds. Fill in the printed analysis before it enters a recipe.",
    ],
    [
      { Feed: "Green drops", N: 0, K: 0 },
      "Green drops has nothing on its label in row 7 of Feeds. Fill in the printed analysis before it enters a recipe.",
    ],
    [{ N: 5 }, "There is no name in the column Feed, row 7 of Feeds."],
    [{ Feed: true, N: 5 }, "Feed in row 7 of Feeds is a ticked box. Give it as text, with ' in front if need be."],
    [{ Feed: "x", N: "about 5" }, 'N in row 7 of Feeds is "about 5". Give a plain number in %, like 1.2.'],
    [{ Feed: "x", N: -5 }, "N in row 7 of Feeds is -5 %. Give a number from 0 to 100 %."],
    [{ Feed: "x", N: 500 }, "N in row 7 of Feeds is 500 %. Give a number from 0 to 100 %."],
    [{ Feed: "x", N: "#N/A" }, "N in row 7 of Feeds is an error cell (#N/A). Mend that cell or clear it."],
    [{ Feed: "x", N: 5, Basis: "v/v" }, 'Basis in row 7 of Feeds is "v/v". Give w/w or w/v.'],
    [{ Feed: "x", N: 5, Density: 12 }, "Density in row 7 of Feeds is 12 g/mL. Give a number from 0.3 to 3 g/mL."],
    [
      { Feed: "x", N: 5, Origin: "fish" },
      'Origin in row 7 of Feeds is "fish". Give mineral, organic or organic-mineral.',
    ],
    [
      { Feed: "x", N: 5, "Analysis published": "perhaps" },
      'Analysis published in row 7 of Feeds is "perhaps". Write yes or no.',
    ],
    [
      { Feed: "x", N: 60, P2O5: 30, K2O: 20 },
      "The label of x adds up to 110 %, more than 100 %. Compare it with the package.",
    ],
    [
      { Feed: "x", P2O5: 5, P: 5 },
      "The label of x: P2O5 5 % is 2.18 % P, but it also says P 5 %. Leave out the wrong one.",
    ],
    [
      { Feed: "x", N: 10, "NO3-N": 6, "NH4-N": 3 },
      "The label of x: the forms of nitrogen add up to 9 %, but total N is 10 %. Give every form that is printed, or N alone.",
    ],
  ])("%j", (fields, sentence) => {
    expect(reasonOf(fields)).toBe(sentence);
  });

  it("any row comes back, with a feed or with a reason, never both or neither", () => {
    const value = fc.oneof(fc.double({ noNaN: true }), fc.string(), fc.boolean(), fc.constant(undefined));
    const fields = fc.dictionary(fc.constantFrom("Feed", "Basis", "Density", "Origin", ...LABEL_TERMS), value);
    fc.assert(
      fc.property(fields, (row) => {
        const { feed, reason } = readShelfFeed(row, WHERE);
        expect(feed === null).toBe(reason !== null);
      }),
    );
  });
});

it("a density that no feed has is refused, and an organic-mineral feed like an organic one", () => {
  expect(refusal(() => feedOf("Drops", parseLabel("10-5-5"), 12))).toBe(
    "The density of Drops is 12 g/mL. Give a number from 0.3 to 3 g/mL.",
  );
  expect(reasonOf({ Feed: "Pellets", N: 5, Origin: "organic-mineral" })).toMatch(/^Pellets is organic/);
  expect(readShelfFeed({ Feed: true, N: 5 }, WHERE).name).toBe("");
});

it("rows without a name are no namesakes, and the first of three goes with the second", () => {
  const rows = [{}, {}, { Feed: "A", N: 5 }, { Feed: "a", N: 5 }, { Feed: "A ", N: 5 }];
  const shelf = readShelf(rows.map((fields, at) => ({ fields, where: `row ${at + 2} of Feeds` })));
  expect(shelf.slice(0, 2).map(({ reason }) => reason)).toEqual([
    "There is no name in the column Feed, row 2 of Feeds.",
    "There is no name in the column Feed, row 3 of Feeds.",
  ]);
  expect(shelf[2]?.reason).toContain("(row 4 of Feeds and row 5 of Feeds)");
  expect(shelf[4]?.reason).toContain("(row 4 of Feeds and row 6 of Feeds)");
});

describe("a shelf", () => {
  const rows = [
    { fields: { Feed: "Calcium nitrate", N: 15.5, Ca: 19 }, where: "row 2 of Feeds" },
    { fields: { Feed: "Worm tea", N: 1, Origin: "organic" }, where: "row 3 of Feeds" },
    { fields: { Feed: "Epsom salt", Mg: 9.8, S: 13 }, where: "row 4 of Feeds" },
    { fields: { Feed: " epsom  SALT ", Mg: 10 }, where: "row 5 of Feeds" },
  ];
  const shelf = readShelf(rows);

  it("keeps every row, and both of two feeds with one name out of recipes", () => {
    expect(shelf.map(({ name }) => name)).toEqual(["Calcium nitrate", "Worm tea", "Epsom salt", "epsom  SALT"]);
    const both = "(row 4 of Feeds and row 5 of Feeds). Give one of them another name.";
    expect(shelf[2]?.reason).toBe(`Two feeds are called epsom  SALT ${both}`);
    expect(shelf[3]?.reason).toBe(`Two feeds are called epsom  SALT ${both}`);
  });

  it("finds a feed by name, whatever its case and spaces", () => {
    expect(feedByName(shelf, " CALCIUM nitrate").name).toBe("Calcium nitrate");
  });

  it("says why a feed cannot be had", () => {
    expect(refusal(() => feedByName(shelf, "Kelp"))).toBe(
      '"Kelp" is no feed on the shelf. Write the name as it stands in the column Feed.',
    );
    expect(refusal(() => feedByName(shelf, "worm tea"))).toMatch(/^Worm tea is organic/);
  });
});
