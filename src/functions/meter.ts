/** Custom functions on meter readings: temperature and the ppm scales. */

import { ecAt25, ecFromTds, METER_SCALES, METER_TEMPERATURES, tdsFromEc } from "../core/meter.ts";
import type { ChoiceArgument, FunctionRecord } from "./record.ts";

const SCALES = METER_SCALES.map(String);

const scaleArgument: ChoiceArgument = {
  name: "scale",
  kind: "choice",
  choices: SCALES,
  help: "The meter's scale: 500, 640 or 700, as printed on it or in its manual.",
};

export const METER_RECORDS: readonly FunctionRecord[] = [
  {
    name: "METER_AT25",
    group: "METER",
    summary: "Brings a conductivity reading without temperature compensation to 25 °C.",
    args: [
      {
        name: "ec",
        kind: "number",
        unit: "mS/cm",
        min: 0,
        help: "EC as the meter showed it at the solution's own temperature, in mS/cm; a cell or a range.",
      },
      {
        name: "tempC",
        kind: "number",
        unit: "°C",
        min: METER_TEMPERATURES.minC,
        max: METER_TEMPERATURES.maxC,
        help: "Temperature of the solution in °C; a cell or a range.",
      },
    ],
    result: "EC at 25 °C in mS/cm, one row per reading.",
    formulas: ["=METER_AT25(1.305, 21)", "=METER_AT25(A2:A5, B2:B5)"],
    compute: {
      kind: "rows",
      prepare: () => (row) => ecAt25(row.number("ec"), row.number("tempC")),
    },
  },
  {
    name: "METER_TDS",
    group: "METER",
    summary: "Turns EC into the ppm that a meter shows on its own scale.",
    args: [
      {
        name: "ec",
        kind: "number",
        unit: "mS/cm",
        min: 0,
        max: 100,
        help: "EC at 25 °C in mS/cm (1413 µS/cm is 1.413); a cell or a range.",
      },
      scaleArgument,
    ],
    result: "ppm as a meter with this scale shows it, one row per reading.",
    formulas: ["=METER_TDS(1.2, 700)", "=METER_TDS(2, A2:A4)"],
    compute: {
      kind: "rows",
      prepare: () => (row) => tdsFromEc(row.number("ec"), Number(row.text("scale"))),
    },
  },
  {
    name: "METER_EC",
    group: "METER",
    summary: "Turns the ppm a meter shows back into EC.",
    args: [
      {
        name: "tds",
        kind: "number",
        unit: "ppm",
        min: 0,
        help: "Reading in ppm on the scale that follows; a cell or a range.",
      },
      scaleArgument,
    ],
    result: "EC at 25 °C in mS/cm, one row per reading.",
    formulas: ["=METER_EC(840, 700)", "=METER_EC(A2:A4, B2:B4)"],
    compute: {
      kind: "rows",
      prepare: () => (row) => ecFromTds(row.number("tds"), Number(row.text("scale"))),
    },
  },
];
