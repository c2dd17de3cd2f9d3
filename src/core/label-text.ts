/** A printed analysis as it was pasted, understood line by line: what is clear, what is asked, what stays as it is. */

import { type Draft, type LabelText, LEAVE_OUT } from "./label-draft.ts";
import { densityOf, type Grade, gradeOf } from "./label-grade.ts";
import { type LineShape, names, type Pair, shapeOf } from "./label-lines.ts";
import { mergeEntries } from "./label-merge.ts";
import { addPair, type State } from "./label-pairs.ts";
import type { TermContext } from "./label-terms.ts";
import { plain, type Token, tidyLine, type Unit } from "./label-tokens.ts";
import { SOURCES_LINE } from "./label-words.ts";
import { sayGiven } from "./saying.ts";

/** More is no label; pasted books stop here, and what asks for a label says so. */
export const MOST_LINES = 300;
const MOST_LENGTH = 600;

function addGrade(draft: Draft, found: Exclude<ReturnType<typeof gradeOf>, null>): Grade | null {
  if (found.kind === "grade") return found.grade;
  const { n, p, k } = found.grade;
  draft.perhaps = found.grade;
  const fields = { N: n, P2O5: p, K2O: k };
  const words = `the grade: N ${n}, P2O5 ${p}, K2O ${k} %`;
  draft.questions.push({
    question: `Is "${draft.text.trim()}" the grade? ${found.why}`,
    choices: [{ words, fields }, LEAVE_OUT],
  });
  return null;
}

const onlyKnown = (tokens: readonly Token[]) => !tokens.some(({ kind }) => kind === "unknown");

/** Names and numbers that stand on lines of their own: pairs of line positions, where their order leaves no doubt. */
function twoLinePairs(shapes: readonly (LineShape | null)[]): { pairs: Map<number, number>; doubtful: Set<number> } {
  const pairs = new Map<number, number>();
  const doubtful = new Set<number>();
  const kindOf = (at: number): "words" | "numbers" | null => {
    const shape = shapes[at];
    if (shape === undefined || shape === null) return null;
    if (shape.kind === "numbers") return "numbers";
    return shape.kind === "words" && shape.groups.some(names) && shape.groups.every(onlyKnown) ? "words" : null;
  };
  for (let from = 0; from < shapes.length; ) {
    let to = from;
    while (to < shapes.length && kindOf(to) !== null) to += 1;
    const block = Array.from({ length: to - from }, (_, k) => from + k);
    const alternates = block.every(
      (at) => kindOf(at) === (((at - from) % 2 === 0) === (kindOf(from) === "words") ? "words" : "numbers"),
    );
    if (block.length >= 2) {
      if (alternates && block.length % 2 === 0) {
        for (let at = from; at < to; at += 2) {
          if (kindOf(from) === "words") pairs.set(at + 1, at);
          else pairs.set(at, at + 1);
        }
      } else for (const at of block) doubtful.add(at);
    }
    from = Math.max(to, from + 1);
  }
  return { pairs, doubtful };
}

/** Reads a pasted label. Never throws and never guesses: two readings are a question, anything else unknown stays visible. */
export function readLabelText(text: string): LabelText {
  const all = text.split(/\r\n|\r|\n/).slice(0, MOST_LINES);
  const tidied = all.map((line) => (line.length > MOST_LENGTH ? "" : tidyLine(line)));
  const shapes = tidied.map((line) => (gradeOf(line) === null ? shapeOf(line) : null));
  const { pairs: twoLines, doubtful } = twoLinePairs(shapes);
  const namesOf = new Set(twoLines.values());
  const whole = tidied.join("\n").toLowerCase();
  const context: TermContext = {
    nitrogen: false,
    elemental: tidied.some((line) => /\belemental\b|elementwert|as elements/i.test(line) && !/\d/.test(line)),
    bareElements: /available phosph|soluble potash/.test(whole),
  };
  const state: State = { unit: null, nitrogen: false, sources: false };
  const drafts: Draft[] = [];
  let grade: { grade: Grade; draft: Draft } | null = null;
  all.forEach((pasted, at) => {
    const line = tidied[at] as string;
    if (pasted.trim() === "") {
      state.sources = false;
      return;
    }
    const draft: Draft = {
      number: at + 1,
      text: pasted,
      entries: [],
      fields: {},
      questions: [],
      passed: "",
      unclear: "",
      perhaps: null,
    };
    drafts.push(draft);
    const shape = shapes[at] ?? null;
    const density = densityOf(line);
    const sources = SOURCES_LINE.test(plain(line.toLowerCase()));
    if (line === "") draft.unclear = "The line is too long, or holds nothing but marks.";
    else if (sources && !/\d\s?(?:%|mg|g\s?\/)/i.test(line)) {
      state.sources = true;
      draft.passed = "Raw materials, without amounts.";
    } else if (density !== null) {
      if (density.sure) draft.fields.Density = density.gPerMl;
      else {
        const choice = { words: `density ${sayGiven(density.gPerMl)} g/mL`, fields: { Density: density.gPerMl } };
        draft.questions.push({ question: "Is this the density in g/mL?", choices: [choice, LEAVE_OUT] });
      }
    } else if (shape === null) {
      const found = gradeOf(line);
      if (found === null) return;
      const own = addGrade(draft, found);
      if (own !== null && grade !== null) draft.unclear = "There is a grade already.";
      else if (own !== null) grade = { grade: own, draft };
      // What follows a grade is percent like the grade itself.
      const percent: Unit = { percent: 1, basis: null, text: "%" };
      if (found.kind === "grade")
        for (const pair of found.more) addPair(draft, { ...pair, unit: pair.unit ?? percent }, state, context);
    } else if (doubtful.has(at))
      draft.unclear = "Names and numbers stand on different lines, and their order is not clear.";
    else if (namesOf.has(at)) draft.passed = "Goes with the number on the line beside it.";
    else if (shape.kind === "numbers")
      addNumbers(draft, shape.pairs, shapes[twoLines.get(at) ?? -1] ?? null, { state, context });
    else if (shape.kind === "words") {
      const tokens = shape.groups.flat();
      if (state.sources) draft.passed = "Raw materials, without amounts.";
      else if (!names(tokens)) {
        draft.passed = "A heading.";
        state.unit = shape.unit;
      } else draft.unclear = onlyKnown(tokens) ? "There is no number." : "The words are not known here.";
    } else if (shape.kind === "tangled") draft.unclear = shape.why;
    else {
      state.sources = false;
      for (const pair of shape.pairs) addPair(draft, pair, state, context);
    }
  });
  // Assigned inside the loop's function, which the compiler does not follow.
  const graded = grade as { grade: Grade; draft: Draft } | null;
  for (const draft of drafts) {
    // A line of which a part is not understood gives nothing: what is not known may change what is.
    if (draft.unclear === "") continue;
    draft.entries = [];
    draft.questions = [];
  }
  return mergeEntries(drafts, graded !== null && graded.draft.unclear !== "" ? null : graded);
}

function addNumbers(
  draft: Draft,
  figures: readonly Pair[],
  named: LineShape | null,
  how: { state: State; context: TermContext },
): void {
  if (named === null || named.kind !== "words") {
    draft.unclear = "It is not said what the number is of.";
    return;
  }
  if (named.groups.length !== figures.length) {
    draft.unclear = "There are not as many numbers as names.";
    return;
  }
  figures.forEach((figure, k) => {
    addPair(
      draft,
      { ...figure, run: named.groups[k] as readonly Token[], unit: figure.unit ?? named.unit },
      how.state,
      how.context,
    );
  });
}
