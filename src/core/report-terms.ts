/**
 * The words of water reports: substances, bases ("as N"), units, each with its factor to our own line. Between words
 * of a report stands one space (see report.ts).
 */

import { ATOMIC_WEIGHTS } from "./elements.ts";
import { convertHardness } from "./hardness.ts";
import { CACO3_MG_PER_MEQ, ION_G_MOL } from "./ions.ts";
import type { WaterLine } from "./water-lines.ts";

const { Ca, Mg, N, P, S, Si, O, H } = ATOMIC_WEIGHTS;
const CACO3 = 2 * CACO3_MG_PER_MEQ;
const CAO = Ca + O;

/** mg of our line in one mg of the basis a report names. */
type Bases = Readonly<Record<string, number>>;

export interface Term {
  readonly line: WaterLine;
  /** As it is said: "Nitrate". */
  readonly name: string;
  readonly pattern: RegExp;
  readonly bases: Bases;
  /** Basis meant where none is printed; two or more: ask. Empty: what the line counts. */
  readonly meant: readonly string[];
  /** mg of our line in one mmol, and charge; null where a report never counts so. */
  readonly mgPerMmol: number | null;
  readonly charge: number;
  /** Another line the same words may mean. */
  readonly also?: WaterLine;
}

/** Lines that share a word with one of ours and mean something else. */
export const NOT_OURS =
  /non-? ?carbonate|permanent hardness|(?<!bi|hydrogen ?|calcium )carbonate alkalinity|alkalinity\W+carbonate|adsorption|\bsar\b|residual sodium|sodium ?percent|% ?sodium|hydroxide|phenolphthalein|saturation|langelier/i;

const own = (line: WaterLine, name: string, pattern: RegExp, mgPerMmol: number | null, charge: number): Term => ({
  line,
  name,
  pattern,
  bases: { [line]: 1 },
  meant: [],
  mgPerMmol,
  charge,
});

const AS_ALKALINITY: Bases = {
  CaCO3: 1,
  HCO3: CACO3_MG_PER_MEQ / ION_G_MOL.HCO3,
  CO3: CACO3 / ION_G_MOL.CO3,
  CaO: CACO3 / CAO,
};

/** Where two begin at the same place the earlier one counts: "hardness, calcium" before "hardness". */
export const TERMS: readonly Term[] = [
  {
    line: "Ca",
    name: "Calcium",
    pattern: /hardness\W+calcium(?!\W*(carbonate|and|magnesium))|calcium(?! ?carbonate)( hardness)?|\bca\b/i,
    bases: { Ca: 1, CaCO3: Ca / CACO3, CaO: Ca / CAO },
    meant: [],
    mgPerMmol: Ca,
    charge: 2,
  },
  {
    line: "Mg",
    name: "Magnesium",
    // neither "mg/L" nor "mg C/L"
    pattern:
      /hardness\W+magnesium(?!\W*(and|calcium))|magnesium( hardness)?|\bmg\b(?! ?(\/|per\b|(?![mu]?g\b|me\b)[a-z]{1,2}\d?-? ?\/))/i,
    bases: { Mg: 1, CaCO3: Mg / CACO3, MgO: Mg / (Mg + O) },
    meant: [],
    mgPerMmol: Mg,
    charge: 2,
  },
  {
    line: "Alkalinity",
    name: "Bicarbonate",
    pattern: /(bicarbonate|hydrogen ?carbonate|\bhco3\b)(?! alkalinity)/i,
    bases: AS_ALKALINITY,
    meant: ["HCO3"],
    mgPerMmol: CACO3_MG_PER_MEQ,
    charge: 1,
  },
  {
    line: "Alkalinity",
    name: "Alkalinity",
    pattern: /alkalinity|carbonate hardness|temporary hardness|acid (binding )?capacity|\bd?kh\b/i,
    bases: AS_ALKALINITY,
    meant: ["CaCO3", "HCO3"],
    mgPerMmol: CACO3_MG_PER_MEQ,
    charge: 1,
  },
  {
    line: "Hardness",
    name: "Hardness",
    pattern: /hardness|\bgh\b/i,
    bases: { CaCO3: 1, CaO: CACO3 / CAO },
    meant: ["CaCO3"],
    mgPerMmol: CACO3,
    charge: 2,
  },
  own("Na", "Sodium", /sodium|\bna\b/i, ION_G_MOL.Na, 1),
  own("K", "Potassium", /potassium|\bk\b/i, ION_G_MOL.K, 1),
  {
    line: "NH4-N",
    name: "Ammonium",
    pattern: /ammonium|ammonia|\bnh[34]\b/i,
    bases: { N: 1, NH4: N / ION_G_MOL.NH4, NH3: N / (N + 3 * H) },
    meant: ["N", "NH4"],
    mgPerMmol: N,
    charge: 1,
  },
  {
    line: "NO3-N",
    name: "Nitrate",
    pattern: /nitrate|\bno3\b/i,
    bases: { N: 1, NO3: N / ION_G_MOL.NO3 },
    meant: ["N", "NO3"],
    mgPerMmol: N,
    charge: 1,
  },
  {
    line: "SO4",
    name: "Sulfate",
    pattern: /sul(f|ph)ate|\bso4\b/i,
    bases: { SO4: 1, S: ION_G_MOL.SO4 / S },
    meant: [],
    mgPerMmol: ION_G_MOL.SO4,
    charge: 2,
  },
  {
    line: "PO4-P",
    name: "Phosphate",
    pattern: /phosphate|\bpo4\b/i,
    bases: { P: 1, PO4: P / ION_G_MOL.PO4, P2O5: (2 * P) / (2 * P + 5 * O) },
    meant: ["P", "PO4"],
    mgPerMmol: P,
    charge: 0,
  },
  { ...own("PO4-P", "Phosphorus", /phosphorus/i, P, 0), bases: { P: 1 }, meant: ["P"] },
  {
    ...own("Si", "Silica", /silica(?!te)|silicon dioxide|\bsio2\b/i, Si, 0),
    bases: { SiO2: Si / (Si + 2 * O), Si: 1 },
    meant: ["SiO2"],
  },
  own("Si", "Silicon", /silicon|\bsi\b/i, Si, 0),
  // bound or free is not the same to a plant or on standing, so both are offered
  {
    ...own("Chloramine", "Chloramine", /chlorine(?! ?dioxide)/i, null, 0),
    also: "Free chlorine",
  },
  own("Chloramine", "Chloramine", /chloramine/i, null, 0),
  own("Free chlorine", "Free chlorine", /free (residual |available )?chlorine/i, null, 0),
  own("Cl", "Chloride", /chloride|\bcl\b(?!2)/i, ION_G_MOL.Cl, 1),
  own("Fe", "Iron", /\biron\b|\bfe\b/i, ATOMIC_WEIGHTS.Fe, 0),
  own("Mn", "Manganese", /manganese|\bmn\b/i, ATOMIC_WEIGHTS.Mn, 0),
  own("B", "Boron", /boron|\bb\b/i, ATOMIC_WEIGHTS.B, 0),
  {
    ...own("EC", "Conductivity", /conduct(ivity|ance)|\bec\b/i, null, 0),
    bases: {},
  },
  { ...own("pH", "pH", /\bph\b/i, null, 0), bases: {} },
];

export type UnitKind = "mass" | "mmol" | "meq" | "degree" | "conductivity";

export interface UnitWord {
  readonly said: string;
  readonly pattern: RegExp;
  readonly kind: UnitKind;
  /** mg/L, mmol/L, meq/L, mg/L CaCO3 or mS/cm in one. */
  readonly factor: number;
}

const inCaCO3 = (unit: "dH" | "fH" | "Clark" | "gpg") => convertHardness(1, unit, "mg/L CaCO3");

/** Longer words first, so that "mS/cm" is not read as "mS/m" nor "mg/L" as "g/L". */
export const UNITS: readonly UnitWord[] = [
  {
    said: "µS/cm",
    pattern: /(µ|μ|u) ?s ?\/ ?cm|micro ?siemens|(µ|μ|u)mhos? ?\/ ?cm/i,
    kind: "conductivity",
    factor: 0.001,
  },
  { said: "mS/cm", pattern: /ms ?\/ ?cm|ds ?\/ ?m\b|mmhos? ?\/ ?cm/i, kind: "conductivity", factor: 1 },
  { said: "mS/m", pattern: /ms ?\/ ?m\b/i, kind: "conductivity", factor: 0.01 },
  {
    said: "meq/L",
    pattern: /m(illi)?eq(uivalents?)? ?(\/|per) ?l(it(er|re))?\b|mval ?\/ ?l\b|\bme ?\/ ?l\b/i,
    kind: "meq",
    factor: 1,
  },
  {
    said: "mmol/L",
    pattern: /m(illi)?mol(es)? ?(\/|per) ?l(it(er|re))?\b|mol ?\/ ?m(3|³)|\bmm\b/i,
    kind: "mmol",
    factor: 1,
  },
  {
    said: "ng/L",
    pattern: /\bng ?(\/|per) ?l(it(er|re))?\b|(µ|μ|u|mc)g ?\/ ?m(3|³)/i,
    kind: "mass",
    factor: 0.000_001,
  },
  {
    said: "µg/L",
    pattern: /(µ|μ|u|mc)g ?(\/|per) ?l(it(er|re))?\b|\bppb\b|mg ?\/ ?m(3|³)/i,
    kind: "mass",
    factor: 0.001,
  },
  {
    said: "mg/L",
    pattern: /mg ?(\/|per) ?l(it(er|re))?\b|\bppm\b|g ?\/ ?m(3|³)/i,
    kind: "mass",
    factor: 1,
  },
  { said: "g/L", pattern: /\bg ?\/ ?l\b/i, kind: "mass", factor: 1000 },
  {
    said: "°dH",
    pattern: /° ?d(h|kh|gh)?\b|\bdk?h\b|\bdgh\b|german degrees?|degrees? german/i,
    kind: "degree",
    factor: inCaCO3("dH"),
  },
  {
    said: "°fH",
    pattern: /° ?fh?\b|\bfh\b|french degrees?|degrees? french/i,
    kind: "degree",
    factor: inCaCO3("fH"),
  },
  { said: "°e", pattern: /° ?e\b|(° ?|degrees? )?clark( degrees?)?/i, kind: "degree", factor: inCaCO3("Clark") },
  {
    said: "gpg",
    pattern: /\bgpg\b|\bgrain|\bgr ?\/ ?gal\b/i,
    kind: "degree",
    factor: inCaCO3("gpg"),
  },
];

/** "mg CaCO3/L", "µg N/L", "mg NO3-N/L": the basis stands in the middle of the unit. */
export const BASIS_IN_UNIT =
  /(mg|(?:µ|μ|u|mc)g) ?(?:[a-z]+\d-)?(caco3|hco3|cao|no3|nh4|nh3|po4|p2o5|so4|sio2|si|ca|mg|na|cl|fe|mn|n|p|s|k|b)-? ?((?:\/|per) ?l(?:it(?:er|re))?)\b/gi;
/** "mg/L NO3", "mg/L NO3-N", "ppm N"; what stands in the next cell, wider off, is no basis. */
export const BASIS_BEHIND_UNIT =
  /((?:mg|(?:µ|μ|u|mc)g) ?(?:\/|per) ?l(?:it(?:er|re))?|pp[mb]) (?:[a-z]+\d-)?(no3|nh4|nh3|po4|p2o5|so4|sio2|si|n|p|s)\b/gi;

/** "as CaCO3", "(as N)", "(CaCO3)", "NO3-N": what the number counts. */
export const BASIS_PATTERN =
  /\bas (calcium carbonate|nitrogen|nitrate|bicarbonate|caco3|hco3|co3|cao|mgo|no3|nh4|nh3|po4|p2o5|so4|sio2|si|ca|mg|n|p|s)\b(?! ?\/)|\b(caco3|cao|hco3)\b|- ?(n|p|s)\b/i;
const BASIS_WORDS: Readonly<Record<string, string>> = {
  "calcium carbonate": "CaCO3",
  nitrogen: "N",
  nitrate: "NO3",
  bicarbonate: "HCO3",
  caco3: "CaCO3",
  hco3: "HCO3",
  co3: "CO3",
  cao: "CaO",
  mgo: "MgO",
  no3: "NO3",
  nh4: "NH4",
  nh3: "NH3",
  po4: "PO4",
  p2o5: "P2O5",
  so4: "SO4",
  sio2: "SiO2",
  si: "Si",
  ca: "Ca",
  mg: "Mg",
  n: "N",
  p: "P",
  s: "S",
};
/** Our name of a basis as it is printed. */
export function basisName(printed: string): string {
  return BASIS_WORDS[printed.toLowerCase()] ?? printed;
}
