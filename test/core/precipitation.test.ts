import { describe, expect, test } from "vitest";
import { risks, riskText } from "../../src/core/precipitation.ts";
import { solveState } from "../../src/core/speciation.ts";
import { problemOf, referenceRows } from "./reference-rows.ts";

const HOAGLAND_1 = { N: 210, P: 31, K: 235, Ca: 200, Mg: 48.6, S: 64 };

describe("full-strength Hoagland 1 meets brushite saturation near pH 6.4 (6.55 with all pairs)", () => {
  test("nothing at 5.8, just at its limit at 6.5, too much at 7", () => {
    expect(riskText({ amounts: HOAGLAND_1 }, { pH: 5.8 })).toBe("");
    expect(riskText({ amounts: HOAGLAND_1 }, { pH: 6.5 })).toMatch(
      /^Calcium phosphate \(brushite\) is just at its limit at pH 6\.5; /,
    );
    expect(riskText({ amounts: HOAGLAND_1 }, { pH: 7 })).toMatch(
      /^Calcium phosphate \(brushite\) may fall out: \d\.\d times too much at pH 7\.0/,
    );
  });
});

test("a hundredfold concentrate of calcium with sulfate drops gypsum (Ca apart from sulfate: DPIRD Western Australia)", () => {
  expect(riskText({ amounts: { Ca: 2000, N: 1400, K: 2000, S: 1600 } }, { pH: 5.5 })).toMatch(
    /^Calcium sulfate \(gypsum\) may fall out/,
  );
});

test("PHREEQC's 92 rows: what it calls oversaturated is named, the most so first", () => {
  for (const row of referenceRows) {
    const found = risks(solveState(problemOf(row)));
    const over = Object.entries(row.result.saturationIndex)
      .filter(([name, index]) => name !== "CO2(g)" && index !== null && index > 0.01)
      .map(([name]) => name.toLowerCase());
    expect(found.map((risk) => risk.solid)).toEqual(expect.arrayContaining(over));
    for (let i = 1; i < found.length; i++) expect(found[i]?.index).toBeLessThanOrEqual(found[i - 1]?.index ?? 0);
  }
});

describe("a strong mix at pH 8 in which all four solids are far too much", () => {
  const totals = { Ca: 0.03, Mg: 0.01, NH4: 0.01, PO4: 0.01, SO4: 0.05, K: 0.03, Cl: 0.01 };
  const found = risks(solveState({ totals, carbon: { totalMolKg: 0.005 }, pH: 8, tempC: 25 }));

  test.each([
    ["calcite", "calcium carbonate (calcite)"],
    ["gypsum", "calcium sulfate (gypsum)"],
    ["brushite", "calcium phosphate (brushite)"],
    ["struvite", "magnesium ammonium phosphate (struvite)"],
  ])("%s is named, with its pH and something to do about it", (solid, name) => {
    const words = found.find((risk) => risk.solid === solid)?.words ?? "";
    expect(words).toContain(`${name} may fall out: `);
    expect(words).toMatch(/ times too much at pH 8\.0; (lower|dilute)[^;]{5,}$/);
  });

  test("the most at risk comes first", () => {
    const indices = found.map(({ index }) => index);
    expect(indices).toHaveLength(4);
    expect(indices).toEqual([...indices].sort((a, b) => b - a));
  });

  test("an index of 2 is a hundred times, said in whole times; one below 1 with its tenths", () => {
    for (const { index, words } of found) {
      const times = Number(/: ([\d.]+) times/.exec(words)?.[1]);
      expect(Math.abs(times / 10 ** index - 1)).toBeLessThan(0.05);
      expect(/: \d+\.\d times/.test(words)).toBe(index < 1);
    }
    expect(found.some(({ index }) => index > 1)).toBe(true);
    expect(found.some(({ index }) => index < 1)).toBe(true);
  });

  test("each is a sentence of its own", () => {
    const text = riskText({ amounts: { ...HOAGLAND_1, Ca: 2000, S: 2000, P: 300 } }, { pH: 8 });
    expect(text).toMatch(/^Calcium phosphate .*\. Calcium sulfate .*\.$/);
  });
});
