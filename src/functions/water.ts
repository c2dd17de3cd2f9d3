/** Custom functions on water: hardness, its classes, its units. */

import { CONVERT_UNITS, convertHardness, HARDNESS_UNITS, hardness, hardnessClass } from "../core/hardness.ts";
import type { FunctionRecord } from "./record.ts";

export const WATER_RECORDS = [
  {
    name: "WATER_HARDNESS",
    group: "WATER",
    args: [
      {
        name: "calcium",
        kind: "number",
        unit: "mg/L",
        min: 0,
      },
      {
        name: "magnesium",
        kind: "number",
        unit: "mg/L",
        min: 0,
      },
      {
        name: "unit",
        kind: "choice",
        choices: HARDNESS_UNITS,
        fallback: "mg/L CaCO3",
        optional: true,
      },
    ],
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
    args: [
      {
        name: "hardness",
        kind: "number",
        unit: "mg/L CaCO3",
        min: 0,
      },
    ],
    compute: { kind: "rows", prepare: () => (row) => hardnessClass(row.number("hardness")) },
  },
  {
    name: "WATER_CONVERT",
    group: "WATER",
    args: [
      { name: "value", kind: "number", unitFrom: "from", min: 0 },
      {
        name: "from",
        kind: "choice",
        choices: CONVERT_UNITS,
      },
      { name: "to", kind: "choice", choices: CONVERT_UNITS },
    ],
    compute: {
      kind: "rows",
      prepare: () => (row) =>
        convertHardness(row.number("value"), row.choice("from", CONVERT_UNITS), row.choice("to", CONVERT_UNITS)),
    },
  },
] as const satisfies readonly FunctionRecord[];
