/** Waters in formulas: balance, blends, acid against published titrations, and the full state. */

import { describe, expect, it } from "vitest";
import { acidDensity } from "../../src/core/acids.ts";
import { type ReferenceRow, referenceRows } from "../core/reference-rows.ts";
import { call, outcome } from "./cells.ts";

const column = (...values: unknown[]): unknown[][] => values.map((value) => [value]);
const numbers = (answer: unknown): number[] => (answer as number[][]).map(([value]) => value as number);

describe("WATER_BALANCE", () => {
  // a published worked water: sums 11.856 and 11.804 meq/L, +0.22 %
  const worked = { Ca: 85, Mg: 43, K: 2.9, Na: 92, HCO3: 362, Cl: 131, SO4: 89, NO3: 20 };
  const rowOf = (water: Readonly<Record<string, unknown>>) => [Object.keys(water), Object.values(water)];
  const balance = (water: Readonly<Record<string, unknown>>) => outcome("WATER_BALANCE", rowOf(water)) as number[][];

  it("gives +0.22 % for the worked water, whatever the order, the spaces and the columns beside", () => {
    expect(balance(worked)[0]?.[0]).toBeCloseTo(0.22, 2);
    const { Ca, ...others } = worked;
    expect(balance({ Note: "x", ...others, " ca ": Ca, pH: 7.4 })).toEqual(balance(worked));
  });

  it("reads nitrate as N, sulfate as S, and alkalinity in place of bicarbonate", () => {
    const { NO3, SO4, HCO3, ...others } = worked;
    // CIAAW 2021: 14.007/62.004, 32.06/96.056; Hem 1985: HCO3 = alkalinity / 0.8202
    const same = { ...others, "NO3-N": NO3 * 0.225905, S: SO4 * 0.333764, Alkalinity: HCO3 * 0.8202 };
    expect(balance(same)[0]?.[0]).toBeCloseTo(balance(worked)[0]?.[0] as number, 2);
  });

  it("counts bicarbonate once where alkalinity is printed too, and keeps alkalinity beside a carbonate of 0", () => {
    expect(balance({ ...worked, Alkalinity: 297, CO3: 0 })).toEqual(balance(worked));
    // 1 meq/L of sodium, 1 meq/L of alkalinity
    expect(balance({ Na: 22.99, Alkalinity: 50.0435, CO3: 0 })[0]?.[0]).toBeCloseTo(0, 2);
  });

  it("answers the rows around a bad one, and gives nothing for a blank row", () => {
    const report = [
      ["Water", "Na", "Cl", "NO3", "NO3-N"],
      ["Salt", 22.99, 35.45, "", ""],
      ["Odd", 22.99, -1, "", ""],
      ["", "", "", "", ""],
      ["Twice", 22.99, "", 62, 30],
      ["Named only", "", "", "", ""],
      ["Distilled", 0, 0, "", ""],
      ["Typed", "22,99", " 35.45 mg/L", "", ""],
      ["Below", 22.99, "<0.1", "", ""],
      ["", "", "", "", ""],
    ];
    expect(outcome("WATER_BALANCE", report)).toEqual([
      [0],
      ["? Cl in row 3 of report is -1 mg/L. Give a number from 0 to 1000000 mg/L."],
      [""],
      [
        expect.stringMatching(
          /^\? NO3-N in row 5 of report makes 133 mg\/L NO3, but NO3 is 62 mg\/L\. Leave out the wrong one\.$/,
        ),
      ],
      [expect.stringMatching(/^\? There is no amount in row 6 of report\. Fill in one or more of Ca, Mg, Na/)],
      ["? All ions in row 7 of report are 0: there is nothing to balance."],
      [0],
      [expect.stringMatching(/^\? Cl in row 9 of report is "<0\.1"/)],
    ]);
  });

  it("refuses what is no table of waters", () => {
    expect(outcome("WATER_BALANCE", 5)).toBe("throws: report is one value; give a range with a heading row.");
    expect(outcome("WATER_BALANCE", [["Feed"], ["x"]])).toMatch(/^throws: report has none of the columns Ca, Mg, Na/);
    expect(
      outcome("WATER_BALANCE", [
        ["Ca", "ca"],
        [1, 2],
      ]),
    ).toMatch(/two columns headed "Ca"/);
  });
});

describe("WATER_BLEND", () => {
  it("is (target − low) / (tap − low), also where the low-mineral water holds more", () => {
    expect(outcome("WATER_BLEND", 150, 10, 45)).toBe(0.25);
    expect(outcome("WATER_BLEND", 10, 150, 115)).toBe(0.25);
    expect(outcome("WATER_BLEND", column(200, 100, "", 50), 0, 50)).toEqual(column(0.25, 0.5, "", 1));
  });

  it("says between which numbers the target may lie", () => {
    expect(outcome("WATER_BLEND", 200, 10, 250)).toBe(
      "throws: The target 250 is not between the two waters, 10 and 200. Give a target from 10 to 200.",
    );
    expect(outcome("WATER_BLEND", column(200, 20), 10, 50)).toEqual([
      [expect.closeTo(4 / 19, 12)],
      [expect.stringMatching(/^\? The target 50 is not between/)],
    ]);
    expect(outcome("WATER_BLEND", 80, 80, 40)).toMatch(/no blend of them is at 40/);
    expect(outcome("WATER_BLEND", -1, 0, 0)).toMatch(/^throws: tap is -1\. Give a number of 0 or more/);
  });
});

const TITRATIONS = referenceRows.filter((row) => row.kind === "titration-closed");
const byId = new Map(referenceRows.map((row) => [row.id, row]));
const BOTTLE = {
  phosphoric: { acid: "phosphoric 85%", name: "phosphoric acid", share: 0.85, gMol: 97.994 },
  nitric: { acid: "Nitric acid 67 %", name: "nitric acid", share: 0.67, gMol: 63.012 },
  sulfuric: { acid: "H2SO4 95%", name: "sulfuric acid", share: 0.95, gMol: 98.072 },
} as const;

function waterOf(row: ReferenceRow): { alkalinity: number; pH: number } {
  const water = byId.get(row.id.replace(/^(water-\d+).*/, "$1"));
  return { alkalinity: (water?.alkalinity ?? Number.NaN) * 50.043, pH: water?.pH ?? Number.NaN };
}

/** mL/L that PHREEQC was given; moles in a mL from the density, which acids.test.ts compares with a published model. */
function addedMl(row: ReferenceRow): number {
  const { name, share, gMol } = BOTTLE[row.acid as keyof typeof BOTTLE];
  const mmol = (row.acid_mmol_H_or_P as number) / (row.acid === "sulfuric" ? 2 : 1);
  return (mmol / 1000) * (gMol / (share * (acidDensity(name, share * 100) as number)));
}

describe("WATER_ACID", () => {
  it("turns PHREEQC's 36 titrations round within 3 %, as one range of rows", () => {
    expect(TITRATIONS).toHaveLength(36);
    const waters = TITRATIONS.map(waterOf);
    const doses = numbers(
      call("WATER_ACID", [
        column(...waters.map(({ alkalinity }) => alkalinity)),
        column(...waters.map(({ pH }) => pH)),
        column(...TITRATIONS.map((row) => row.result.pH)),
        column(...TITRATIONS.map((row) => BOTTLE[row.acid as keyof typeof BOTTLE].acid)),
      ]),
    );
    expect(doses).toHaveLength(36);
    doses.forEach((dose, at) => {
      const row = TITRATIONS[at] as ReferenceRow;
      expect(Math.abs(dose / addedMl(row) - 1), row.id).toBeLessThan(0.03);
    });
  });

  it("takes litres, and a solid in grams", () => {
    const one = call("WATER_ACID", [120, 7.8, 5.8, "phosphoric 85%"]) as number;
    expect(call("WATER_ACID", [120, 7.8, 5.8, "phosphoric 85%", 20])).toBeCloseTo(20 * one, 12);
    const [anhydrous, hydrate] = numbers(call("WATER_ACID", [120, 7.8, 5.8, column("citric", "citric monohydrate")]));
    // 192.123 and 210.138 g/mol
    expect((hydrate as number) / (anhydrous as number)).toBeCloseTo(210.138 / 192.123, 4);
    expect(call("WATER_ACID", [120, 6, 6, "citric"])).toBe(0);
    expect(call("WATER_ACID", [20, 5.2, 6, "potassium bicarbonate"])).toBeGreaterThan(0);
  });

  it("answers the rows around bad ones, and says what is accepted", () => {
    const acids = column(
      "phosphoric 85%",
      "vinegar",
      "phosphoric",
      "nitric 16N",
      "sulfuric 120%",
      "potassium hydroxide",
    );
    expect(outcome("WATER_ACID", column(120, 120, 120, 120, 120, 120), 7.8, 5.8, acids)).toEqual([
      [expect.any(Number)],
      [
        expect.stringMatching(
          /^\? "vinegar" is no acid known here\. Give phosphoric 85%, nitric 67%, sulfuric 95%, citric/,
        ),
      ],
      [expect.stringMatching(/^\? "phosphoric" needs its strength/)],
      [expect.stringMatching(/^\? The strength in "nitric 16N" is not in percent/)],
      [expect.stringMatching(/^\? The strength in "sulfuric 120%" is outside/)],
      [expect.stringMatching(/^\? potassium hydroxide raises the pH, but 5\.8 is below 7\.8\. Take an acid\.$/)],
    ]);
    expect(outcome("WATER_ACID", column(120, "", -3), 7.8, 5.8, "citric")).toEqual([
      [expect.any(Number)],
      [""],
      ["? alkalinity is -3 mg/L CaCO3. Give a number from 0 to 100000 mg/L CaCO3."],
    ]);
  });

  it.each([
    [[120, 14, 5.8, "citric"], "throws: pH is 14. Give a number from 2 to 12."],
    [[120, 7.8, 1, "citric"], "throws: target is 1. Give a number from 2 to 12."],
    [[120, 7.8, 5.8, "citric", 0], "throws: litres is 0 L. Give a number from 0.001 to 1000000 L."],
    [[120, 7.8, "", "citric"], "throws: target is blank. Give a number."],
  ])("refuses %j", (args, told) => expect(outcome("WATER_ACID", ...args)).toBe(told));
});

describe("WATER_STATE", () => {
  const NAMES: Readonly<Record<string, string>> = { Amm: "NH4", P: "PO4" };

  it.each(referenceRows.map((row) => [row.id, row] as const))("%s, as PHREEQC found it", (_, row) => {
    const headings = [...Object.keys(row.totals).map((name) => NAMES[name] ?? name)];
    const values: number[] = Object.values(row.totals);
    if (row.alkalinity !== undefined) {
      headings.push("Alkalinity");
      values.push(row.alkalinity);
    }
    const air = row.logPco2 !== undefined;
    const table = call("WATER_STATE", [[headings, values], row.pH ?? "Balance", row.tempC, air, "mmol/L"]);
    const state = new Map(table as [string, number | ""][]);
    const off = (name: string, expected: number) => Math.abs((state.get(name) as number) - expected);
    // tolerances of water-state.test.ts and speciation.test.ts, with their reasons there
    expect(off("pH", row.result.pH)).toBeLessThan(0.005);
    expect(off("Ionic strength mol/L", row.result.ionicStrength_mol_kgw)).toBeLessThan(
      0.002 * row.result.ionicStrength_mol_kgw,
    );
    for (const solid of ["Calcite", "Gypsum", "Brushite", "Struvite"] as const) {
      const index = row.result.saturationIndex[solid] ?? null;
      if (index === null) expect(state.get(solid)).toBe("");
      else expect(off(solid, index)).toBeLessThan(0.01);
    }
  });

  const tap = [
    ["Ca", "Na", "Cl", "SO4", "Alkalinity"],
    [60, 12, 20, 30, 150],
  ];
  const stateOf = (...args: unknown[]) => new Map(call("WATER_STATE", args) as [string, number | ""][]);

  it("takes bicarbonate for the alkalinity, boron for boric acid, and a tick box for air", () => {
    // Hem 1985: HCO3 = alkalinity / 0.8202; CIAAW 2021: B is 0.17483 of H3BO3
    const printed = [
      ["Ca", "Na", "Cl", "SO4", "HCO3", "B"],
      [60, 12, 20, 30, 150 / 0.8202, 1],
    ];
    const acid = [
      [...(tap[0] as string[]), "H3BO3"],
      [...(tap[1] as number[]), 1 / 0.17483],
    ];
    expect(stateOf(printed, 7.4).get("Calcite")).toBeCloseTo(stateOf(acid, 7.4).get("Calcite") as number, 3);
    expect(stateOf(tap, "balance", "", true).get("pH")).toBeGreaterThan(8);
    expect(stateOf(tap, "balance", "", "yes")).toEqual(stateOf(tap, "balance", 25, true, "mg/L"));
    expect(stateOf(tap, 7.4, "", false)).toEqual(stateOf(tap, 7.4));
  });

  it.each([
    [[tap, 13], "throws: pH is 13. Give a number from 2 to 12."],
    [[tap, "about right"], 'throws: pH is "about right". Give a number, or balance.'],
    [[tap, ""], "throws: pH is blank. Give a number, or balance."],
    [[tap, 7, 40], "throws: tempC is 40 °C. Give a number from 5 to 35 °C."],
    [[tap, 7, 4], "throws: tempC is 4 °C. Give a number from 5 to 35 °C."],
    [[tap, 7, 25, "perhaps"], 'throws: air is "perhaps". Write yes or no.'],
    [[tap, 7, 25, false, "ppm"], 'throws: unit is "ppm". Give mg/L or mmol/L.'],
    [[tap, column(7, 8)], /^throws: pH is a range of 2 rows\. WATER_STATE answers with a table/],
    [[tap, "balance"], /^throws: Finding the pH from charge balance needs total carbon \(CO3\)/],
    [
      [
        [
          ["Ca", "SO4"],
          ["", ""],
        ],
        7,
      ],
      /^throws: composition holds 0 rows below its heading row/,
    ],
    [
      [
        [
          ["Ca", "Note"],
          ["", "x"],
        ],
        7,
      ],
      /^throws: There is no amount in row 2 of composition\. Fill in one or more of Ca/,
    ],
    [[[["Ca"], [-5]], 7], "throws: Ca in row 2 of composition is -5 mg/L. Give a number from 0 to 1000000 mg/L."],
    [[[["Ca"], ["5 mmol/L"]], 7], /^throws: Ca in row 2 of composition is "5 mmol\/L"\. Give a plain number in mg\/L/],
    [
      [
        [
          ["Ca", "Cl"],
          [40000, 70000],
        ],
        7,
      ],
      /^throws: The ionic strength is .* above 0\.5 .* check the unit/,
    ],
  ])("refuses %j", (args, told) => {
    if (typeof told === "string") expect(outcome("WATER_STATE", ...args)).toBe(told);
    else expect(outcome("WATER_STATE", ...args)).toMatch(told);
  });
});
