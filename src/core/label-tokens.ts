/** A line of a printed analysis as words, formulas, numbers and units. */

import { LABEL_TERMS, type LabelTerm } from "./analysis.ts";
import { type ElementSymbol, SYMBOLS } from "./elements.ts";
import {
  COMPOUNDS,
  ELEMENT_WORDS,
  HEADING_WORDS,
  LIMIT_PHRASES,
  MARKER_WORDS,
  type Marker,
  NOT_COUNTED,
} from "./label-words.ts";

/** Ions that labels print although they are no guarantee of an element. */
export type Ion = "NO3" | "NH4" | "SO4" | "PO4";

export interface Unit {
  /** What it is worth in percent: 0.0001 for mg/kg. */
  readonly percent: number;
  /** Null for a bare percent sign. */
  readonly basis: "w/w" | "w/v" | null;
  readonly text: string;
}

export type Token =
  | { readonly kind: "number"; readonly text: string }
  | { readonly kind: "unit"; readonly unit: Unit }
  | { readonly kind: "formula"; readonly term: LabelTerm; readonly text: string }
  | { readonly kind: "element"; readonly symbol: ElementSymbol; readonly text: string }
  | { readonly kind: "ion"; readonly ion: Ion }
  /** A formula with a digit 0 where the letter O belongs. */
  | { readonly kind: "misprint"; readonly term: LabelTerm; readonly text: string }
  | { readonly kind: "marker"; readonly marker: Marker; readonly text: string }
  | { readonly kind: "heading" | "not counted" | "unknown" | "open" | "close"; readonly text: string };

const SUBSCRIPTS = "₀₁₂₃₄₅₆₇₈₉";

/** One way of writing dashes, spaces and small digits; footnote marks and leaders gone. */
export function tidyLine(line: string): string {
  return line
    .replace(/[₀-₉]/g, (digit) => String(SUBSCRIPTS.indexOf(digit)))
    .replace(/[‐‑‒–—−]/g, "-")
    .replace(/[*†‡®™•▪●◦]/g, " ")
    .replace(/…/g, " .. ")
    .replace(/(?:\.\s?){2,}|_{2,}|-{2,}|={2,}/g, " ")
    .replace(/\s+/g, " ")
    .trim();
}

const PERCENT_WORD = "%|percent|per cent|prozent|pct";
const SHARE = String.raw`\(?\s*(?:w|m|p|wt|s)\s*\/\s*(w|m|p|wt|s|v|vol)\s*\)?`;
const UNIT_PATTERNS: readonly (readonly [pattern: RegExp, percent: number, basis: Unit["basis"]])[] = [
  [/^mg\s*\/\s*100\s*g(?![a-z])/i, 0.001, "w/w"],
  [/^g\s*\/\s*100\s*g(?![a-z])/i, 1, "w/w"],
  [/^g\s*\/\s*100\s*ml(?![a-z])/i, 1, "w/v"],
  [/^mg\s*\/\s*kg(?![a-z])/i, 0.0001, "w/w"],
  [/^ppm(?![a-z])/i, 0.0001, "w/w"],
  [/^[µμ]g\s*\/\s*g(?![a-z])/i, 0.0001, "w/w"],
  [/^g\s*\/\s*kg(?![a-z])/i, 0.1, "w/w"],
  [/^mg\s*\/\s*l(?:it(?:er|re))?(?![a-z])/i, 0.0001, "w/v"],
  [/^g\s*\/\s*l(?:it(?:er|re))?(?![a-z])/i, 0.1, "w/v"],
];
const SHARED_PERCENT = new RegExp(`^(?:${PERCENT_WORD})\\s*${SHARE}(?![a-z])`, "i");
const BARE_SHARE = new RegExp(`^${SHARE}(?![a-z/])\\s*%?`, "i");
const BARE_PERCENT = new RegExp(`^(?:${PERCENT_WORD})`, "i");

function readUnit(rest: string): { unit: Unit; length: number } | null {
  for (const [pattern, percent, basis] of UNIT_PATTERNS) {
    const found = pattern.exec(rest);
    if (found !== null) return { unit: { percent, basis, text: found[0] }, length: found[0].length };
  }
  const shared = SHARED_PERCENT.exec(rest) ?? BARE_SHARE.exec(rest);
  if (shared !== null) {
    const basis = /^v/i.test(shared[1] as string) ? "w/v" : "w/w";
    return { unit: { percent: 1, basis, text: basis === "w/v" ? "% w/v" : "% w/w" }, length: shared[0].length };
  }
  const bare = BARE_PERCENT.exec(rest);
  return bare === null ? null : { unit: { percent: 1, basis: null, text: "%" }, length: bare[0].length };
}

const N_FORMS: readonly (readonly [pattern: RegExp, term: LabelTerm])[] = [
  [/^(?:NO3\s?-\s?N|N\s?-\s?NO3|N\s?\(\s?NO3\s?\))(?![A-Za-z0-9])/i, "NO3-N"],
  [/^(?:NH4\s?-\s?N|N\s?-\s?NH4|N\s?\(\s?NH4\s?\))(?![A-Za-z0-9])/i, "NH4-N"],
  [/^(?:urea\s?-\s?N|N\s?-\s?urea|N\s?-\s?NH2|NH2\s?-\s?N)(?![A-Za-z0-9])/i, "Urea-N"],
];
const OXIDE = /^(?:P\s?2\s?O\s?5|K\s?2\s?O|CaO|MgO|SO\s?3|Na\s?2\s?O|SiO\s?2)(?![A-Za-z0-9])/i;
const MISPRINT = /^(P205|K20|Na20)(?![A-Za-z0-9])/i;
const ION = /^(NO3|NH4|SO4|PO4)(?:\s?[-+]|\s?\d[-+])?(?![A-Za-z0-9])/;
const NUMBER = /^(?:\d{1,3}(?:[ '’]\d{3})+(?:[.,]\d+)?|\d+(?:[.,]\d+)*|[.,]\d+)(?![A-Za-z0-9])/;

const BY_FORMULA = new Map<string, LabelTerm>(LABEL_TERMS.map((term) => [term.toLowerCase(), term]));

function readFormula(rest: string): { token: Token; length: number } | null {
  for (const [pattern, term] of N_FORMS) {
    const found = pattern.exec(rest);
    if (found !== null) return { token: { kind: "formula", term, text: found[0] }, length: found[0].length };
  }
  const oxide = OXIDE.exec(rest);
  if (oxide !== null) {
    const term = BY_FORMULA.get(oxide[0].replace(/\s/g, "").toLowerCase()) as LabelTerm;
    return { token: { kind: "formula", term, text: oxide[0] }, length: oxide[0].length };
  }
  const misprint = MISPRINT.exec(rest);
  if (misprint !== null) {
    const text = misprint[0];
    const term = BY_FORMULA.get(text.replace("0", "o").toLowerCase()) as LabelTerm;
    return { token: { kind: "misprint", term, text }, length: text.length };
  }
  const ion = ION.exec(rest);
  if (ion !== null) return { token: { kind: "ion", ion: ion[1] as Ion }, length: ion[0].length };
  // Symbols as they are written, or all in capitals: "mg" is a unit and "ca" a word.
  for (const symbol of SYMBOLS) {
    const written = rest.slice(0, symbol.length);
    if ((written !== symbol && written !== symbol.toUpperCase()) || /^[A-Za-z0-9]/.test(rest.slice(symbol.length)))
      continue;
    return { token: { kind: "formula", term: symbol, text: written }, length: symbol.length };
  }
  return null;
}

/** Accents and the umlaut dots taken off, so that one spelling of each word will do. */
export const plain = (text: string) => text.normalize("NFD").replace(/[\u0300-\u036f]/g, "");

function wordToken(word: string, written: string): Token {
  if (NOT_COUNTED.has(word) || NOT_COUNTED.has(written)) return { kind: "not counted", text: written };
  const symbol = ELEMENT_WORDS.get(word);
  if (symbol !== undefined) return { kind: "element", symbol, text: written };
  const marker = MARKER_WORDS.get(word);
  if (marker !== undefined) return { kind: "marker", marker, text: written };
  return { kind: HEADING_WORDS.has(word) ? "heading" : "unknown", text: written };
}

/** Tokens of a tidied line, in order. Whatever is not known is a token too, so that nothing is passed over unseen. */
export function tokensOf(line: string): Token[] {
  let text = plain(line);
  for (const [pattern, words] of [...COMPOUNDS, ...LIMIT_PHRASES]) {
    text = text.replace(new RegExp(pattern.source, "gi"), words);
  }
  text = text.replace(/\bN\s?-\s?P\s?-\s?K\b/g, "NPK");
  const tokens: Token[] = [];
  for (let at = 0; at < text.length; ) {
    const rest = text.slice(at);
    if (/^[\s,;:|=/+'’]/.test(rest) || /^[.-](?!\d)/.test(rest)) {
      at += 1;
      continue;
    }
    if (rest[0] === "(" || rest[0] === "[") {
      // "(w/v)" and "(% w/w)" are units, brackets and all.
      const unit = readUnit(rest);
      if (unit !== null) {
        tokens.push({ kind: "unit", unit: unit.unit });
        at += unit.length;
        continue;
      }
      tokens.push({ kind: "open", text: "(" });
      at += 1;
      continue;
    }
    if (rest[0] === ")" || rest[0] === "]") {
      tokens.push({ kind: "close", text: ")" });
      at += 1;
      continue;
    }
    if (/^[<≤≥>]/.test(rest)) {
      tokens.push({ kind: "marker", marker: /^[<≤]/.test(rest) ? "at most" : "filler", text: rest[0] as string });
      at += 1;
      continue;
    }
    const found = readUnit(rest);
    if (found !== null) {
      tokens.push({ kind: "unit", unit: found.unit });
      at += found.length;
      continue;
    }
    const formula = readFormula(rest);
    if (formula !== null) {
      tokens.push(formula.token);
      at += formula.length;
      continue;
    }
    // A number may stand right before its unit, as in 400mg/kg.
    const digits = NUMBER.exec(rest.replace(/^([\d.,'’ ]*\d)(?=(?:mg|g|ppm|[µμ]g|percent|prozent|pct))/i, "$1 "));
    if (digits !== null) {
      tokens.push({ kind: "number", text: digits[0] });
      at += digits[0].length;
      continue;
    }
    const [written] = /^(?:[A-Za-z0-9]+|[\s\S])/u.exec(rest) as RegExpExecArray;
    tokens.push(wordToken(written.toLowerCase(), written));
    at += written.length;
  }
  return tokens;
}
