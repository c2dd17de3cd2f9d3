/** Salts by chemical name: what they hold, and how much of each dissolves at room temperature. */

import type { Amounts, ElementSymbol } from "./elements.ts";
import type { Feed } from "./feeds.ts";
import { atomsIn, gramsPerMole, nutrientsIn, percentIn } from "./formula.ts";

/** Keys of the list of sources at the foot. */
export type SolubilitySource = "dpird" | "iupac-66" | "knott" | "crc-memory";

export interface Salt {
  readonly name: string;
  readonly formula: string;
  /** Atoms of nitrogen in each form that feeds a plant, in one formula unit. */
  readonly nitrogen: { readonly nitrate?: number; readonly ammonium?: number; readonly urea?: number };
  /** Grams of this very hydrate in a litre of water at 20 °C ("cold" for knott); null where none is published here. */
  readonly solubilityGPerL: number | null;
  readonly source: SolubilitySource | null;
  /** What a feed of pure salt is counted for; the nitrogen inside a chelate is not. */
  readonly holds: readonly ElementSymbol[];
}

type Row = readonly [
  name: string,
  formula: string,
  nitrogen: Salt["nitrogen"],
  solubilityGPerL: number | null,
  source: SolubilitySource | null,
];

const NONE = {};

/** Published per anhydrous MgSO4 (330 g/L); its water of crystallisation, which would dissolve more, is not counted. */
const EPSOM_G_PER_L = 330 * (gramsPerMole("MgSO4·7H2O") / gramsPerMole("MgSO4"));
/** lb in 100 US gallons as g/L: 453.59237 g over 378.5411784 L. */
const LB_PER_100_GAL = 1.198264;

/** In the order in which they are named to fill a gap: the usual ones first. */
const ROWS: readonly Row[] = [
  ["calcium nitrate tetrahydrate", "Ca(NO3)2·4H2O", { nitrate: 2 }, 1290, "dpird"],
  ["calcium ammonium nitrate decahydrate", "5Ca(NO3)2·NH4NO3·10H2O", { nitrate: 11, ammonium: 1 }, 1290, "dpird"],
  ["potassium nitrate", "KNO3", { nitrate: 1 }, 209, "dpird"],
  ["monopotassium phosphate", "KH2PO4", NONE, 222, "iupac-66"],
  ["magnesium sulfate heptahydrate", "MgSO4·7H2O", NONE, EPSOM_G_PER_L, "dpird"],
  ["potassium sulfate", "K2SO4", NONE, 111, "dpird"],
  ["monoammonium phosphate", "NH4H2PO4", { ammonium: 1 }, 365, "iupac-66"],
  ["diammonium phosphate", "(NH4)2HPO4", { ammonium: 2 }, 358 * LB_PER_100_GAL, "knott"],
  ["ammonium nitrate", "NH4NO3", { nitrate: 1, ammonium: 1 }, 1902, "dpird"],
  ["ammonium sulfate", "(NH4)2SO4", { ammonium: 2 }, 750, "dpird"],
  ["magnesium nitrate hexahydrate", "Mg(NO3)2·6H2O", { nitrate: 2 }, null, null],
  ["calcium chloride dihydrate", "CaCl2·2H2O", NONE, 500 * LB_PER_100_GAL, "knott"],
  ["potassium chloride", "KCl", NONE, 340, "dpird"],
  ["urea", "CH4N2O", { urea: 2 }, 1000, "dpird"],
  ["sodium iron EDTA trihydrate", "C10H12FeN2NaO8·3H2O", NONE, null, null],
  ["iron(II) sulfate heptahydrate", "FeSO4·7H2O", NONE, 242 * LB_PER_100_GAL, "knott"],
  ["manganese sulfate monohydrate", "MnSO4·H2O", NONE, 876 * LB_PER_100_GAL, "knott"],
  ["manganese chloride tetrahydrate", "MnCl2·4H2O", NONE, null, null],
  ["zinc sulfate heptahydrate", "ZnSO4·7H2O", NONE, 625 * LB_PER_100_GAL, "knott"],
  ["boric acid", "H3BO3", NONE, 49, "dpird"],
  ["borax", "Na2B4O7·10H2O", NONE, 8 * LB_PER_100_GAL, "knott"],
  ["copper sulfate pentahydrate", "CuSO4·5H2O", NONE, 320, "crc-memory"],
  ["sodium molybdate dihydrate", "Na2MoO4·2H2O", NONE, 467 * LB_PER_100_GAL, "knott"],
];

export const SALTS: readonly Salt[] = ROWS.map(([name, formula, nitrogen, solubilityGPerL, source]) => {
  const fed = (nitrogen.nitrate ?? 0) + (nitrogen.ammonium ?? 0) + (nitrogen.urea ?? 0) > 0;
  const holds = nutrientsIn(formula).filter((symbol) => symbol !== "N" || fed);
  return { name, formula, nitrogen, solubilityGPerL, source, holds };
});

/** Percent of each nutrient the pure salt is counted for. */
export function saltPercent(salt: Salt): Amounts {
  const percent: Partial<Record<ElementSymbol, number>> = {};
  for (const symbol of salt.holds) percent[symbol] = percentIn(salt.formula, symbol);
  return percent;
}

/**
 * A label of a salt may be this far from the pure formula: potassium sulfate is sold as 0-0-50 where the pure salt
 * would be 0-0-54, and labels print whole or tenth percents. Relative to the larger number, and in percent points.
 * Common practice, no source.
 */
const PURITY = 0.08;
const PRINTED = 0.3;

/**
 * The salt whose formula a feed's label shows, or null. Every nutrient must agree and nothing else be on the label
 * above 0.3 %. Only solids with a label by weight are looked at.
 */
export function saltOf(feed: Feed): Salt | null {
  if (feed.liquid || feed.label.basis !== "w/w") return null;
  const { percent, nitrogen } = feed.label;
  for (const salt of SALTS) {
    const pure = saltPercent(salt);
    const stated = Object.keys(percent) as ElementSymbol[];
    const agrees =
      salt.holds.some((symbol) => percent[symbol] !== undefined) &&
      [...salt.holds, ...stated].every((symbol) => {
        const a = percent[symbol];
        const b = pure[symbol] ?? 0;
        // Labels leave out what they are not made for: the sodium of a chelate, the chloride of a trace salt.
        if (a === undefined) return symbol === "Na" || symbol === "Cl";
        return Math.abs(a - b) <= PRINTED + PURITY * Math.max(a, b);
      });
    if (!agrees) continue;
    const atoms = atomsIn(salt.formula).get("N") ?? 0;
    const forms = (["nitrate", "ammonium", "urea"] as const).every((form) => {
      const part = nitrogen[form];
      if (part === null || atoms === 0) return true;
      const pureForm = ((pure.N ?? 0) * (salt.nitrogen[form] ?? 0)) / atoms;
      return Math.abs(part - pureForm) <= PRINTED + PURITY * pureForm;
    });
    if (forms) return salt;
  }
  return null;
}

export const SOLUBILITY_SOURCES: Readonly<Record<SolubilitySource, string>> = {
  dpird:
    "Department of Primary Industries and Regional Development, Western Australia: solubility of fertilisers at 20 °C. Potassium nitrate is printed as 316 and as 209; the lower is used.",
  "iupac-66":
    "IUPAC Solubility Data Series 66 (NIST Standard Reference Database 106), Vogel, Figurski & Vohland 1963: their fitted equations at 20 °C, g in a kilogram of water.",
  knott:
    "Lorenz & Maynard 1980, Knott's Handbook for Vegetable Growers, 2nd edition: lb in 100 gallons of cold water, from a reprint.",
  "crc-memory": "Handbook value from memory, not seen: use with care.",
};
