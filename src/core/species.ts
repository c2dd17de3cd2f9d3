/** Dissolved species and solids as data: what they are made of, association constants, activity parameters, mobility; sources at the foot. */

/** The parts everything is made of; totals are given for these. P is phosphate, B boric acid, Cit citrate. */
export const COMPONENTS = [
  "H", // 0: found from pH or from charge balance
  "CO3", // 1: found from total carbon, alkalinity or the air
  "Na",
  "K",
  "Mg",
  "Ca",
  "NH4",
  "Cl",
  "SO4",
  "NO3",
  "PO4",
  "B",
  "Cit",
] as const;
export type Component = (typeof COMPONENTS)[number];

/** Charge of the free form of each component, in the order of COMPONENTS. */
export const COMPONENT_CHARGES: readonly number[] = [1, -2, 1, 1, 2, 2, 1, -1, -2, -1, -3, 0, -3];

/**
 * Association constant: [log K at 25 °C] or [log K, enthalpy of reaction in kJ/mol] (van 't Hoff), or, with three
 * numbers and more, log10 K = A1 + A2 T + A3/T + A4 log10 T + A5/T² + A6 T² with T in kelvin.
 */
type LogK = readonly number[];
const kcal = (value: number): number => value * 4.184;

/**
 * name · what it is made of (components or species above it in the list; "-" takes one away; W is water) · log K ·
 * activity parameters [a in ångström, b] of log γ = −A z² √I / (1 + B a √I) + b I, null for Davies with 0.3 I
 * (neutral species: b = 0.1) · tracer diffusion coefficient at 25 °C in 1e-9 m²/s, 0 where none is published
 */
type SpeciesRow = readonly [name: string, made: string, logK: LogK, gamma: readonly [number, number] | null, d: number];

export const SPECIES: readonly SpeciesRow[] = [
  // [A] throughout, except where marked
  ["H+", "H", [0], [9, 0], 9.31],
  ["CO3-2", "CO3", [0], [5.4, 0], 0.955],
  ["Na+", "Na", [0], [4.08, 0.082], 1.33],
  ["K+", "K", [0], [3.5, 0.015], 1.96],
  ["Mg+2", "Mg", [0], [5.5, 0.2], 0.705],
  ["Ca+2", "Ca", [0], [5, 0.165], 0.792],
  ["NH4+", "NH4", [0], [2.5, 0], 1.98],
  ["Cl-", "Cl", [0], [3.63, 0.017], 2.033],
  ["SO4-2", "SO4", [0], [5, -0.04], 1.07],
  ["NO3-", "NO3", [0], [3, 0], 1.9],
  ["PO4-3", "PO4", [0], [4, 0], 0.612],
  ["H3BO3", "B", [0], null, 1.1],
  ["Cit-3", "Cit", [0], null, 0.623], // D [C]
  ["OH-", "W -H", [293.29227, 0.1360833, -10576.913, -123.73158, 0, -6.996455e-5], [3.5, 0], 5.27],
  ["HCO3-", "CO3 H", [107.8871, 0.03252849, -5151.79, -38.92561, 563713.9], [5.4, 0.0078], 1.18],
  ["CO2", "CO3 H H -W", [464.1965, 0.09344813, -26986.16, -165.75951, 2248628.9], [0, 0.066], 1.92],
  ["HSO4-", "SO4 H", [-56.889, 0.006473, 2307.9, 19.8858], null, 1.22],
  ["NH3", "NH4 -H", [0.6322, -0.001225, -2835.76], null, 2.28],
  ["NH4SO4-", "NH4 SO4", [1.353, kcal(3.91)], [7, -0.0736], 1.35],
  ["H2BO3-", "B -H", [-9.24, kcal(3.224)], null, 0],
  ["HPO4-2", "PO4 H", [12.346, kcal(-3.53)], [5, 0], 0.69],
  ["H2PO4-", "PO4 H H", [19.553, kcal(-4.52)], [5.4, 0], 0.846],
  ["H3PO4", "PO4 H H H", [21.721, -10.1], null, 0],
  ["CaOH+", "Ca W -H", [-12.78], null, 0],
  ["CaCO3", "Ca CO3", [-1228.732, -0.29944, 35512.75, 485.818], null, 0.446],
  ["CaHCO3+", "Ca CO3 H", [56.273, -0.041779, -11194], [6, 0], 0.506],
  ["CaSO4", "Ca SO4", [1.478, 0.00829, -538.2], [0, 0.0445], 4.71],
  ["CaHSO4+", "Ca HSO4-", [1.08], null, 0],
  ["CaPO4-", "Ca PO4", [6.459, kcal(3.1)], [5.4, 0], 0],
  ["CaHPO4", "Ca HPO4-2", [2.739, kcal(3.3)], null, 0],
  ["CaH2PO4+", "Ca H2PO4-", [1.408, kcal(3.4)], [5.4, 0], 0],
  ["MgOH+", "Mg W -H", [-11.44, kcal(15.952)], [6.5, 0], 0],
  ["MgCO3", "Mg CO3", [0.991, 0.00667, 0], null, 0.421],
  ["MgHCO3+", "Mg CO3 H", [48.6721, 0.03252849, -2614.335, -18.00263, 563713.9], [4, 0], 0.478],
  ["MgSO4", "Mg SO4", [0, 0.00964, -136], [0, 0.2], 0.445],
  ["MgPO4-", "Mg PO4", [6.589, kcal(3.1)], [5.4, 0], 0],
  ["MgHPO4", "Mg HPO4-2", [2.87, kcal(3.3)], null, 0],
  ["MgH2PO4+", "Mg H2PO4-", [1.513, kcal(3.4)], [5.4, 0], 0],
  ["NaHCO3", "Na HCO3-", [-3.589, 0.00794, 273], [0, 0.151], 0.673],
  ["NaSO4-", "Na SO4", [-0.304, 0.00451, -28.9], [3.5, 0.1072], 0.509],
  ["NaHPO4-", "Na HPO4-2", [0.29], [5.4, 0], 0],
  ["KSO4-", "K SO4", [-3.0246, 0.009986, 0, 0, 109300], [5.4, 0.19], 1.54],
  ["KHPO4-", "K HPO4-2", [0.29], [5.4, 0], 0],
  // citric acid: the three steps [D], pairs [E]; mobility of the protonated forms taken as that of citrate
  ["HCit-2", "Cit H", [6.396], null, 0.623],
  ["H2Cit-", "Cit H H", [11.157], null, 0.623],
  ["H3Cit", "Cit H H H", [14.285], null, 0],
  ["CaCit-", "Ca Cit", [4.87, -8.368], null, 0],
  ["CaHCit", "Ca Cit H", [9.26, -0.8368], null, 0],
  ["CaH2Cit+", "Ca Cit H H", [12.257], null, 0],
  ["MgCit-", "Mg Cit", [4.89, 8.368], null, 0],
  ["MgHCit", "Mg Cit H", [8.91, 3.3472], null, 0],
  ["MgH2Cit+", "Mg Cit H H", [12.2], null, 0],
  ["NaCit-2", "Na Cit", [1.03, -2.8033], null, 0],
  ["KCit-2", "K Cit", [1.1, 5.4392], null, 0],
];

/** Solids that may fall out, and the gas: name · made of · log K of the dissolution. */
export const SOLIDS: readonly (readonly [name: string, made: string, logK: LogK])[] = [
  ["calcite", "Ca CO3", [-67.87, -0.051813, 0, 30.25746]], // [A]: −8.448 at 25 °C; Plummer & Busenberg 1982: −8.480
  ["gypsum", "Ca SO4 W W", [72.244, -0.01474, -4040, -23.7823]], // [A]: −4.548 at 25 °C; others −4.58
  ["brushite", "Ca HPO4-2 W W", [-6.59]], // [B], 25 °C value used at every temperature
  ["struvite", "Mg NH4 PO4 W W W W W W", [-13.26]], // [B], 25 °C value used at every temperature
];
/** Henry's law constant of CO2, mol/(kg atm), log10 [A]. */
export const LOG_K_CO2_GAS: LogK = [10.5624, -0.023547, -3972.8, 0, 587460, 1.9194e-5];

/**
 * Water-bound log10 pCO2 (atm) of outdoor air: −3.38 is 417 ppm, the world mean of 2022 (NOAA Global Monitoring
 * Laboratory: 417.1 ppm; memory). A closed room with people in it is often at 600–1000 ppm, −3.2 to −3.0, where a
 * water rich in bicarbonate ends 0.15–0.4 of pH lower.
 */
export const AIR_LOG_PCO2 = -3.38;

/** log10 K at `tempC`; see LogK for the forms. Valid 0–50 °C, used 5–35 °C. */
export function logKAt(k: LogK, tempC: number): number {
  const [a1 = 0, a2 = 0, a3 = 0, a4 = 0, a5 = 0, a6 = 0] = k;
  const t = tempC + 273.15;
  if (k.length > 2) return a1 + a2 * t + a3 / t + a4 * Math.log10(t) + a5 / (t * t) + a6 * t * t;
  // van 't Hoff; gas constant 8.314462618e-3 kJ/(mol K)
  return a1 - (a2 / (Math.LN10 * 8.314462618e-3)) * (1 / t - 1 / 298.15);
}

/*
 * Sources
 * [A] Parkhurst & Appelo, PHREEQC 3.8.9, database Amm.dat (US Geological Survey, public domain); its carbonate
 *     constants are those of Plummer & Busenberg 1982, Geochim. Cosmochim. Acta 46, 1011.
 * [B] Brushite log K −6.59 (Ca + HPO4), in the published range −6.59 to −6.62. Struvite −13.26 ± 0.057: Ronteltap,
 *     Maurer & Gujer 2007.
 * [C] CRC Handbook of Chemistry and Physics, ionic conductivity: citrate ⅓ 70.2 S cm²/eq, D 0.623e-9 (memory).
 * [D] NIST Critically Selected Stability Constants (NIST 46): pKa 3.128, 4.761, 6.396 at 25 °C, taken at every
 *     temperature.
 * [E] minteq.v4.dat of PHREEQC (values of NIST 46.2 and, for the 2 H forms, SCD 2.62).
 */
