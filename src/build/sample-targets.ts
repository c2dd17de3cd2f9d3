/** Targets of the sample household: published solutions at full, half and quarter strength, mg/L of the element. */

import { rounded, type SampleCell } from "./sample-cell.ts";
import { mgLFromMmolL } from "./sample-salts.ts";

type Solution = Readonly<Record<string, number>>;

/** Published amounts after the micronutrient stock, Hoagland & Arnon 1950 [1]. */
const MICRONUTRIENTS: Solution = { Mn: 0.5, Zn: 0.05, B: 0.5, Cu: 0.02, Mo: 0.011 };
const HOAGLAND_1: Solution = { N: 210, P: 31, K: 235, Ca: 200, Mg: 48.6, S: 64, ...MICRONUTRIENTS };
const HOAGLAND_2: Solution = { ...HOAGLAND_1, Ca: 160 };

/** meq/L, Steiner 1961 [2]: NO3 12, H2PO4 1, SO4 7; K 7, Ca 9, Mg 4. */
const STEINER: Solution = {
  N: rounded(mgLFromMmolL("N", 12), 1),
  P: rounded(mgLFromMmolL("P", 1), 1),
  K: rounded(mgLFromMmolL("K", 7), 1),
  Ca: rounded(mgLFromMmolL("Ca", 4.5), 1),
  Mg: rounded(mgLFromMmolL("Mg", 2), 1),
  S: rounded(mgLFromMmolL("S", 3.5), 1),
};

/** The household's own choice for all of them: 2 mg/L at full strength. Invented. */
const IRON_MG_L = 2;

const HOAGLAND_SOURCE =
  "Hoagland & Arnon 1950, Calif. Agr. Exp. Sta. Circular 347, published mg/L; iron is added apart there, as tartrate";
const STEINER_SOURCE = "Steiner 1961, Plant and Soil 15, 134 (composition from memory)";
const OWN_MICRO = "micronutrients after Hoagland & Arnon 1950, iron the household's own";

interface Strength {
  readonly word: string;
  readonly share: number;
}

const FULL: Strength = { word: "full", share: 1 };
const HALF: Strength = { word: "half", share: 0.5 };
const QUARTER: Strength = { word: "quarter", share: 0.25 };

function target(
  name: string,
  solution: Solution,
  { word, share }: Strength,
  source: string,
): Record<string, SampleCell> {
  const row: Record<string, SampleCell> = { Target: `${name}, ${word}` };
  for (const [symbol, mgL] of Object.entries(solution)) row[symbol] = Number((mgL * share).toPrecision(4));
  return { ...row, Source: `${source}${share === 1 ? "" : `; ${word} strength`}` };
}

const STEINER_HERE: Solution = { ...STEINER, Fe: IRON_MG_L, ...MICRONUTRIENTS };

export const TARGET_ROWS: readonly Readonly<Record<string, SampleCell>>[] = [
  ...[HALF, QUARTER, FULL].map((strength) =>
    target("Steiner", STEINER_HERE, strength, `${STEINER_SOURCE}; ${OWN_MICRO}`),
  ),
  target("Hoagland 1", HOAGLAND_1, FULL, HOAGLAND_SOURCE),
  ...[HALF, QUARTER].map((strength) =>
    target(
      "Hoagland 1",
      { ...HOAGLAND_1, Fe: IRON_MG_L },
      strength,
      `${HOAGLAND_SOURCE}; iron here the household's own`,
    ),
  ),
  target("Hoagland 2", HOAGLAND_2, FULL, HOAGLAND_SOURCE),
  ...[HALF, QUARTER].map((strength) =>
    target(
      "Hoagland 2",
      { ...HOAGLAND_2, Fe: IRON_MG_L },
      strength,
      `${HOAGLAND_SOURCE}; iron here the household's own`,
    ),
  ),
];

// [1] D. R. Hoagland & D. I. Arnon 1950, Calif. Agr. Exp. Sta. Circular 347 (recipes agree in three reprints).
// [2] A. A. Steiner 1961, A universal method for preparing nutrient solutions of a certain desired composition, Plant
//     and Soil 15, 134. The composition is from memory.
