/** A number on a pasted label and what it is a number of: clear, to be asked, or not known. */

import type { LabelTerm } from "./analysis.ts";
import { type Draft, LEAVE_OUT } from "./label-draft.ts";
import { figuresOf } from "./label-figures.ts";
import type { Pair } from "./label-lines.ts";
import type { Reading } from "./label-readings.ts";
import { meaningOf, type TermContext } from "./label-terms.ts";
import type { Unit } from "./label-tokens.ts";
import { sayGiven, sayList, sayNumber } from "./saying.ts";

const rounded = (value: number) => Number(value.toPrecision(12));

export interface State {
  unit: Unit | null;
  nitrogen: boolean;
  sources: boolean;
}

/** The unit of a line, else that of the heading above it; a bare percent sign is a share of what the heading says. */
function unitOf(own: Unit | null, above: Unit | null): Unit | null {
  if (own === null) return above;
  return own.basis === null && above?.percent === 1 ? above : own;
}

/** One for each way to read the words and the digits, as far as it stays within 100 %. */
function readingsOf(values: readonly number[], options: readonly Reading[], unit: Unit | null) {
  return options.flatMap(({ term, factor, words }) =>
    values
      .map((value) => ({ term, words, written: value, percent: rounded(value * (unit?.percent ?? 1) * factor) }))
      .filter(({ percent }) => percent <= 100),
  );
}

/** Enters a pair of words and number into its line: as a clear entry, a question, or not at all. */
export function addPair(draft: Draft, pair: Pair, state: State, context: TermContext): void {
  const before = draft.entries[draft.entries.length - 1];
  // A line set in below total nitrogen names a form of it.
  const indented = /^(?:\s|[-–•·*])/.test(draft.text);
  const meaning = meaningOf(pair.run, {
    ...context,
    nitrogen:
      (state.nitrogen && indented) || (pair.inside && (before?.term === "N" || before?.term.endsWith("-N") === true)),
  });
  if (meaning.kind === "none" || meaning.kind === "unclear") {
    draft.unclear = "The words around the number are not known here.";
    return;
  }
  if (meaning.kind === "not counted") {
    draft.passed = `${meaning.named} is not counted here.`;
    return;
  }
  const unit = unitOf(pair.unit, state.unit);
  const exact = (term: LabelTerm): Reading => ({ term, factor: 1, words: "" });
  let options = meaning.kind === "term" ? [exact(meaning.term)] : meaning.options;
  let sure = meaning.kind === "term";
  // "P2O5 5 % (2.2 % P)": in the bracket after its oxide, the element is meant.
  if (meaning.kind === "choice" && pair.inside && before !== undefined) {
    const element = options.find(({ term }) => before.term.startsWith(term) && before.term !== term);
    if (element !== undefined) {
      options = [element];
      sure = true;
    }
  }
  const figures = figuresOf(pair.written, unit === null || unit.percent === 1);
  const { values } = figures;
  const possible = readingsOf(values, options, unit);
  const rank = meaning.kind === "term" ? meaning.rank : 3;
  const [first] = possible;
  if (first === undefined) {
    draft.unclear =
      values.length === 0 ? `"${pair.written}" cannot be read as a number.` : "It would be more than 100 %.";
    return;
  }
  const basis = unit?.basis ?? null;
  if (sure && figures.sure && !pair.atMost) {
    draft.entries.push({
      line: draft.number,
      term: first.term,
      percent: first.percent,
      basis,
      rank,
      bare: unit === null,
    });
    state.nitrogen = first.term === "N" || first.term.endsWith("-N");
    return;
  }
  const named = meaning.kind === "choice" ? meaning.named : first.term;
  const choices = possible.map(({ term, words, written, percent }) => ({
    words: `${words === "" ? sayGiven(written) : words}, so ${term} ${sayNumber(percent)} %`,
    fields: { [term]: percent, ...(basis === "w/v" ? { Basis: "w/v" } : {}) },
  }));
  const question = pair.atMost
    ? `"${named} ${pair.written}" is an upper limit, no guarantee. Count it as it stands?`
    : options.length > 1
      ? `"${named} ${pair.written}" can mean ${sayList(
          options.map(({ words }) => words),
          "or",
        )}. Which is it?`
      : values.length > 1
        ? `"${pair.written}" can be read in two ways. Which is it?`
        : !figures.sure
          ? `Is "${pair.written}" meant as ${sayGiven(values[0] as number)}?`
          : `Is "${named}" meant as ${first.words}?`;
  draft.questions.push({ question, choices: [...choices, LEAVE_OUT] });
}
