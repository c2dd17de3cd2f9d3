/** Custom functions on what is dissolved in a water: its balance, blends, acid, and full state. */

import { waterAcidDose } from "../core/acid-dose.ts";
import { parseAcid } from "../core/acids.ts";
import { MAX_TEMP_C, MIN_TEMP_C } from "../core/activity.ts";
import { blendShare } from "../core/alkalinity.ts";
import { ionBalance } from "../core/balance.ts";
import { BadInput } from "../core/errors.ts";
import { COMPOSITION_UNITS } from "../core/ions.ts";
import { compositionState, stateRows } from "../core/water-state.ts";
import { ION_HEADINGS, readComposition, readReport } from "./chemistry-tables.ts";
import type { FunctionRecord, TableRow } from "./record.ts";
import { needOneColumn, onlyRow } from "./table.ts";

/** Of the solver. */
export const PH_RANGE = { min: 2, max: 12 } as const;
export const TEMPERATURE = {
  name: "tempC",
  kind: "number",
  unit: "°C",
  min: MIN_TEMP_C,
  max: MAX_TEMP_C,
  optional: true,
} as const;

/** Throws BadInput for a water without ions, of which no percent can be taken. */
function balancePercent(row: TableRow): number {
  const { errorPercent } = ionBalance(readReport(row));
  if (errorPercent === null) {
    throw new BadInput("no-ions", `All ions in ${row.table.where(row.row)} are 0: there is nothing to balance.`);
  }
  return errorPercent;
}

export const WATER_CHEMISTRY_RECORDS = [
  {
    name: "WATER_BALANCE",
    group: "WATER",
    args: [{ name: "report", kind: "rows", anyOf: ION_HEADINGS }],
    compute: { kind: "rows", prepare: () => (row) => balancePercent(row.tableRow("report")) },
  },
  {
    name: "WATER_BLEND",
    group: "WATER",
    args: [
      { name: "tap", kind: "number", min: 0 },
      { name: "low", kind: "number", min: 0 },
      { name: "target", kind: "number", min: 0 },
    ],
    compute: {
      kind: "rows",
      prepare: () => (row) =>
        blendShare({ tap: row.number("tap"), low: row.number("low"), target: row.number("target") }),
    },
  },
  {
    name: "WATER_ACID",
    group: "WATER",
    args: [
      { name: "alkalinity", kind: "number", unit: "mg/L CaCO3", min: 0, max: 100_000 },
      { name: "pH", kind: "number", ...PH_RANGE },
      { name: "target", kind: "number", ...PH_RANGE },
      { name: "acid", kind: "text" },
      { name: "litres", kind: "number", unit: "L", min: 0.001, max: 1_000_000, optional: true },
    ],
    compute: {
      kind: "rows",
      prepare: () => (row) =>
        (row.optionalNumber("litres") ?? 1) *
        waterAcidDose({
          alkalinityMgCaCO3L: row.number("alkalinity"),
          pH: row.number("pH"),
          targetPH: row.number("target"),
          acid: parseAcid(row.text("acid")),
        }).perLitre,
    },
  },
  {
    name: "WATER_STATE",
    group: "WATER",
    args: [
      { name: "composition", kind: "table", columns: [] },
      { name: "pH", kind: "number", ...PH_RANGE, word: "balance" },
      TEMPERATURE,
      { name: "air", kind: "yesNo", fallback: false, optional: true },
      { name: "unit", kind: "choice", choices: COMPOSITION_UNITS, fallback: "mg/L", optional: true },
    ],
    compute: {
      kind: "whole",
      answer: (fixed, row) => {
        const table = fixed.table("composition");
        needOneColumn(table, ION_HEADINGS);
        const unit = row.choice("unit", COMPOSITION_UNITS);
        return stateRows(
          compositionState({
            composition: readComposition({ kind: "row", table, row: onlyRow(table) }, unit),
            unit,
            pH: row.numberOr("pH", "balance"),
            tempC: row.optionalNumber("tempC") ?? 25,
            air: row.yesNo("air"),
          }),
        );
      },
    },
  },
] as const satisfies readonly FunctionRecord[];
