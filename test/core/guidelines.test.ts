import { describe, expect, test } from "vitest";
import { guidelineFlags, sodiumRatio, waterAdvice } from "../../src/core/guidelines.ts";
import type { WaterLines } from "../../src/core/water-lines.ts";

const levels = (water: WaterLines) => guidelineFlags(water).map((flag) => [flag.line, flag.level]);

describe("FAO 29 Rev. 1 (Ayers & Westcot 1985), table 1", () => {
  test.each([
    [{ EC: 0.69 }, []],
    [{ EC: 0.7 }, [["EC", "slight to moderate"]]],
    [{ EC: 3.1 }, [["EC", "severe"]]],
    [{ B: 0.6 }, []],
    [{ B: 1 }, [["B", "slight to moderate"]]],
    [{ B: 3.5 }, [["B", "severe"]]],
    // chloride limits are 4 and 10 meq/L (141.8 and 354.5 mg/L); reprints misprint them as mg/L
    [{ Cl: 100 }, []],
    [{ Cl: 150 }, [["Cl", "slight to moderate"]]],
    [{ Cl: 360 }, [["Cl", "severe"]]],
    // bicarbonate 1.5 and 8.5 meq/L: 75 and 425 mg/L as CaCO3
    [{ Alkalinity: 70 }, []],
    [{ Alkalinity: 80 }, [["Alkalinity", "slight to moderate"]]],
    [{ Alkalinity: 430 }, [["Alkalinity", "severe"]]],
    [{ pH: 7 }, []],
    [{ pH: 8.6 }, [["pH", "outside"]]],
    [{ pH: 6.2 }, [["pH", "outside"]]],
  ] as [WaterLines, unknown][])("%o", (water, expected) => expect(levels(water)).toEqual(expected));

  test("sodium as SAR: Na 10 meq/L over √((4 + 4) / 2) is 5", () => {
    const water = { Na: 229.9, Ca: 2 * 40.078, Mg: 2 * 24.305 };
    expect(sodiumRatio(water)).toBeCloseTo(5, 9);
    expect(levels(water)).toEqual([["Sodium ratio", "slight to moderate"]]);
    expect(sodiumRatio({ Na: 10 })).toBeNull();
    expect(sodiumRatio({ Na: 10, Ca: 0, Mg: 0 })).toBeNull();
  });

  test("every flag says its limit in the ion's own unit and its source", () => {
    const [flag] = guidelineFlags({ Cl: 180 });
    expect(flag?.words).toBe("Chloride: 5.08 meq/L, restriction is slight to moderate from 4 meq/L, 142 mg/L.");
    expect(flag?.source).toMatch(/Paper 29/);
  });
});

describe("drinking water", () => {
  test("chlorine and chloramine above 4.0 mg/L (US EPA), nitrate above 10 mg/L as N (memory)", () => {
    expect(levels({ "Free chlorine": 4.5 })).toEqual([
      ["Free chlorine", "above the limit"],
      ["Free chlorine", "mind"],
    ]);
    expect(levels({ Chloramine: 4 })).toEqual([["Chloramine", "mind"]]);
    expect(guidelineFlags({ "NO3-N": 12 })[0]?.words).toMatch(/infants/);
  });
  test("free chlorine leaves on standing, chloramine does not (common practice, no source)", () => {
    expect(guidelineFlags({ "Free chlorine": 0.5 })[0]?.words).toMatch(/leaves when the water stands/);
    expect(guidelineFlags({ Chloramine: 1, "Free chlorine": 0.1 }).map((flag) => flag.line)).toEqual(["Chloramine"]);
  });
});

describe("one sentence of advice", () => {
  test.each([
    [{ EC: 0.3, Alkalinity: 40 }, "use", /as it is/],
    [{ EC: 0.6, Alkalinity: 200 }, "use", /with acid/],
    [{ EC: 1.4, Alkalinity: 100 }, "blend", /its salts: at most 50 %/],
    [{ Cl: 284, EC: 0.5 }, "blend", /its chloride: at most 45 %/],
    [{ B: 9, EC: 0.5 }, "leave", /its boron/],
    [{ Fe: 0.1 }, "measure", /Measure at least EC/],
  ] as [WaterLines, string, RegExp][])("%o: %s", (water, advice, sentence) => {
    const found = waterAdvice(water);
    expect(found.advice).toBe(advice);
    expect(found.sentence).toMatch(sentence);
  });
  test("the share brings the worst line to where FAO sees no restriction", () => {
    expect(waterAdvice({ EC: 1.4 }).share).toBeCloseTo(0.5, 12);
    const salty = { Na: 344.85, Ca: 80.156, Mg: 48.61 };
    const share = waterAdvice(salty).share ?? 0;
    const blend = { Na: salty.Na * share, Ca: salty.Ca * share, Mg: salty.Mg * share };
    expect(sodiumRatio(blend)).toBeCloseTo(3, 9);
  });
});
