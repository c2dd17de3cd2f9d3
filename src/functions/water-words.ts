/** What is said about the custom functions on water, with examples that tests try; printed, never shipped with a call. */

import { HARDNESS_UNITS } from "../core/hardness.ts";
import type { WATER_RECORDS } from "./water.ts";
import type { WordsOf } from "./words.ts";

const STANDARD_METHODS = "Standard Methods 2340 B (from memory), factors from the CIAAW 2021 atomic weights";
const USGS = "USGS, Hardness of Water: soft 0–60, moderately hard 61–120, hard 121–180, very hard over 180 mg/L";
const DEFINITIONS =
  "Definitions of the units: German degree 10 mg/L CaO, French degree 10 mg/L CaCO3, Clark degree a grain in an imperial gallon, gpg a grain in a US gallon";
const HEM = "Hem 1985, USGS Water-Supply Paper 2254, p. 57";

export const WATER_WORDS: WordsOf<typeof WATER_RECORDS> = {
  WATER_HARDNESS: {
    summary: "Works out the total hardness of a water from its calcium and magnesium.",
    args: {
      calcium: "Calcium in mg/L of Ca (not as CaCO3); a cell or a range.",
      magnesium: "Magnesium in mg/L of Mg; a cell or a range.",
      unit: `Optional. Unit of the result: ${HARDNESS_UNITS.join(", ")}; mg/L CaCO3 when left out.`,
    },
    result: "Total hardness in that unit, one row per water.",
    examples: [
      {
        formula: "=WATER_HARDNESS(85, 43)",
        args: [85, 43],
        gives: 389.32,
        within: 1e-4,
        source: "Standard Methods 2340 B (factors 2.497 and 4.118, from memory): 2.497 · 85 + 4.118 · 43.",
      },
      {
        formula: '=WATER_HARDNESS(A2:A4, B2:B4, "mmol/L")',
        args: [[[40.078], [0], [80.156]], [[0], [24.305], [24.305]], "mmol/L"],
        gives: [[1], [1], [3]],
        source: "CIAAW 2021: 40.078 mg of calcium and 24.305 mg of magnesium are 1 mmol each.",
      },
    ],
    sources: [STANDARD_METHODS, DEFINITIONS],
    seeAlso: ["WATER_CLASS", "WATER_CONVERT"],
  },
  WATER_CLASS: {
    summary: "Says how hard a water is, in the classes of the US Geological Survey.",
    args: { hardness: "Total hardness in mg/L CaCO3, as WATER_HARDNESS gives it; a cell or a range." },
    result:
      "soft, moderately hard, hard or very hard (USGS), one row per water. Other scales draw the lines elsewhere.",
    examples: [
      { formula: "=WATER_CLASS(150)", args: [150], gives: "hard", source: `${USGS}.` },
      {
        formula: "=WATER_CLASS(A2:A5)",
        args: [[[60], [61], [121], [181]]],
        gives: [["soft"], ["moderately hard"], ["hard"], ["very hard"]],
        source: `${USGS}.`,
      },
    ],
    sources: [USGS],
    seeAlso: ["WATER_HARDNESS"],
  },
  WATER_CONVERT: {
    summary: "Turns a hardness or an alkalinity from one unit into another.",
    args: {
      value: "The number to convert; a cell or a range.",
      from: `Its unit: ${HARDNESS_UNITS.join(", ")}; for alkalinity also mg/L HCO3 and dKH.`,
      to: "The unit wanted, one of the same.",
    },
    result: "The value in the unit wanted, one row per value.",
    examples: [
      {
        formula: '=WATER_CONVERT(580, "mg/L CaCO3", "mg/L HCO3")',
        args: [580, "mg/L CaCO3", "mg/L HCO3"],
        gives: 707,
        within: 5e-4,
        source: `${HEM}, printed in whole mg/L.`,
      },
      {
        formula: '=WATER_CONVERT(200, "mg/L CaCO3", A2:A5)',
        args: [200, "mg/L CaCO3", [["fH"], ["dH"], ["Clark"], ["gpg"]]],
        gives: [[20], [11.206], [14.031], [11.684]],
        within: 5e-5,
        source: `${DEFINITIONS}.`,
      },
    ],
    sources: [DEFINITIONS, HEM],
    seeAlso: ["WATER_HARDNESS"],
  },
};
