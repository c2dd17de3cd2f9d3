/** What is said about the custom functions on meter readings, with examples that tests try; printed, never shipped with a call. */

import type { METER_RECORDS } from "./meter.ts";
import type { WordsOf } from "./words.ts";

const EPA = "US EPA Method 120.1, conductance of 0.01 M potassium chloride";
const SCALE_SOURCE = "Definition of the scale: 1 mS/cm reads as that many ppm (common practice, no source)";

const SCALE_HELP = "The meter's scale: 500, 640 or 700, as printed on it or in its manual.";

export const METER_WORDS: WordsOf<typeof METER_RECORDS> = {
  METER_AT25: {
    summary: "Brings a conductivity reading without temperature compensation to 25 °C.",
    args: {
      ec: "EC as the meter showed it at the solution's own temperature, in mS/cm; a cell or a range.",
      tempC: "Temperature of the solution in °C; a cell or a range.",
    },
    result: "EC at 25 °C in mS/cm, one row per reading.",
    examples: [
      {
        formula: "=METER_AT25(1.305, 21)",
        args: [1.305, 21],
        gives: 1.413,
        within: 1e-4,
        source: `${EPA}: 1305 µS/cm at 21 °C, 1413 at 25 °C.`,
      },
      {
        formula: "=METER_AT25(A2:A5, B2:B5)",
        args: [
          [[1.332], [1.359], [1.386], [1.413]],
          [[22], [23], [24], [25]],
        ],
        gives: [[1.413], [1.413], [1.413], [1.413]],
        within: 1e-4,
        source: `${EPA}: 1332, 1359, 1386 and 1413 µS/cm at 22 to 25 °C.`,
      },
    ],
    sources: [`${EPA} (1.91 % per °C)`],
    seeAlso: ["METER_TDS", "METER_EC"],
  },
  METER_TDS: {
    summary: "Turns EC into the ppm that a meter shows on its own scale.",
    args: { ec: "EC at 25 °C in mS/cm (1413 µS/cm is 1.413); a cell or a range.", scale: SCALE_HELP },
    result: "ppm as a meter with this scale shows it, one row per reading.",
    examples: [
      {
        formula: "=METER_TDS(1.2, 700)",
        args: [1.2, 700],
        gives: 840,
        source: `${SCALE_SOURCE}.`,
      },
      {
        formula: "=METER_TDS(2, A2:A4)",
        args: [2, [[500], [640], [700]]],
        gives: [[1000], [1280], [1400]],
        source: `${SCALE_SOURCE}.`,
      },
    ],
    sources: [SCALE_SOURCE],
    seeAlso: ["METER_EC", "METER_AT25"],
  },
  METER_EC: {
    summary: "Turns the ppm a meter shows back into EC.",
    args: { tds: "Reading in ppm on the scale that follows; a cell or a range.", scale: SCALE_HELP },
    result: "EC at 25 °C in mS/cm, one row per reading.",
    examples: [
      {
        formula: "=METER_EC(840, 700)",
        args: [840, 700],
        gives: 1.2,
        source: `${SCALE_SOURCE}.`,
      },
      {
        formula: "=METER_EC(A2:A4, B2:B4)",
        args: [
          [[1000], [1280], [1400]],
          [[500], [640], [700]],
        ],
        gives: [[2], [2], [2]],
        source: `${SCALE_SOURCE}.`,
      },
    ],
    sources: [SCALE_SOURCE],
    seeAlso: ["METER_TDS", "METER_AT25"],
  },
};
