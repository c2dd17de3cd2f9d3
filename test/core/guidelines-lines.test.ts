/**
 * Each line of a water against the table it is judged by: Ayers & Westcot 1985, FAO Irrigation and Drainage Paper 29
 * Rev. 1, table 1 (none below the first limit, severe above the second), and 40 CFR 141, from memory.
 */

import { describe, expect, test } from "vitest";
import { type Flag, guidelineFlags, sodiumRatio, waterAdvice } from "../../src/core/guidelines.ts";
import type { WaterLines } from "../../src/core/water-lines.ts";

const only = (water: WaterLines): Flag | undefined => {
  const flags = guidelineFlags(water);
  expect(flags.length).toBeLessThanOrEqual(1);
  return flags[0];
};
// mg/L for one meq/L, CIAAW 2021
const CL = 35.45;
const CACO3 = 50.043;

describe("limits of irrigation water", () => {
  test.each<[string, (of: number) => WaterLines, number, number, string, RegExp, RegExp]>([
    ["EC", (of) => ({ EC: of }), 0.7, 3, "mS/cm", /^Salts altogether: /, /from (0\.7|3) mS\/cm\.$/],
    [
      "Cl",
      (of) => ({ Cl: of * CL }),
      4,
      10,
      "meq/L",
      /^Chloride: /,
      /from (4 meq\/L, 142 mg\/L|10 meq\/L, 35[45] mg\/L)\.$/,
    ],
    ["B", (of) => ({ B: of }), 0.7, 3, "mg/L", /^Boron: /, /from (0\.7|3) mg\/L\.$/],
    [
      "Alkalinity",
      (of) => ({ Alkalinity: of * CACO3 }),
      1.5,
      8.5,
      "meq/L",
      /^Bicarbonate: /,
      /from (1\.5 meq\/L, 75\.\d mg\/L|8\.5 meq\/L, 425 mg\/L) as CaCO3\.$/,
    ],
  ])("%s", (line, water, first, second, unit, start, end) => {
    expect(only(water(first * 0.99))).toBeUndefined();
    for (const [of, level] of [
      [first * 1.001, "slight to moderate"],
      [second * 0.999, "slight to moderate"],
      [second * 1.001, "severe"],
    ] as const) {
      const flag = only(water(of));
      expect(flag).toMatchObject({ line, unit, level, source: expect.stringContaining("FAO") });
      expect(flag?.value).toBeCloseTo(of, 2);
      expect(flag?.words).toMatch(start);
      expect(flag?.words).toMatch(end);
      expect(flag?.words).toContain(`${unit}, restriction is ${level} from ${level === "severe" ? second : first} `);
    }
  });

  test("a value on the limit is restricted, and on the second not yet severe", () => {
    expect(only({ EC: 0.7 })?.level).toBe("slight to moderate");
    expect(only({ EC: 3 })?.level).toBe("slight to moderate");
  });

  test("sodium against calcium and magnesium has no unit", () => {
    // 22.99, 20.04 and 12.15 mg/L are one meq/L each: 4 / √((1 + 1) / 2) = 4, and 10 is severe
    const water = (na: number): WaterLines => ({ Na: na * 22.99, Ca: 20.039, Mg: 12.1525 });
    expect(sodiumRatio(water(4))).toBeCloseTo(4, 2);
    const flag = only(water(4));
    expect(flag).toMatchObject({ line: "Sodium ratio", unit: "", level: "slight to moderate" });
    expect(flag?.words).toMatch(
      /^Sodium against calcium and magnesium: 4, restriction is slight to moderate from 3\.$/,
    );
    expect(only(water(10))?.words).toMatch(/: 10, restriction is severe from 9\.$/);
    expect(only(water(2.9))).toBeUndefined();
  });

  test("the ratio needs all three, is 0 without sodium, and nothing where only sodium is there", () => {
    expect(sodiumRatio({ Na: 10, Ca: 10 })).toBeNull();
    expect(sodiumRatio({ Na: 10, Mg: 10 })).toBeNull();
    expect(sodiumRatio({ Ca: 10, Mg: 10 })).toBeNull();
    expect(sodiumRatio({ Na: 0, Ca: 0, Mg: 0 })).toBe(0);
    expect(sodiumRatio({ Na: 10, Ca: 0, Mg: 0 })).toBeNull();
  });

  test("pH is normal from 6.5 to 8.4, both included", () => {
    expect([6.5, 7.5, 8.4].flatMap((pH) => guidelineFlags({ pH }))).toEqual([]);
    for (const pH of [6.4, 8.5]) {
      expect(only({ pH })).toMatchObject({ line: "pH", value: pH, unit: "", level: "outside" });
      expect(only({ pH })?.words).toContain(`pH ${pH} is outside`);
    }
  });

  test("nothing that was not measured is judged", () => {
    expect(guidelineFlags({})).toEqual([]);
  });
});

describe("limits of drinking water", () => {
  test.each([
    ["NO3-N", 10, /^Nitrate as N: 10\.1 mg\/L is above .* 10 mg\/L\. Do not give it to infants/],
    ["Free chlorine", 4, /^Free chlorine: 4\.1 mg\/L is above .* 4 mg\/L\.$/],
    ["Chloramine", 4, /^Chloramine \(as total chlorine\): 4\.1 mg\/L is above .* 4 mg\/L\.$/],
  ] as const)("%s: %d mg/L", (line, limit, words) => {
    const above = (value: number) =>
      guidelineFlags({ [line]: value }).filter(({ level }) => level === "above the limit");
    expect(above(limit)).toEqual([]);
    expect(above(limit + 0.1)).toEqual([
      {
        line,
        value: limit + 0.1,
        unit: "mg/L",
        level: "above the limit",
        words: expect.stringMatching(words),
        source: expect.stringContaining("40 CFR 141"),
      },
    ]);
  });
});

test("what keeps water safe to drink is said with how it leaves: bound or free", () => {
  expect(only({ Chloramine: 1 })).toMatchObject({
    line: "Chloramine",
    value: 1,
    unit: "mg/L",
    level: "mind",
    source: "common practice, no source",
  });
  expect(only({ Chloramine: 1 })?.words).toMatch(/carbon filter/);
  expect(only({ "Free chlorine": 1 })).toMatchObject({ line: "Free chlorine", value: 1, unit: "mg/L", level: "mind" });
  expect(only({ "Free chlorine": 1 })?.words).toMatch(/overnight/);
  expect(only({ "Free chlorine": 1, Chloramine: 1 })?.line).toBe("Chloramine");
  expect(only({ "Free chlorine": 0, Chloramine: 0 })).toBeUndefined();
});

describe("advice", () => {
  test("to blend goes by the worst line, and names it; a ratio falls with the root of the dilution", () => {
    // EC 1.4 halves; chloride 16 meq/L takes a quarter; boron 2.8 a quarter; ratio 6 falls to 3 in a quarter
    for (const [water, share, name] of [
      [{ EC: 1.4 }, 0.5, "its salts"],
      [{ Cl: 16 * CL }, 0.25, "its chloride"],
      [{ B: 2.8 }, 0.25, "its boron"],
      [{ Na: 6 * 22.99, Ca: 20.039, Mg: 12.1525 }, 0.25, "its sodium"],
      [{ Alkalinity: 17 * CACO3 }, 0.5, "its alkalinity"],
      [{ EC: 1.4, Cl: 16 * CL }, 0.25, "its chloride"],
      [{ EC: 2.8, Cl: 8 * CL, B: 0.8 }, 0.25, "its salts"],
    ] as const) {
      const advice = waterAdvice(water);
      expect(advice.advice).toBe("blend");
      expect(advice.share).toBeCloseTo(share, 3);
      expect(advice.sentence).toContain(`because of ${name}: at most `);
    }
    expect(waterAdvice({ EC: 1.4 }).sentence).toContain("at most 50 %");
    expect(waterAdvice({ EC: 1.45 }).sentence).toContain("at most 45 %");
  });

  test("to leave it begins where less than a tenth could be used", () => {
    expect(waterAdvice({ EC: 7.1 })).toMatchObject({ advice: "leave", share: null });
    expect(waterAdvice({ EC: 7.1 }).sentence).toContain("its salts");
    expect(waterAdvice({ EC: 6.9 }).advice).toBe("blend");
  });

  test("to use it, with acid from 1.5 meq/L of alkalinity on", () => {
    expect(waterAdvice({ EC: 0.7, B: 0.7 })).toMatchObject({
      advice: "use",
      share: null,
      sentence: "Use it as it is.",
    });
    expect(waterAdvice({ Alkalinity: 1.4 * CACO3 }).sentence).toBe("Use it as it is.");
    expect(waterAdvice({ Alkalinity: 1.6 * CACO3 }).sentence).toMatch(/with acid/);
    expect(waterAdvice({ Alkalinity: 8.4 * CACO3 }).advice).toBe("use");
  });

  test("to measure where nothing can be judged", () => {
    expect(waterAdvice({ pH: 7 })).toMatchObject({ advice: "measure", share: null });
  });
});

test("no sodium ratio without all three, also where there is no sodium", () => {
  expect(sodiumRatio({ Na: 0, Mg: 5 })).toBeNull();
  expect(sodiumRatio({ Na: 0, Ca: 5 })).toBeNull();
});
