/** Examples and sources of the custom functions on water; they are tried by tests and printed, never shipped. */

import type { FunctionReference } from "./record.ts";

const STANDARD_METHODS = "Standard Methods 2340 B (from memory), factors from the CIAAW 2021 atomic weights";
const USGS = "USGS, Hardness of Water: soft 0–60, moderately hard 61–120, hard 121–180, very hard over 180 mg/L";
const DEFINITIONS =
  "Definitions of the units: German degree 10 mg/L CaO, French degree 10 mg/L CaCO3, Clark degree a grain in an imperial gallon, gpg a grain in a US gallon";
const HEM = "Hem 1985, USGS Water-Supply Paper 2254, p. 57";

export const WATER_REFERENCE: readonly FunctionReference[] = [
  {
    name: "WATER_HARDNESS",
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
  {
    name: "WATER_CLASS",
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
  {
    name: "WATER_CONVERT",
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
];
