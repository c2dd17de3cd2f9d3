/** Custom functions on meter readings: temperature and the ppm scales. */

import { ecAt25, ecFromTds, METER_SCALES, METER_TEMPERATURES, tdsFromEc } from "../core/meter.ts";
import type { ChoiceArgument, FunctionRecord } from "./record.ts";

const SCALES = METER_SCALES.map(String);

const scaleArgument = {
  name: "scale",
  kind: "choice",
  choices: SCALES,
} as const satisfies ChoiceArgument;

export const METER_RECORDS = [
  {
    name: "METER_AT25",
    group: "METER",
    args: [
      {
        name: "ec",
        kind: "number",
        unit: "mS/cm",
        min: 0,
      },
      {
        name: "tempC",
        kind: "number",
        unit: "°C",
        min: METER_TEMPERATURES.minC,
        max: METER_TEMPERATURES.maxC,
      },
    ],
    compute: {
      kind: "rows",
      prepare: () => (row) => ecAt25(row.number("ec"), row.number("tempC")),
    },
  },
  {
    name: "METER_TDS",
    group: "METER",
    args: [
      {
        name: "ec",
        kind: "number",
        unit: "mS/cm",
        min: 0,
        max: 100,
      },
      scaleArgument,
    ],
    compute: {
      kind: "rows",
      prepare: () => (row) => tdsFromEc(row.number("ec"), Number(row.text("scale"))),
    },
  },
  {
    name: "METER_EC",
    group: "METER",
    args: [
      {
        name: "tds",
        kind: "number",
        unit: "ppm",
        min: 0,
      },
      scaleArgument,
    ],
    compute: {
      kind: "rows",
      prepare: () => (row) => ecFromTds(row.number("tds"), Number(row.text("scale"))),
    },
  },
] as const satisfies readonly FunctionRecord[];
