/** What a treatment does to each line of a water, as stated estimates until the treated water is measured. */

import { ATOMIC_WEIGHTS } from "./elements.ts";
import { isBadInput } from "./errors.ts";
import { CACO3_MG_PER_MEQ, ION_G_MOL } from "./ions.ts";
import { solveState } from "./speciation.ts";
import { AIR_LOG_PCO2 } from "./species.ts";
import {
  alkalinityEqKg,
  hardnessOf,
  totalsOfWater,
  WATER_LINES,
  type WaterLine,
  type WaterLines,
} from "./water-lines.ts";

export const TREATMENTS = [
  "reverse osmosis",
  "distilling",
  "carbon filter",
  "softener",
  "boiling",
  "standing overnight",
  "rain",
] as const;
export type Treatment = (typeof TREATMENTS)[number];

export interface Treated {
  /** A line that cannot be said after the treatment is left out: measure it. */
  readonly lines: WaterLines;
  /** Whole sentences: what happened, what to mind. */
  readonly notes: readonly string[];
  readonly source: string;
}

const PRACTICE = "common practice, no source";
/** Share of each line that stays; a line that is not named stays whole, null: not known afterwards. */
type Shares = Readonly<Partial<Record<WaterLine, number | null>>>;

/** A household membrane in good order holds back 90–98 %; nitrate and silica less, boric acid at neutral pH about half. */
const MEMBRANE: Shares = {
  Ca: 0.03,
  Mg: 0.03,
  Na: 0.07,
  K: 0.07,
  "NH4-N": 0.1,
  Alkalinity: 0.06,
  SO4: 0.03,
  Cl: 0.06,
  "NO3-N": 0.12,
  "PO4-P": 0.03,
  Si: 0.08,
  Fe: 0.03,
  Mn: 0.03,
  B: 0.5,
  Hardness: 0.03,
  EC: 0.05,
  pH: null,
  "Free chlorine": 0,
  Chloramine: null,
};
/** What is carried over as spray; gases come along with the steam. */
const CARRIED_OVER = 0.01;
/** A softener in good order leaves about 2 % of the hardness. */
const LEFT_BY_SOFTENER = 0.02;
/** Boiling stops at about 0.8 meq/L of carbonate hardness: the carbonate that stays dissolved in the open. */
const LEFT_BY_BOILING_MEQ = 0.8;

/** Rain away from the sea and from works, mg/L; near the sea several times the Na and Cl. */
const RAIN: WaterLines = {
  Ca: 0.5,
  Mg: 0.1,
  Na: 0.6,
  K: 0.1,
  "NH4-N": 0.3,
  Alkalinity: 1,
  SO4: 1.2,
  Cl: 1,
  "NO3-N": 0.3,
  "PO4-P": 0,
  Fe: 0,
  B: 0,
  EC: 0.02,
  pH: 5.8,
  "Free chlorine": 0,
  Chloramine: 0,
};

function keep(water: WaterLines, shares: Shares): WaterLines {
  const lines: Partial<Record<WaterLine, number>> = {};
  for (const line of WATER_LINES) {
    const value = water[line];
    const share = shares[line];
    if (value !== undefined && share !== null) lines[line] = value * (share ?? 1);
  }
  return lines;
}

/** The water after the treatment; for rain the water before does not count. */
export function treat(water: WaterLines, treatment: Treatment): Treated {
  switch (treatment) {
    case "reverse osmosis":
      return {
        lines: keep(water, MEMBRANE),
        notes: [
          "Membranes differ and age: measure the EC after yours. The pH of such water says little, as nothing holds it.",
          "Chlorine harms most membranes and chloramine passes; a carbon filter in front takes care of both. A filter under the sink is plumbing: local code, or a plumber.",
        ],
        source: PRACTICE,
      };
    case "distilling": {
      const shares = Object.fromEntries(WATER_LINES.map((line) => [line, CARRIED_OVER])) as Record<WaterLine, number>;
      return {
        lines: keep(water, { ...shares, pH: null, "Free chlorine": null, Chloramine: null }),
        notes: ["Let it stand open for a day: chlorine and ammonia come along with the steam."],
        source: PRACTICE,
      };
    }
    case "carbon filter":
      return {
        lines: keep(water, { "Free chlorine": 0, Chloramine: null }),
        notes: [
          "Salts, hardness and alkalinity pass. Chloramine needs a filter made for it and a slow flow: test what comes out.",
          "A used-up filter breeds germs: change it by its label. Plumbing it in follows local code.",
        ],
        source: PRACTICE,
      };
    case "softener":
      return softened(water);
    case "boiling":
      return boiled(water);
    case "standing overnight":
      return stood(water);
    case "rain":
      return {
        lines: RAIN,
        notes: [
          "Rain as it falls; a roof or a tank adds dust, zinc or copper. Let the first minutes run off, and keep it covered.",
        ],
        source: PRACTICE,
      };
  }
}

function softened(water: WaterLines): Treated {
  const { Ca, Mg, Na } = water;
  const lines = { ...keep(water, { Ca: LEFT_BY_SOFTENER, Mg: LEFT_BY_SOFTENER, Hardness: LEFT_BY_SOFTENER }) };
  const hard = hardnessOf(water);
  const traded =
    Ca !== undefined && Mg !== undefined
      ? (2 * Ca) / ION_G_MOL.Ca + (2 * Mg) / ION_G_MOL.Mg
      : hard === null
        ? null
        : hard / CACO3_MG_PER_MEQ;
  const { Na: _, ...withoutSodium } = lines;
  const sodium = traded === null || Na === undefined ? null : Na + traded * (1 - LEFT_BY_SOFTENER) * ATOMIC_WEIGHTS.Na;
  return {
    lines: sodium === null ? withoutSodium : { ...withoutSodium, Na: sodium },
    notes: [
      sodium === null
        ? "A softener trades calcium and magnesium for sodium: not for plants. Take the water from a tap before it."
        : `A softener trades calcium and magnesium for sodium, here ${Math.round(sodium)} mg/L of it: not for plants. Take the water from a tap before it.`,
      "Alkalinity and EC stay as they were.",
    ],
    source: "exchange of equal charges; 2 % left over is common practice, no source",
  };
}

function boiled(water: WaterLines): Treated {
  const calcium = water.Ca;
  const alkalinity = water.Alkalinity;
  const lines: Partial<Record<WaterLine, number>> = {
    ...keep(water, { EC: null, pH: null, "Free chlorine": 0, Chloramine: null }),
  };
  if (calcium !== undefined && alkalinity !== undefined) {
    const caMeq = (2 * calcium) / ION_G_MOL.Ca;
    const alkMeq = alkalinity / CACO3_MG_PER_MEQ;
    const gone = Math.max(Math.min(caMeq, alkMeq) - LEFT_BY_BOILING_MEQ, 0);
    lines.Ca = ((caMeq - gone) * ION_G_MOL.Ca) / 2;
    lines.Alkalinity = (alkMeq - gone) * CACO3_MG_PER_MEQ;
    if (water.Hardness !== undefined) lines.Hardness = Math.max(water.Hardness - gone * CACO3_MG_PER_MEQ, 0);
  } else {
    delete lines.Ca;
    delete lines.Alkalinity;
    delete lines.Hardness;
  }
  return {
    lines,
    notes: [
      "Lime falls out as scale down to about 40 mg/L as CaCO3; let it settle and pour off the clear water, cold. What boils away leaves its salts behind.",
      "Free chlorine leaves; chloramine only after long boiling.",
    ],
    source: PRACTICE,
  };
}

function stood(water: WaterLines): Treated {
  const pH = pHInAir(water);
  const { pH: _, ...rest } = keep(water, { "Free chlorine": 0 });
  return {
    lines: pH === null ? rest : { ...rest, pH },
    notes: [
      "Free chlorine leaves overnight in an open vessel; chloramine does not.",
      ...(pH === null ? [] : [`With its CO2 in balance with the air the pH comes to about ${pH.toFixed(1)}.`]),
    ],
    source: "chlorine: common practice, no source; pH: equilibrium with outdoor air, log pCO2 −3.38",
  };
}

/** pH in balance with air from the alkalinity alone; null where it was not measured or cannot be worked out. */
function pHInAir(water: WaterLines): number | null {
  if (water.Alkalinity === undefined) return null;
  const totals = totalsOfWater(water);
  const protonsMolKg = 2 * (totals.PO4 ?? 0) - alkalinityEqKg(water);
  try {
    return solveState({ totals, carbon: { logPco2: AIR_LOG_PCO2 }, pH: { protonsMolKg }, tempC: 20 }).pH;
  } catch (error) {
    if (isBadInput(error)) return null;
    throw error;
  }
}
