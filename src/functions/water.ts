/** Custom functions on water: hardness, its classes, its units. */

import { CONVERT_UNITS, convertHardness, HARDNESS_UNITS, hardness, hardnessClass } from "../core/hardness.ts";
import type { FunctionRecord } from "./record.ts";

export const WATER_RECORDS: readonly FunctionRecord[] = [
  {
    name: "WATER_HARDNESS",
    group: "WATER",
    summary: "Works out the total hardness of a water from its calcium and magnesium.",
    args: [
      {
        name: "calcium",
        kind: "number",
        unit: "mg/L",
        min: 0,
        help: "Calcium in mg/L of Ca (not as CaCO3); a cell or a range.",
      },
      {
        name: "magnesium",
        kind: "number",
        unit: "mg/L",
        min: 0,
        help: "Magnesium in mg/L of Mg; a cell or a range.",
      },
      {
        name: "unit",
        kind: "choice",
        choices: HARDNESS_UNITS,
        fallback: "mg/L CaCO3",
        optional: true,
        help: `Optional. Unit of the result: ${HARDNESS_UNITS.join(", ")}; mg/L CaCO3 when left out.`,
      },
    ],
    result: "Total hardness in that unit, one row per water.",
    formulas: ["=WATER_HARDNESS(85, 43)", '=WATER_HARDNESS(A2:A4, B2:B4, "mmol/L")'],
    compute: {
      kind: "rows",
      prepare: () => (row) =>
        convertHardness(
          hardness({ calciumMgL: row.number("calcium"), magnesiumMgL: row.number("magnesium") }),
          "mg/L CaCO3",
          row.choice("unit", HARDNESS_UNITS),
        ),
    },
  },
  {
    name: "WATER_CLASS",
    group: "WATER",
    summary: "Says how hard a water is, in the classes of the US Geological Survey.",
    args: [
      {
        name: "hardness",
        kind: "number",
        unit: "mg/L CaCO3",
        min: 0,
        help: "Total hardness in mg/L CaCO3, as WATER_HARDNESS gives it; a cell or a range.",
      },
    ],
    result:
      "soft, moderately hard, hard or very hard (USGS), one row per water. Other scales draw the lines elsewhere.",
    formulas: ["=WATER_CLASS(150)", "=WATER_CLASS(A2:A5)"],
    compute: { kind: "rows", prepare: () => (row) => hardnessClass(row.number("hardness")) },
  },
  {
    name: "WATER_CONVERT",
    group: "WATER",
    summary: "Turns a hardness or an alkalinity from one unit into another.",
    args: [
      { name: "value", kind: "number", unitFrom: "from", min: 0, help: "The number to convert; a cell or a range." },
      {
        name: "from",
        kind: "choice",
        choices: CONVERT_UNITS,
        help: `Its unit: ${HARDNESS_UNITS.join(", ")}; for alkalinity also mg/L HCO3 and dKH.`,
      },
      { name: "to", kind: "choice", choices: CONVERT_UNITS, help: "The unit wanted, one of the same." },
    ],
    result: "The value in the unit wanted, one row per value.",
    formulas: ['=WATER_CONVERT(580, "mg/L CaCO3", "mg/L HCO3")', '=WATER_CONVERT(200, "mg/L CaCO3", A2:A5)'],
    compute: {
      kind: "rows",
      prepare: () => (row) =>
        convertHardness(row.number("value"), row.choice("from", CONVERT_UNITS), row.choice("to", CONVERT_UNITS)),
    },
  },
];
