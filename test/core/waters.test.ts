/** Rows of waters and targets. */

import { describe, expect, it } from "vitest";
import type { Fields } from "../../src/core/feeds.ts";
import { readTarget, readWater } from "../../src/core/waters.ts";
import { refusal } from "./refusal.ts";

const WATER = "row 7 of Waters";

describe("readWater", () => {
  it("counts nitrate as N and sulfate as S, and keeps the rest apart", () => {
    const fields = { Water: "Tap", Ca: 85, SO4: 89, "NO3-N": "4,5", Alkalinity: 297, EC: 0.82, pH: 7.6, Cl: 131 };
    const water = readWater(fields, WATER);
    expect(water.name).toBe("Tap");
    // 32.06 / 96.056 of the sulfate, by hand: 29.70.
    expect(water.amounts.S).toBeCloseTo(29.7, 2);
    expect(water.amounts).toMatchObject({ Ca: 85, N: 4.5, Cl: 131 });
    expect(Object.keys(water.amounts).sort()).toEqual(["Ca", "Cl", "N", "S"]);
    expect(water).toMatchObject({ alkalinityMgCaCO3L: 297, ecMsCm: 0.82, pH: 7.6 });
  });

  it("what is blank is not known, not 0", () => {
    expect(readWater({}, WATER)).toEqual({ name: "", amounts: {}, alkalinityMgCaCO3L: null, ecMsCm: null, pH: null });
  });

  it("takes N beside NO3-N and S beside SO4 when they agree, to 2 % of the larger, and either alone", () => {
    expect(readWater({ N: 5, "NO3-N": 5, S: 10, SO4: 30 }, WATER).amounts).toEqual({ N: 5, S: 10 });
    expect(readWater({ N: 100, "NO3-N": 98 }, WATER).amounts).toEqual({ N: 100 });
    expect(readWater({ N: 98, "NO3-N": 100 }, WATER).amounts).toEqual({ N: 98 });
    expect(readWater({ N: 5, S: 10 }, WATER).amounts).toEqual({ N: 5, S: 10 });
  });

  it.each<[Fields, string]>([
    [{ Ca: -1 }, "Ca in row 7 of Waters is -1 mg/L. Give a number from 0 to 1000000 mg/L."],
    [{ Ca: "hard" }, 'Ca in row 7 of Waters is "hard". Give a plain number in mg/L, like 1.2.'],
    [{ Ca: "#REF!" }, "Ca in row 7 of Waters is an error cell (#REF!). Mend that cell or clear it."],
    [{ pH: 76 }, "pH in row 7 of Waters is 76. Give a number from 0 to 14."],
    [{ EC: 650 }, "EC in row 7 of Waters is 650 mS/cm. Give a number from 0 to 100 mS/cm."],
    [{ S: 30, SO4: 30 }, "SO4 in row 7 of Waters makes 10 mg/L S, but S is 30 mg/L. Leave out the wrong one."],
    [{ Water: "#REF!" }, "Water in row 7 of Waters is an error cell (#REF!). Mend that cell or clear it."],
    [{ N: 20, "NO3-N": 4 }, "NO3-N in row 7 of Waters makes 4 mg/L N, but N is 20 mg/L. Leave out the wrong one."],
  ])("refuses %j", (fields, sentence) => {
    expect(refusal(() => readWater(fields, WATER))).toBe(sentence);
  });
});

describe("readTarget", () => {
  it("a blank is not counted, a 0 is wanted to be 0", () => {
    expect(readTarget({ Target: "Half", N: 105, P: "15.5", Ca: 0 }, "row 2 of Targets")).toEqual({
      name: "Half",
      wanted: { N: 105, P: 15.5, Ca: 0 },
    });
    expect(readTarget({ N: 105 }, "row 2 of Targets").name).toBe("");
  });

  it.each<[Fields, string]>([
    [
      { Target: "Half" },
      "The target in row 2 of Targets has no numbers. Fill in mg/L under N P K Ca Mg S Fe Mn Zn B Cu Mo.",
    ],
    [{ Target: "#N/A", N: 1 }, "Target in row 2 of Targets is an error cell (#N/A). Mend that cell or clear it."],
    [{ N: -1 }, "N in row 2 of Targets is -1 mg/L. Give a number from 0 to 1000000 mg/L."],
    [{ N: "1.234" }, 'N in row 2 of Targets is "1.234", which can be read in two ways. Type 1.2340 or 1234.'],
  ])("refuses %j", (fields, sentence) => {
    expect(refusal(() => readTarget(fields, "row 2 of Targets"))).toBe(sentence);
  });
});
