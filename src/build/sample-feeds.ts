/** The sample shelf: eight feeds whose analyses follow from their formulas, one organic feed, one without analysis. */

import type { ElementSymbol } from "../core/elements.ts";
import { rounded, type SampleCell } from "./sample-cell.ts";
import { percentOf } from "./sample-salts.ts";

type FeedRow = Readonly<Record<string, SampleCell>>;

/** A pure salt under a generic name: which columns of the shelf its formula fills. */
interface Salt {
  readonly name: string;
  readonly formula: string;
  /** Column, element, and the oxide a grade is given in. */
  readonly fills: readonly (readonly [heading: string, symbol: ElementSymbol, oxide?: string])[];
  readonly price: number;
  readonly lot: string;
  readonly note?: string;
}

const SALTS: readonly Salt[] = [
  {
    name: "Calcium nitrate tetrahydrate",
    formula: "Ca(NO3)2·4H2O",
    fills: [
      ["N", "N"],
      ["NO3-N", "N"],
      ["Ca", "Ca"],
    ],
    price: 14.5,
    lot: "L-2601",
    note: "The pure tetrahydrate, not the greenhouse double salt with ammonium nitrate (5Ca(NO3)2·NH4NO3·10H2O). Draws water: keep the jar shut. Oxidiser: away from heat and anything that burns.",
  },
  {
    name: "Potassium nitrate",
    formula: "KNO3",
    fills: [
      ["N", "N"],
      ["NO3-N", "N"],
      ["K2O", "K", "K2O"],
    ],
    price: 9.8,
    lot: "L-2518",
    note: "Oxidiser: away from heat and anything that burns.",
  },
  {
    name: "Monopotassium phosphate",
    formula: "KH2PO4",
    fills: [
      ["P2O5", "P", "P2O5"],
      ["K2O", "K", "K2O"],
    ],
    price: 8.2,
    lot: "L-2433",
  },
  {
    name: "Magnesium sulfate heptahydrate",
    formula: "MgSO4·7H2O",
    fills: [
      ["Mg", "Mg"],
      ["S", "S"],
    ],
    price: 4.6,
    lot: "L-2507",
  },
  {
    name: "Potassium sulfate",
    formula: "K2SO4",
    fills: [
      ["K2O", "K", "K2O"],
      ["S", "S"],
    ],
    price: 7.4,
    lot: "L-2440",
  },
  {
    name: "Monoammonium phosphate",
    formula: "NH4H2PO4",
    fills: [
      ["N", "N"],
      ["NH4-N", "N"],
      ["P2O5", "P", "P2O5"],
    ],
    price: 8.9,
    lot: "L-2512",
  },
  {
    name: "Iron chelate, sodium Fe-EDTA",
    formula: "C10H12FeN2NaO8·3H2O",
    fills: [
      ["Fe", "Fe"],
      ["Na", "Na"],
    ],
    price: 11,
    lot: "L-2525",
    note: "Trihydrate. The nitrogen inside the chelate is no plant food and is not counted. Keep dark.",
  },
];

function saltRow(salt: Salt): FeedRow {
  const row: Record<string, SampleCell> = {
    Feed: salt.name,
    Basis: "w/w",
    Origin: "mineral",
    "Analysis published": "yes",
    Unit: "g",
    Price: salt.price,
    Lot: salt.lot,
    Note: `Worked out from ${salt.formula}.${salt.note === undefined ? "" : ` ${salt.note}`}`,
  };
  for (const [heading, symbol, oxide] of salt.fills) row[heading] = rounded(percentOf(salt.formula, symbol, oxide), 2);
  return row;
}

/** g of each salt in a litre of the household's stock: Hoagland & Arnon 1950 [1], with sodium molybdate for molybdic acid. */
const STOCK_G_PER_L: readonly (readonly [formula: string, gramsPerLitre: number])[] = [
  ["H3BO3", 2.86],
  ["MnCl2·4H2O", 1.81],
  ["ZnSO4·7H2O", 0.22],
  ["CuSO4·5H2O", 0.08],
  ["Na2MoO4·2H2O", 0.028],
];

/** Percent w/v: grams in 100 mL. */
function stockPercent(symbol: ElementSymbol): number {
  let gramsPerLitre = 0;
  for (const [formula, grams] of STOCK_G_PER_L) gramsPerLitre += (grams * percentOf(formula, symbol)) / 100;
  return rounded(gramsPerLitre / 10, 5);
}

function stockRow(): FeedRow {
  const row: Record<string, SampleCell> = {
    Feed: "Micronutrient stock",
    Basis: "w/v",
    Origin: "mineral",
    "Analysis published": "yes",
    Unit: "mL",
    Price: 3.1,
    Lot: "L-HOME-4",
    Note: `Made at home, g in a litre: ${STOCK_G_PER_L.map(([formula, grams]) => `${formula} ${grams}`).join(", ")}. Poisonous when swallowed: labelled, locked away from children.`,
  };
  for (const symbol of ["S", "Mn", "Zn", "B", "Cu", "Mo", "Na", "Cl"] as const) row[symbol] = stockPercent(symbol);
  return row;
}

const NOT_DOSED: readonly FeedRow[] = [
  {
    Feed: "Fermented plant extract",
    Basis: "w/w",
    N: 3,
    P2O5: 1,
    K2O: 5,
    Density: 1.15,
    Origin: "organic",
    "Analysis published": "yes",
    Unit: "mL",
    Lot: "L-2419",
    Note: "For the herbs in soil. Without a soil's life it does not feed a pot in clay, and it fouls a reservoir.",
  },
  {
    Feed: "Green drops, old bottle",
    Density: 1.02,
    Origin: "mineral",
    "Analysis published": "no",
    Unit: "mL",
    Note: "Came with a plant. No guaranteed analysis on the bottle, so nobody can say what a drop brings.",
  },
];

export const FEED_ROWS: readonly FeedRow[] = [...SALTS.map(saltRow), stockRow(), ...NOT_DOSED];

/** Feeds that may enter a recipe. */
export const DOSED_FEEDS: readonly string[] = [...SALTS.map(({ name }) => name), "Micronutrient stock"];

// [1] D. R. Hoagland & D. I. Arnon 1950, The water-culture method for growing plants without soil, Calif. Agr. Exp.
//     Sta. Circular 347 (reprints agree). Its molybdic acid, 0.02 g of 85 % MoO3, brings 0.0113 mg/L of Mo at 1 mL in
//     a litre; 0.028 g of sodium molybdate dihydrate brings 0.0111 mg/L.
