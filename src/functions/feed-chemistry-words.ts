/** What is said about the custom functions on a mixed solution, with examples that tests try; printed, never shipped with a call. */

import { MAX_TEMP_C, MIN_TEMP_C } from "../core/activity.ts";
import type { FEED_CHEMISTRY_RECORDS } from "./feed-chemistry.ts";
import { PHREEQC } from "./water-chemistry-words.ts";
import type { WordsOf } from "./words.ts";

const SALTS_MEASURED =
  "Conductivity of potassium chloride at 25 °C, the usual calibration values (from memory): 146.9, 717.5, 1412 and 2765 µS/cm at 1, 5, 10 and 20 mmol/L";
const EXPONENT_FORM =
  "Appelo's exponent form of the conductivity of mixed ions, as in PHREEQC (USGS), with the diffusion coefficients of its database";
const HOAGLAND =
  "Hoagland & Arnon 1950, California Agricultural Experiment Station Circular 347, solution 1 (read in reprints)";
const BRUSHITE = "published solubility of brushite, log K −6.59 (Ca + HPO4)";

const SOLUTION_HELP =
  "Mixed solutions with a heading row, one a row, mg/L of the element as FEED_MIX gives it: N, P, K, Ca, Mg, S, Na, Cl, B; better with the forms NO3-N, NH4-N, Urea-N; SO4, PO4, NO3, NH4 as the ion; Alkalinity (as CaCO3) of the water. A blank counts as none.";

export const FEED_CHEMISTRY_WORDS: WordsOf<typeof FEED_CHEMISTRY_RECORDS> = {
  FEED_EC: {
    summary: "Predicts the EC that a mixed solution should show.",
    args: {
      solution: SOLUTION_HELP,
      tempC: `Optional. Temperature of the solution in °C, ${MIN_TEMP_C} to ${MAX_TEMP_C}, for what a meter without temperature correction shows; 25 when left out, which is what one with correction shows at any temperature. A cell or a range.`,
    },
    result:
      "EC in mS/cm, one row per solution, within about 3 % of what the same ions show. Urea does not conduct; a counter-ion that no label prints is taken to be chloride or sodium; nitrogen of unknown form is split so that the charges meet.",
    examples: [
      {
        formula: "=FEED_EC(A1:B5)",
        args: [
          [
            ["K", "Cl"],
            [39.098, 35.45],
            [195.49, 177.25],
            [390.98, 354.5],
            [781.96, 709],
          ],
        ],
        gives: [[0.1469], [0.7175], [1.412], [2.765]],
        within: 0.01,
        source: `${SALTS_MEASURED}.`,
      },
      {
        formula: "=FEED_EC(A1:J2)",
        args: [
          [
            ["NO3-N", "NH4-N", "P", "K", "Ca", "Mg", "S", "Na", "Cl", "Alkalinity"],
            [173.351, 18.248, 21.896, 224.231, 137.299, 38.37, 57.003, 5.5406, 0.709, 31.478],
          ],
        ],
        gives: [[1.91395]],
        within: 0.01,
        source: `${PHREEQC}, specific conductance of a feed of this project's own.`,
      },
    ],
    sources: [EXPONENT_FORM, SALTS_MEASURED],
    seeAlso: ["FEED_MIX", "FEED_RISK", "METER_TDS"],
  },
  FEED_RISK: {
    summary: "Says what may fall out of a mixed solution as a solid, most at risk first.",
    args: {
      solution: SOLUTION_HELP,
      pH: "Optional. pH of the solution, 2 to 12; 6 when left out. A cell or a range.",
    },
    result:
      "Nothing where all stays dissolved; otherwise which solid, how far over its limit, and what helps, one row per solution. It speaks of 25 °C and of calcite, gypsum, brushite and struvite; a clear tank is no proof, as some form slowly.",
    examples: [
      {
        formula: "=FEED_RISK(A1:F2, 5.8)",
        args: [
          [
            ["N", "P", "K", "Ca", "Mg", "S"],
            [210, 31, 235, 200, 48.6, 64],
          ],
          5.8,
        ],
        gives: [[""]],
        source: `${HOAGLAND}, and ${BRUSHITE}: saturated near pH 6.4, not at 5.8.`,
      },
      {
        formula: "=FEED_RISK(A1:G3, H2:H3)",
        args: [
          [
            ["Solution", "N", "P", "K", "Ca", "Mg", "S"],
            ["Full", 210, 31, 235, 200, 48.6, 64],
            ["Quarter", 52.5, 7.75, 58.75, 50, 12.15, 16],
          ],
          [[6.5], [6.5]],
        ],
        gives: [
          ["Calcium phosphate (brushite) is just at its limit at pH 6.5; lower the pH or the phosphate, or dilute."],
          [""],
        ],
        source: `${HOAGLAND}, and ${BRUSHITE}: saturated near pH 6.4 at full strength.`,
      },
    ],
    sources: [
      HOAGLAND,
      BRUSHITE,
      `${PHREEQC}, constants of calcite and gypsum`,
      "struvite: Ronteltap, Maurer & Gujer 2007, log K −13.26",
    ],
    seeAlso: ["FEED_MIX", "FEED_EC", "WATER_STATE"],
  },
};
