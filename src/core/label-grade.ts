/** Lines of a label that are no analysis: its grade, such as 10-5-5, and its density. */

import { figuresOf } from "./label-figures.ts";
import { names, type Pair, shapeOf } from "./label-lines.ts";
import { tokensOf } from "./label-tokens.ts";

export interface Grade {
  readonly n: number;
  readonly p: number;
  readonly k: number;
  /** The line itself says that P and K are elements. */
  readonly elemental: boolean;
}

export type GradeLine =
  | { readonly kind: "grade"; readonly grade: Grade; readonly more: readonly Pair[] }
  /** Three numbers that may be a grade, but also something else; `why` says what stands against it. */
  | { readonly kind: "perhaps"; readonly grade: Grade; readonly why: string }
  | null;

const PART = String.raw`\d{1,2}(?:[.,]\d{1,2})?`;
const GRADE = new RegExp(String.raw`(^|[^\d.,/+:-])(${PART})\s?([-+:/])\s?(${PART})\s?\3\s?(${PART})(?![.,]?\d|\s?%)`);

/** "+4MgO", as European grades go on: a nutrient right behind its number. */
const GLUED = /(\d)(?=(?:P2O5|K2O|CaO|MgO|SO3|Na2O|SiO2|Ca|Mg|S|Fe|Mn|Zn|B|Cu|Mo)\b)/g;

/** A tidied line that holds a grade: N, then P2O5, then K2O, percent. */
export function gradeOf(line: string): GradeLine {
  // "N-P-K" and "NPK" are the same heading; its dashes must not be taken for a part of the grade.
  const plain = line.replace(/\bN\s?-\s?P\s?-\s?K\b/gi, "NPK");
  const found = GRADE.exec(plain);
  if (found === null) return null;
  const [whole, before = "", first = "", mark = "", second = "", third = ""] = found;
  const [n, p, k] = [first, second, third].map((part) => Number(part.replace(",", ".")));
  if (n === undefined || p === undefined || k === undefined || n + p + k > 100 || n + p + k === 0) return null;
  const rest = `${plain.slice(0, found.index)}${before} ; ${plain.slice(found.index + whole.length).replace(GLUED, "$1 ")}`;
  const tokens = tokensOf(rest.replace(/\bNPK\b/gi, " "));
  const elemental = tokens.some((token) => token.kind === "marker" && token.marker === "elemental");
  const grade = { n, p, k, elemental };
  const says = /\bNPK\b/i.test(plain);
  if (
    /^\s?[-+:/]\s?\d/.test(plain.slice(found.index + whole.length)) &&
    !/^\s?\+\s?\d+(?:[.,]\d+)?\s?%?\s?\(?[A-Z]/.test(plain.slice(found.index + whole.length))
  ) {
    return { kind: "perhaps", grade, why: "A fourth number follows, and it is not said of what." };
  }
  if ([first, second, third].some((part) => /^0\d/.test(part))) {
    return { kind: "perhaps", grade, why: "It may be a date." };
  }
  if (mark === ":" || mark === "/" || (mark === "+" && !says)) {
    return { kind: "perhaps", grade, why: "It may be a ratio." };
  }
  // "NPK (Mg) 12-4-6 (2)": by European custom the 2 is MgO, by the words it is Mg.
  if (names(tokensOf(plain.slice(0, found.index).replace(/\bNPK\b/gi, " ")).filter(({ kind }) => kind !== "unknown"))) {
    return { kind: "perhaps", grade, why: "A nutrient is named before it." };
  }
  if (tokens.some(({ kind }) => kind === "number")) {
    const shape = shapeOf(rest.replace(/\bNPK\b/gi, " "));
    if (shape.kind === "pairs") return { kind: "grade", grade, more: shape.pairs };
    return { kind: "perhaps", grade, why: "More numbers stand beside it." };
  }
  if (tokens.some(({ kind }) => kind === "unknown")) {
    return { kind: "perhaps", grade, why: "The words beside it are not known." };
  }
  if (names(tokens.filter(({ kind }) => kind !== "formula"))) {
    return { kind: "perhaps", grade, why: "The words beside it name something else." };
  }
  return { kind: "grade", grade, more: [] };
}

export interface DensityLine {
  readonly gPerMl: number;
  /** The unit is printed, or the number is a specific gravity, which has none. */
  readonly sure: boolean;
}

/** lb in a US gallon as g/mL: 453.59237 g over 3785.411784 mL [NIST Handbook 44, Appendix C]. */
const LB_PER_GALLON = 453.59237 / 3785.411784;
const DENSITY =
  /(specific gravity|relative density|relative dichte|density|dichte|densit[eéàa]|densidad|dichtheid|masse volumique|weight per gallon|lbs? per gallon)/i;
const DENSITY_UNIT = /(g\s?\/\s?(?:ml|cm3|cm³|cc)|kg\s?\/\s?(?:l|dm3|dm³)|lbs?\b|kg\s?\/\s?m3)/i;

/** A tidied line that gives a density; null for any other line, and where its number is out of all reason. */
export function densityOf(line: string): DensityLine | null {
  const named = DENSITY.exec(line);
  if (named === null) return null;
  const rest = line.slice(named.index + named[0].length);
  const digits = /\d[\d.,]*\d|\d/.exec(rest);
  if (digits === null) return null;
  const after = rest.slice(digits.index + digits[0].length);
  const unit = DENSITY_UNIT.exec(after)?.[0].toLowerCase().replace(/\s/g, "") ?? "";
  // A temperature may follow ("at 20 °C"); any other number makes it unclear.
  const others = after.replace(/(?:at|bei|a|bij|@)?\s?\d+(?:[.,]\d+)?\s?°\s?[CF]/gi, "").replace(DENSITY_UNIT, "");
  if (/\d/.test(others)) return null;
  // "1,000" g/mL is one, not a thousand; in kg/m3 it is the other way round.
  const cubic = unit === "kg/m3";
  const { values } = figuresOf(digits[0], false);
  const scale = cubic ? 0.001 : /lb/.test(unit) || /gallon/i.test(named[0]) ? LB_PER_GALLON : 1;
  const possible = values.map((value) => value * scale).filter((value) => value >= 0.6 && value <= 2.5);
  // Two readings of one number are a thousandfold apart, so one at most is left.
  const [gPerMl] = possible;
  if (gPerMl === undefined) return null;
  const pure = /gravity|relative/i.test(named[0]);
  const sure = (pure && unit === "") || (!pure && (unit !== "" || /gallon/i.test(named[0])));
  return { gPerMl: Number(gPerMl.toPrecision(12)), sure };
}
