/** One line of a printed analysis: which numbers stand with which words. */

import { figuresOf } from "./label-figures.ts";
import { type Token, tokensOf, type Unit } from "./label-tokens.ts";

/** A number with the words that name it. */
export interface Pair {
  readonly run: readonly Token[];
  /** The digits as printed; figuresOf reads them once the unit is known. */
  readonly written: string;
  /** Null where the line gives none. */
  readonly unit: Unit | null;
  /** The label says at most this much, so it is no guarantee. */
  readonly atMost: boolean;
  /** The pair belongs to the one before it: in brackets, or after "of which". */
  readonly inside: boolean;
}

export type LineShape =
  | { readonly kind: "pairs"; readonly pairs: readonly Pair[] }
  /** Words without a number, in groups as the line sets them apart. */
  | { readonly kind: "words"; readonly groups: readonly (readonly Token[])[]; readonly unit: Unit | null }
  | { readonly kind: "numbers"; readonly pairs: readonly Pair[] }
  /** One thing with several numbers, or numbers and words in no clear order. */
  | { readonly kind: "tangled"; readonly why: string };

interface Figure {
  readonly written: string;
  readonly unit: Unit | null;
}

type Run = Token[];

/** Words that name something, as against "of", "total" or a heading. */
export function names(run: readonly Token[]): boolean {
  return run.some(
    (token) =>
      token.kind === "formula" ||
      token.kind === "element" ||
      token.kind === "ion" ||
      token.kind === "misprint" ||
      token.kind === "unknown" ||
      token.kind === "not counted" ||
      (token.kind === "marker" &&
        ["nitrate", "ammonium", "urea", "phosphate", "potash", "sulfate", "slow"].includes(token.marker)),
  );
}

/** Alternating runs of words and figures: words[0], figure[0], words[1], … */
function split(tokens: readonly Token[]): { words: Run[]; figures: Figure[] } {
  const words: Run[] = [[]];
  const figures: Figure[] = [];
  let pendingUnit: Unit | null = null;
  tokens.forEach((token, k) => {
    if (token.kind === "number") {
      const next = tokens[k + 1];
      const unit = next?.kind === "unit" ? next.unit : pendingUnit;
      figures.push({ written: token.text, unit });
      words.push([]);
    } else if (token.kind === "unit") {
      const before = tokens[k - 1];
      if (before?.kind === "number") pendingUnit = null;
      else pendingUnit = token.unit;
    } else (words[words.length - 1] as Run).push(token);
  });
  return { words, figures };
}

/** Takes bracketed parts that hold a number out of a line; other brackets just go. */
function takeBrackets(tokens: readonly Token[]): { outer: Token[]; inner: Token[][] } {
  const outer: Token[] = [];
  const inner: Token[][] = [];
  let open: Token[] | null = null;
  for (const token of tokens) {
    if (token.kind === "open") {
      if (open !== null) outer.push(...open);
      open = [];
    } else if (token.kind === "close") {
      if (open === null) continue;
      if (open.some(({ kind }) => kind === "number")) inner.push(open);
      else outer.push(...open);
      open = null;
    } else (open ?? outer).push(token);
  }
  if (open !== null) outer.push(...open);
  return { outer, inner };
}

const isAtMost = (run: readonly Token[]) => run.some((token) => token.kind === "marker" && token.marker === "at most");
const isPart = (run: readonly Token[]) => run.some((token) => token.kind === "marker" && token.marker === "of which");

function pairUp(tokens: readonly Token[], bracketed = false): Pair[] | null {
  const { words, figures } = split(tokens);
  const first = words[0] as Run;
  const inside = bracketed || isPart(first);
  const pair = (figure: Figure, run: Run): Pair => ({ run, ...figure, atMost: isAtMost(run), inside });
  const last = words[words.length - 1] as Run;
  const before = words.slice(0, -1);
  const after = words.slice(1);
  if (before.every(names) && !names(last)) {
    // "Iron (Fe) 0.1 % chelated": what follows the last number belongs to it.
    return figures.map((figure, k) => {
      const run = before[k] as Run;
      return pair(figure, k === figures.length - 1 ? [...run, ...last] : run);
    });
  }
  if (after.every(names) && !names(first)) {
    return figures.map((figure, k) => {
      const run = after[k] as Run;
      return pair(figure, k === 0 ? [...first, ...run] : run);
    });
  }
  return null;
}

/** The same thing said in two units, as in "8 % w/w (9.9 % w/v)": the share by weight, when the other is by volume. */
function sameTwice(figures: readonly Figure[]): Figure | null {
  const byWeight = figures.filter(({ unit }) => unit?.basis === "w/w");
  const byVolume = figures.filter(({ unit }) => unit?.basis === "w/v");
  const [one] = byWeight;
  if (figures.length === 2 && byVolume.length === 1 && one !== undefined) return one;
  const worth = figures.map(({ written, unit }) => {
    const { values, sure } = figuresOf(written, unit === null || unit.percent === 1);
    return sure ? (values[0] as number) * (unit?.percent ?? 1) : Number.NaN;
  });
  const same = worth.every((value) => Math.abs(value - (worth[0] as number)) <= 1e-9 * value);
  return same && byVolume.length === 0 ? (figures[0] as Figure) : null;
}

/** "10 % nitrogen, of which 6 % nitrate": both sides stand for themselves, the second inside the first. */
function pairParts(tokens: readonly Token[]): Pair[] | null {
  const at = tokens.findIndex((token) => token.kind === "marker" && token.marker === "of which");
  const [before, after] = [tokens.slice(0, at), tokens.slice(at)];
  const both = at > 0 && [before, after].every((part) => part.some(({ kind }) => kind === "number"));
  if (!both) return pairUp(tokens);
  const [first, second] = [pairUp(before), pairUp(after)];
  return first === null || second === null ? null : [...first, ...second];
}

/** The shape of a tidied line. */
export function shapeOf(line: string): LineShape {
  const tokens = tokensOf(line);
  const { outer, inner } = takeBrackets(tokens);
  const tangled = (why: string): LineShape => {
    const known = tokens.every(({ kind }) => kind !== "unknown");
    return { kind: "tangled", why: known ? why : "The words are not known here." };
  };
  if (!tokens.some(({ kind }) => kind === "number")) {
    const unit = tokens.reduce<Unit | null>((found, token) => (token.kind === "unit" ? token.unit : found), null);
    return { kind: "words", groups: wordGroups(outer), unit };
  }
  const flat = [...outer, ...inner.flat()];
  if (!names(flat)) {
    const { figures } = split(flat);
    const pairs = figures.map((figure) => ({ run: [], ...figure, atMost: isAtMost(flat), inside: false }));
    return { kind: "numbers", pairs };
  }
  // A bracket may only repeat the number in another unit.
  const { words, figures } = split(flat);
  if (figures.length > 1 && words.filter(names).length === 1) {
    const one = sameTwice(figures);
    if (one === null) return tangled("There are several numbers for one thing.");
    const run = words.flat();
    return { kind: "pairs", pairs: [{ run, ...one, atMost: isAtMost(run), inside: isPart(run) }] };
  }
  if (figures.length === 1) {
    const only = pairUp(flat);
    if (only !== null) return { kind: "pairs", pairs: only };
  }
  const main = pairParts(outer);
  const bracketed = inner.map((part) => pairUp(part, true));
  if (main === null || bracketed.includes(null)) {
    return tangled("It is not clear which number belongs to which word.");
  }
  return { kind: "pairs", pairs: [...main, ...bracketed.flatMap((part) => part ?? [])] };
}

/** One group for each thing named, so that a heading like "N P2O5 K2O" is three. */
function wordGroups(tokens: readonly Token[]): Token[][] {
  const onlyFormulas = tokens.every(({ kind }) => kind === "formula" || kind === "unit" || kind === "heading");
  return onlyFormulas ? tokens.filter(({ kind }) => kind === "formula").map((token) => [token]) : [[...tokens]];
}
