/** The three waters of the sample household: a tap water as published, a low-mineral water, and a blend of the two. */

import { day, rounded, type SampleCell } from "./sample-cell.ts";

type Numbers = Readonly<Record<string, number>>;

/** mg/L CaCO3 in a mmol/L of acid capacity to pH 4.3: half the weight of CaCO3, 100.086 / 2 (CIAAW weights). */
const MG_CACO3_PER_MMOL = 50.043;
/** Weight of N in a mg of nitrate: 14.007 / 62.004. */
const N_IN_NITRATE = 0.2259;

/**
 * As printed [1]: Ca 94.4, Mg 18.3, Na 13.9, K 2.3, SO4 18.1, Cl 24.4, NO3 16.4 mg/L, B 0.02, acid capacity 5.72 mmol/L,
 * 651 µS/cm at 25 °C, pH 7.41; iron below 0.01 mg/L.
 */
const TAP: Numbers = {
  Ca: 94.4,
  Mg: 18.3,
  Na: 13.9,
  K: 2.3,
  Alkalinity: rounded(5.72 * MG_CACO3_PER_MMOL, 1),
  SO4: 18.1,
  Cl: 24.4,
  "NO3-N": rounded(16.4 * N_IN_NITRATE, 2),
  Fe: 0,
  B: 0.02,
  EC: 0.651,
  pH: 7.41,
};

/** What a household's reverse-osmosis filter might leave of it; invented, and its ions balance. */
const LOW: Numbers = {
  Ca: 1.6,
  Mg: 0.3,
  Na: 3.2,
  K: 0.1,
  Alkalinity: 8,
  SO4: 0.4,
  Cl: 1.5,
  "NO3-N": 0.3,
  Fe: 0,
  B: 0.01,
  EC: 0.025,
  pH: 6.6,
};

/** Conserved amounts mix in proportion; EC only roughly; pH does not, so it is a reading. */
function blend(share: number): Numbers {
  const mixed: Record<string, number> = {};
  for (const heading of Object.keys(TAP)) {
    const [tap = 0, low = 0] = [TAP[heading], LOW[heading]];
    mixed[heading] = rounded(share * tap + (1 - share) * low, heading === "EC" ? 3 : 2);
  }
  return { ...mixed, pH: 7.3 };
}

export const WATER_ROWS: readonly Readonly<Record<string, SampleCell>>[] = [
  {
    Water: "Low-mineral water",
    Date: { day: day("2025-04-27") },
    Source: "Invented: what a household reverse-osmosis filter might leave of the town tap",
    ...LOW,
    Disinfectant: "none",
    Note: "Composition stated, not measured.",
  },
  {
    Water: "One part tap in four",
    Date: { day: day("2025-11-01") },
    Source: "Worked out: a quarter town tap, three quarters low-mineral water",
    ...blend(0.25),
    Disinfectant: "none",
    Note: "EC of a blend is only rough, and pH does not blend: this one was read with the meter.",
  },
  {
    Water: "Town tap",
    Date: { day: day("2025-06-12") },
    Source:
      "Town of Vöhringen, Bavaria: Trinkwasseruntersuchung, sample of 2025-06-12, published on the town's website, voehringen.de",
    ...TAP,
    Note: "As printed; alkalinity from an acid capacity of 5.72 mmol/L, NO3-N from 16.4 mg/L nitrate, iron below 0.01 entered as 0. The report sums 6.88 and 7.05 meq/L. Disinfection is not mentioned in the report.",
  },
];

/** meq/L of the cations a water brings: what a meter mostly sees. */
export function cationsMeqL(water: string): number {
  const row = WATER_ROWS.find((found) => found.Water === water);
  const part = (heading: string, mgPerMeq: number): number => {
    const value = row?.[heading];
    return typeof value === "number" ? value / mgPerMeq : 0;
  };
  return part("Ca", 20.039) + part("Mg", 12.1525) + part("K", 39.098) + part("Na", 22.99);
}

// [1] Stadt Vöhringen (Bavaria), page "Trinkwasseruntersuchung vom 24.07.2025", sample taken 2025-06-12 at the town
//     hall, www.voehringen.de; read in a stored copy of the page. It prints the sums of cations 6.88 and anions 7.05.
