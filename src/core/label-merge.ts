/** The lines of a pasted label put together: parts of a whole, repeats, the grade, the basis. */

import { type Basis, LABEL_TERMS, type LabelTerm } from "./analysis.ts";
import { agree, contradiction, dropElements } from "./label-answers.ts";
import {
  type Draft,
  type Entry,
  type LabelLine,
  type LabelQuestion,
  type LabelText,
  LEAVE_OUT,
} from "./label-draft.ts";
import type { Grade } from "./label-grade.ts";
import { oxideFactor } from "./oxides.ts";
import { sayGiven } from "./saying.ts";

interface Whole {
  readonly draft: Draft;
  readonly grade: Grade;
}

function ask(draft: Draft, question: LabelQuestion): void {
  draft.questions.push(question);
}

const choiceOf = (entry: Entry) => ({
  words: `${entry.term} ${sayGiven(entry.percent)} % (line ${entry.line})`,
  fields: { [entry.term]: entry.percent },
});

/** Keeps the whole of each nutrient; parts of it and repeats are passed over, contradictions become a question. */
function settleTerm(term: LabelTerm, entries: readonly Entry[], draftOf: (line: number) => Draft): void {
  const top = Math.max(...entries.map(({ rank }) => rank));
  const [first] = entries.filter(({ rank }) => rank === top);
  if (first === undefined) return;
  const others = entries.filter((entry) => entry !== first);
  const against = others.find(({ rank, percent }) =>
    rank === top ? percent !== first.percent : percent > first.percent,
  );
  if (against !== undefined) {
    const question = `${term} is given as ${sayGiven(first.percent)} % and as ${sayGiven(against.percent)} %. Which is the whole?`;
    ask(draftOf(against.line), { question, choices: [choiceOf(first), choiceOf(against), LEAVE_OUT] });
    const drafts = new Set(entries.map(({ line }) => draftOf(line)));
    for (const draft of drafts) draft.passed = `${term} stands on several lines; see the question.`;
    return;
  }
  draftOf(first.line).fields[term] = first.percent;
  for (const { line, rank } of others) {
    draftOf(line).passed = rank === top ? `${term} is given already.` : `A part of the ${term} given already.`;
  }
}

/** A grade against the lines: it fills in what they leave out, and is asked about where they say otherwise. */
function settleGrade(
  { draft, grade }: Whole,
  found: ReadonlyMap<LabelTerm, number>,
  asked: (term: LabelTerm) => boolean,
): void {
  let repeats = true;
  let open = false;
  const elementalLines = (["P", "K"] as const).some((symbol) => {
    const printed = symbol === "P" ? grade.p : grade.k;
    return printed > 0 && agree(found.get(symbol) ?? Number.NaN, printed);
  });
  const elemental = grade.elemental || elementalLines;
  const parts: [LabelTerm, LabelTerm, number, number][] = [
    ["N", "N", grade.n, 1],
    ["P2O5", "P", grade.p, oxideFactor("P2O5")],
    ["K2O", "K", grade.k, oxideFactor("K2O")],
  ];
  for (const [oxide, element, printed, factor] of parts) {
    const asOxide = found.get(oxide) ?? (found.has(element) ? (found.get(element) as number) / factor : undefined);
    const asElement = found.get(element) ?? (found.has(oxide) ? (found.get(oxide) as number) * factor : undefined);
    const term = elemental ? element : oxide;
    const stated = elemental ? asElement : asOxide;
    if (stated === undefined) {
      if (asked(oxide) || asked(element)) {
        open = true;
        continue;
      }
      draft.fields[term] = printed;
      repeats = false;
    } else if (!agree(stated, printed)) {
      repeats = false;
      const question = `The grade says ${term} ${sayGiven(printed)} %, the lines say ${sayGiven(Number(stated.toPrecision(3)))} %. Compare both with the package.`;
      ask(draft, {
        question,
        choices: [
          { words: `as the grade says: ${term} ${sayGiven(printed)} %`, fields: { [term]: printed } },
          LEAVE_OUT,
        ],
      });
    }
  }
  if (!repeats || draft.entries.length > 0) return;
  draft.passed = open ? "The lines that say it are asked about; see the questions." : "The lines say the same.";
}

/** Percents that no unit stands with, on a label where others have one, may be anything. */
function settleBare(drafts: readonly Draft[]): void {
  const anyUnit = drafts.some(({ entries }) => entries.some(({ bare }) => !bare));
  if (!anyUnit) return;
  for (const draft of drafts) {
    for (const entry of draft.entries.filter(({ bare }) => bare)) {
      const { term, percent } = entry;
      const choices = [
        { words: `${term} ${sayGiven(percent)} %`, fields: { [term]: percent } },
        { words: `${term} ${sayGiven(percent)} mg/kg`, fields: { [term]: Number((percent / 10_000).toPrecision(12)) } },
        LEAVE_OUT,
      ];
      ask(draft, {
        question: `${term} ${sayGiven(percent)} has no unit, and other lines have one. Is it percent?`,
        choices,
      });
    }
    draft.entries = draft.entries.filter(({ bare }) => !bare);
  }
}

function settleBasis(entries: readonly Entry[]): { basis: Basis | null; refused: string } {
  const bases = new Set(entries.map(({ basis }) => basis));
  if (bases.has("w/v") && bases.has("w/w")) {
    return { basis: null, refused: "Some lines count by weight and others by volume. Give all lines in one of them." };
  }
  if (bases.has("w/v") && bases.has(null)) {
    return {
      basis: null,
      refused: "Some lines count by volume, others do not say. Choose the basis for the whole label.",
    };
  }
  return { basis: bases.has("w/v") ? "w/v" : bases.has("w/w") ? "w/w" : null, refused: "" };
}

/** Three numbers that the lines bear out need no question any more. */
function dropRepeated(draft: Draft, found: ReadonlyMap<LabelTerm, number>): void {
  if (draft.perhaps === null) return;
  const { n, p, k } = draft.perhaps;
  const stated = [found.get("N"), found.get("P2O5"), found.get("K2O")];
  if (![n, p, k].every((value, i) => agree(value, stated[i] ?? Number.NaN))) return;
  draft.questions = [];
  draft.passed = "The lines say the same.";
}

function lineOf(draft: Draft): LabelLine {
  const { number, text, fields, questions, passed, unclear } = draft;
  const has = Object.keys(fields).length > 0;
  const outcome =
    questions.length > 0
      ? "asked"
      : unclear !== ""
        ? "not understood"
        : has
          ? "understood"
          : passed !== ""
            ? "passed over"
            : "not understood";
  const sentence = unclear !== "" ? unclear : has ? "" : passed;
  return { number, text, outcome, fields, questions, sentence };
}

export function mergeEntries(drafts: readonly Draft[], grade: Whole | null): LabelText {
  const draftOf = (line: number) => drafts.find(({ number }) => number === line) as Draft;
  settleBare(drafts);
  const entries = drafts.flatMap((draft) => draft.entries);
  for (const term of LABEL_TERMS) {
    const mine = entries.filter((entry) => entry.term === term);
    settleTerm(term, mine, draftOf);
  }
  const found = new Map<LabelTerm, number>();
  for (const { fields } of drafts) {
    for (const term of LABEL_TERMS) if (typeof fields[term] === "number") found.set(term, fields[term] as number);
  }
  if (grade !== null) {
    const asked = (term: LabelTerm) =>
      drafts.some(({ questions }) => questions.some(({ choices }) => choices.some(({ fields }) => term in fields)));
    settleGrade(grade, found, asked);
  }
  for (const draft of drafts) dropRepeated(draft, found);
  const { basis, refused } = settleBasis(entries);
  const fields: Record<string, number | string> = {};
  for (const draft of drafts) Object.assign(fields, draft.fields);
  if (basis !== null) fields.Basis = basis;
  dropElements(fields);
  const lines = drafts.map(lineOf);
  const open = lines.reduce((sum, { questions }) => sum + questions.length, 0);
  return { lines, fields, refused: refused === "" ? contradiction(fields) : refused, open };
}
