/** What is said about the custom functions on what is dissolved in a water, with examples that tests try; printed, never shipped with a call. */

import { ACID_CAUTION } from "../core/acid-dose.ts";
import { MAX_TEMP_C, MIN_TEMP_C } from "../core/activity.ts";
import type { WATER_CHEMISTRY_RECORDS } from "./water-chemistry.ts";
import type { ExampleValue, WordsOf } from "./words.ts";

const BALANCE_RULE = "Standard Methods 1030 E: 100 (cations − anions) / (cations + anions) in meq/L";
const WORKED_WATER = "A published worked water: ion sums 11.856 and 11.804 meq/L, difference +0.22 %";
export const PHREEQC = "USGS PHREEQC 3.8.9, database Amm.dat";
const CARBONATE = "Plummer & Busenberg 1982, Geochimica et Cosmochimica Acta 46, 1011";
const MIXING = "Mass balance of a blend: share = (target − low) / (tap − low)";
const DENSITIES =
  "densities of acids at 20 °C: Perry's Chemical Engineers' Handbook and CRC Handbook (partly from memory)";

const IONS_HELP =
  "columns among Ca, Mg, Na, K, NH4, NO3, SO4, Cl, PO4, CO3, Alkalinity, H3BO3, or NH4-N, NO3-N, PO4-P, P, S, B, and HCO3 where there is no Alkalinity; a blank counts as none";

const STATE_OF_WATER: ExampleValue = [
  ["pH", 7.58],
  ["Ionic strength mol/L", 0.00848676],
  ["EC mS/cm", 0.66766],
  ["pCO2 log10 atm", -2.1625],
  ["Calcite", 0.30417],
  ["Gypsum", -2.24496],
  ["Brushite", ""],
  ["Struvite", ""],
];
const STATE_OF_FEED: ExampleValue = [
  ["pH", 6.3164],
  ["Ionic strength mol/L", 0.0222486],
  ["EC mS/cm", 1.91395],
  ["pCO2 log10 atm", -1.91363],
  ["Calcite", -1.72355],
  ["Gypsum", -1.3116],
  ["Brushite", -0.41414],
  ["Struvite", -3.09167],
];

export const WATER_CHEMISTRY_WORDS: WordsOf<typeof WATER_CHEMISTRY_RECORDS> = {
  WATER_BALANCE: {
    summary: "Checks whether a water report adds up: its cations against its anions.",
    args: {
      report: `The report with its heading row, one water a row, mg/L of the ion (Alkalinity as CaCO3): ${IONS_HELP}. Where HCO3 is given, it and CO3 count and Alkalinity does not.`,
    },
    result:
      "Charge-balance error in percent, above 0 where cations are in excess, one row per water. More than about 5 either way: something was left out, mistyped or read in the wrong unit.",
    examples: [
      {
        formula: "=WATER_BALANCE(A1:H2)",
        args: [
          [
            ["Ca", "Mg", "K", "Na", "HCO3", "Cl", "SO4", "NO3"],
            [85, 43, 2.9, 92, 362, 131, 89, 20],
          ],
        ],
        gives: [[0.22]],
        within: 0.05,
        source: `${WORKED_WATER}; printed with two figures.`,
      },
      {
        formula: "=WATER_BALANCE(A1:D3)",
        args: [
          [
            ["Water", "Na", "Cl", "Alkalinity"],
            ["Salt", 22.99, 35.45, ""],
            ["Half told", 45.98, "", 50.0435],
          ],
        ],
        gives: [[0], [33.3333]],
        within: 1e-4,
        source: "CIAAW 2021 atomic weights: 1 meq/L each; (2 − 1) / (2 + 1) in the last row.",
      },
    ],
    sources: [BALANCE_RULE, "CIAAW 2021 atomic weights"],
    seeAlso: ["WATER_STATE", "WATER_BLEND"],
  },
  WATER_BLEND: {
    summary: "Finds the share of tap water in a blend with a low-mineral water that reaches a target.",
    args: {
      tap: "What the tap water holds: alkalinity, hardness, sodium or chloride, all three numbers in one unit; not pH, and EC only roughly. A cell or a range.",
      low: "What the low-mineral water (rain, distilled, reverse osmosis) holds of the same.",
      target: "What the blend should hold of the same, between the two.",
    },
    result: "Share of tap water by volume, 0 to 1, one row per blend; the rest is the low-mineral water.",
    examples: [
      { formula: "=WATER_BLEND(200, 0, 50)", args: [200, 0, 50], gives: 0.25, source: `${MIXING}.` },
      {
        formula: "=WATER_BLEND(180, 20, A2:A4)",
        args: [180, 20, [[20], [60], [180]]],
        gives: [[0], [0.25], [1]],
        source: `${MIXING}.`,
      },
    ],
    sources: [MIXING],
    seeAlso: ["WATER_ACID", "WATER_HARDNESS"],
  },
  WATER_ACID: {
    summary: "Works out how much acid, or base, takes a water from its pH to another.",
    args: {
      alkalinity: "Alkalinity of the water in mg/L CaCO3; a cell or a range.",
      pH: "pH of the water as it is, 2 to 12.",
      target:
        "pH wanted, 2 to 12; plants in water culture are usually kept at 5.5 to 6.5 (common practice, no source).",
      acid: `What is on the bottle, with its percent by weight: phosphoric 85%, nitric 67%, sulfuric 95%, citric (powder), or to raise the pH potassium bicarbonate or potassium hydroxide. ${ACID_CAUTION}`,
      litres: "Optional. Litres of water to treat; 1 when left out.",
    },
    result:
      "mL of a liquid, or g of a solid, for that many litres, before any CO2 has left. Give four fifths of it, stir, measure, then the rest; after a day or two in the open the pH is higher. Count the P, N, S or K it adds.",
    examples: [
      {
        formula: '=WATER_ACID(188.36, 7.4, 5.5735, "phosphoric 85%", 20)',
        args: [188.36, 7.4, 5.5735, "phosphoric 85%", 20],
        gives: 4.1207,
        within: 0.03,
        source: `${PHREEQC}: 3.0112 mmol/L take this water to pH 5.5735; phosphoric acid of 85 % is 14.615 mol/L. Within 3 %, as alkalinity and pH alone are known.`,
      },
      {
        formula: "=WATER_ACID(188.36, 7.4, A2:A3, B2:B3)",
        args: [188.36, 7.4, [[5.6692], [5.6679]], [["nitric 70%"], ["sulfuric 95%"]]],
        gives: [[0.19182], [0.08448]],
        within: 0.03,
        source: `${PHREEQC}: 3.0112 and 1.5056 mmol/L; nitric acid of 70 % is 15.698 mol/L, sulfuric of 95 % is 17.822.`,
      },
    ],
    sources: [PHREEQC, CARBONATE, DENSITIES],
    seeAlso: ["WATER_STATE", "WATER_BLEND"],
  },
  WATER_STATE: {
    summary: "Says what the chemistry of a water or solution comes to: pH, EC, CO2, and what may fall out.",
    args: {
      composition: `One water with its heading row: ${IONS_HELP}. CO3 is all carbonate and CO2 together; give it or Alkalinity.`,
      pH: 'pH as measured, 2 to 12, or "balance" to find it from the charges; that needs CO3, or balance with air.',
      tempC: `Optional. Temperature in °C, ${MIN_TEMP_C} to ${MAX_TEMP_C}; 25 when left out.`,
      air: "Optional. TRUE for a water that has come to balance with outdoor air; FALSE, a closed one, when left out.",
      unit: "Optional. mg/L of the ion with Alkalinity as CaCO3, or mmol/L with Alkalinity in meq/L; mg/L when left out.",
    },
    result:
      "A table of two columns: pH, ionic strength, EC at 25 °C, log10 of the CO2 pressure in atm, and the saturation index of calcite, gypsum, brushite and struvite: above 0 it may fall out, below 0 it cannot.",
    examples: [
      {
        formula: "=WATER_STATE(A1:H2, 7.58)",
        args: [
          [
            ["Ca", "Mg", "Na", "K", "SO4", "Cl", "NO3", "Alkalinity"],
            [60.598, 7.3158, 66.694, 2.6196, 25.455, 51.225, 13.269, 220.44],
          ],
          7.58,
        ],
        gives: STATE_OF_WATER,
        within: 0.03,
        source: `${PHREEQC}; the EC there is by another conductivity model and 2.6 % higher, all else within 0.2 %.`,
      },
      {
        formula: '=WATER_STATE(A1:J2, "balance", 25, FALSE, "mmol/L")',
        args: [
          [
            ["Ca", "Mg", "Na", "K", "NH4", "NO3", "SO4", "Cl", "PO4", "CO3"],
            [3.4258, 1.5787, 0.241, 5.7351, 1.3028, 12.376, 1.778, 0.02, 0.7069, 0.858],
          ],
          "balance",
          25,
          false,
          "mmol/L",
        ],
        gives: STATE_OF_FEED,
        within: 1e-3,
        source: `${PHREEQC}, a feed of this project's own, pH from charge balance.`,
      },
    ],
    sources: [
      PHREEQC,
      CARBONATE,
      "Truesdell & Jones 1974, U.S. Geological Survey Journal of Research 2, 233, for the activity coefficients (from memory)",
    ],
    seeAlso: ["WATER_BALANCE", "WATER_ACID", "FEED_RISK"],
  },
};
