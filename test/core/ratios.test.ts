/** Ratios of elements, by hand. */

import { describe, expect, it } from "vitest";
import { followRatios, ratioEqualities, ratioOff, ratioSymbols, sayRatio } from "../../src/core/ratios.ts";
import { refusal } from "./refusal.ts";

it("is said in the order of all tables", () => {
  expect(sayRatio({ Mg: 1, K: 4, Ca: 2.5 })).toBe("K:Ca:Mg 4:2.5:1");
  expect(ratioSymbols({ Ca: 1, N: 2 })).toEqual(["N", "Ca"]);
});

describe("followed from what is fixed", () => {
  it("sets the others over what was wanted, and leads on, in whatever order the ratios stand", () => {
    // N 120 in 3:1 makes P 40; P 40 in 2:1 makes K 20.
    expect(
      followRatios({ P: 7, Ca: 80 }, { N: 120 }, [
        { P: 2, K: 1 },
        { N: 3, P: 1 },
      ]),
    ).toEqual({
      N: 120,
      P: 40,
      K: 20,
      Ca: 80,
    });
  });

  it("two that agree may both stand, to the last digits", () =>
    expect(
      followRatios({}, { N: 90 }, [
        { N: 3, P: 1 },
        { N: 0.3, P: 0.1 },
      ]),
    ).toMatchObject({ P: 30 }));

  it("without anything fixed, a ratio goes by what is wanted of its elements", () =>
    expect(followRatios({ K: 100 }, {}, [{ K: 2, Ca: 1 }])).toEqual({ K: 100 }));

  it.each([
    [{}, {}, [{ N: 3, P: 1 }], "N:P 3:1 has no amount to go by."],
    [{ N: 0, K: 5 }, {}, [{ N: 3, P: 1 }], "N:P 3:1 has no amount to go by."],
    [{}, { N: 90 }, [{ N: 3 }], "A ratio names at least two elements"],
    [{}, { N: 90 }, [{ N: 3, P: 0 }], "The part of phosphorus in a ratio is 0. Give a number above 0, or leave P out."],
    [{}, { N: 90 }, [{ N: 3, P: Number.POSITIVE_INFINITY }], "The part of phosphorus in a ratio is"],
    [
      {},
      { N: 90 },
      [
        { N: 3, P: 1 },
        { N: 3, P: 1.001 },
      ],
      "N:P 3:1.001 does not fit with the other ratios: they set phosphorus twice.",
    ],
    [
      {},
      { N: 90 },
      [
        { N: 3, P: 1.001 },
        { N: 3, P: 1 },
      ],
      "N:P 3:1 does not fit with the other ratios: they set phosphorus twice.",
    ],
  ])("%j, fixed %j, %j is refused", (wanted, fixed, ratios, sentence) => {
    expect(refusal(() => followRatios(wanted, fixed, ratios))).toContain(sentence);
  });
});

describe("as equalities on doses", () => {
  it("hold exactly for doses that make the ratio with the water counted", () => {
    // Feeds bring N 100 K 50 and K 100 in a g/L, water N 20. 1 g and 0.9 g: N 120, K 140; 6:7.
    const [equality, ...more] = ratioEqualities(
      { N: 6, K: 7 },
      {
        perUnit: [{ N: 100, K: 50 }, { K: 100 }],
        water: { N: 20 },
      },
    );
    expect(more).toEqual([]);
    const at = (x: number, y: number) => (equality?.coefficients[0] ?? 0) * x + (equality?.coefficients[1] ?? 0) * y;
    expect(at(1, 0.9)).toBeCloseTo(equality?.atLeast ?? Number.NaN, 9);
    // 1 g and 1 g make K 150: a seventh of 10 too much.
    expect(at(1, 1) - (equality?.atLeast ?? 0)).toBeCloseTo(10 / 7, 9);
  });

  it("one for each element after the first, none for none", () => {
    const setting = { perUnit: [{ N: 1 }], water: {} };
    expect(ratioEqualities({ N: 3, P: 1, K: 2 }, setting)).toHaveLength(2);
    expect(ratioEqualities({}, setting)).toEqual([]);
  });
});

describe("how far off", () => {
  it.each([
    [{ N: 90, K: 60 }, 0],
    // 100 / 3 = 33.3 against 50 / 2 = 25: a quarter less.
    [{ N: 100, K: 50 }, 0.25],
    [{ N: 90 }, 1],
    [{ Ca: 50 }, null],
  ])("%j against N:K 3:2", (reached, off) => {
    const found = ratioOff({ N: 3, K: 2 }, reached);
    if (off === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(off, 9);
  });
});

describe("ratios that disagree", () => {
  it("names the first one that does not fit with those before it", () => {
    expect(() =>
      followRatios({}, { N: 90 }, [
        { N: 3, P: 1 },
        { N: 1, K: 1 },
        { P: 1, K: 1 },
      ]),
    ).toThrow(/^P:K 1:1 /);
  });
  it("is seen of the smallest amounts as well", () => {
    expect(() =>
      followRatios({}, { N: 1e-6 }, [
        { N: 1, P: 1 },
        { N: 1, P: 1.0005 },
      ]),
    ).toThrow(/set phosphorus twice/);
  });
});
