/** A label as it is pasted: each line with how it is understood, and the feed that they make together. */

import type { Basis } from "../src/core/analysis.ts";
import { nameKey } from "../src/core/cell.ts";
import { type Feed, type Fields, readShelfFeed } from "../src/core/feeds.ts";
import { asksBasis, questionKey, withAnswers } from "../src/core/label-answers.ts";
import type { LabelFields, LabelLine, LabelQuestion } from "../src/core/label-draft.ts";
import { readLabelText } from "../src/core/label-text.ts";
import type { FeedDraft } from "./feed-draft.ts";
import { type Typed, typedNumber } from "./typed.ts";

export interface TypedQuestion extends LabelQuestion {
  readonly key: string;
  /** Position of the choice; null while it is open. */
  readonly chosen: number | null;
}

export interface TypedLine extends Omit<LabelLine, "questions"> {
  /** As it stands in the pasted text. */
  readonly pasted: string;
  readonly questions: readonly TypedQuestion[];
}

export interface TypedLabel {
  readonly lines: readonly TypedLine[];
  /** Lines that a person left out, as pasted. */
  readonly leftOut: readonly { readonly number: number; readonly pasted: string }[];
  /** Numbers of the lines that are not understood. */
  readonly unclear: readonly number[];
  readonly fields: LabelFields;
  /** Why the fields contradict each other; "" when they do not. */
  readonly refused: string;
  /** Questions still open. */
  readonly open: number;
  /** Known from the label or chosen; "" while it is not. */
  readonly form: FeedDraft["form"];
  /** What the person must be asked about the whole label. */
  readonly asks: { readonly form: boolean; readonly basis: boolean; readonly density: boolean };
  readonly density: Typed;
}

type LabelDraft = Pick<
  FeedDraft,
  "text" | "corrected" | "open" | "answers" | "form" | "basis" | "density" | "noAnalysis"
>;

/** Goes by words, so that an answer outlives a new line above. */
export function answerKey(line: Pick<LabelLine, "text">, { question }: LabelQuestion): string {
  return `${line.text.trim()} ${question}`;
}

/** A line that was emptied while it is being corrected. */
const emptied = (number: number, pasted: string): TypedLine => ({
  ...{ number, pasted, text: "", outcome: "passed over", fields: {}, questions: [] },
  sentence: "Nothing is left of this line.",
});

function settled(draft: LabelDraft, found: LabelFields): { form: FeedDraft["form"]; said: boolean } {
  const said = found.Basis === "w/v" || found.Density !== undefined;
  return { form: said ? "liquid" : draft.form, said };
}

export function readTypedLabel(draft: LabelDraft): TypedLabel {
  const pasted = draft.text.split(/\r\n|\r|\n/);
  const read = readLabelText(pasted.map((line, at) => draft.corrected[at + 1] ?? line).join("\n"));
  const answers = new Map<string, number>();
  const byNumber = new Map(
    read.lines.map((line): [number, TypedLine] => {
      const questions = line.questions.map((question): TypedQuestion => {
        const key = answerKey(line, question);
        const found = question.choices.findIndex(({ words }) => words === draft.answers[key]);
        if (found !== -1) answers.set(questionKey(line, question), found);
        return { ...question, key, chosen: found === -1 ? null : found };
      });
      return [line.number, { ...line, pasted: pasted[line.number - 1] ?? "", questions }];
    }),
  );
  const lines: TypedLine[] = [];
  const leftOut: { number: number; pasted: string }[] = [];
  pasted.forEach((text, at) => {
    const number = at + 1;
    const line = byNumber.get(number);
    if (line !== undefined) lines.push(line);
    else if (draft.open.includes(number)) lines.push(emptied(number, text));
    else if (text.trim() !== "" && draft.corrected[number] !== undefined) leftOut.push({ number, pasted: text });
  });
  const { form, said } = settled(draft, withAnswers(read, answers).fields);
  const byWeight = form === "solid";
  const chosen: Basis | null = draft.basis === "" ? null : draft.basis;
  const asksForBasis = !byWeight && (asksBasis(read) || (form === "liquid" && read.fields.Basis === undefined));
  const { fields, refused, open } = withAnswers(read, answers, byWeight ? "w/w" : asksForBasis ? chosen : null);
  return {
    ...{ lines, leftOut, fields, refused, open, form },
    unclear: lines.filter(({ outcome }) => outcome === "not understood").map(({ number }) => number),
    asks: {
      form: !said && lines.length > 0 && !draft.noAnalysis,
      basis: asksForBasis && !draft.noAnalysis,
      density: form === "liquid" && fields.Density === undefined,
    },
    density: typedNumber(draft.density, { what: "The density", unit: "g/mL", min: 0.3, max: 3 }),
  };
}

/** The row of the Feeds tab, by its headings, as it is understood now. */
export function rowOfLabel(draft: FeedDraft, label: TypedLabel): Fields {
  const { fields, density, asks } = label;
  const typed = asks.density && density.value !== null ? { Density: density.value } : {};
  return {
    ...(draft.noAnalysis ? {} : { ...fields, ...typed }),
    Feed: draft.name.trim(),
    Origin: draft.origin === "" ? undefined : draft.origin,
    "Analysis published": !draft.noAnalysis,
  };
}

const THIS = "this feed";

/** The feed the label describes, for arithmetic before it is saved; null while it is none, or may enter no recipe. */
export function feedOfLabel(draft: FeedDraft, label: TypedLabel): Feed | null {
  if (label.refused !== "" || label.open > 0) return null;
  const row = { ...rowOfLabel(draft, label), Feed: draft.name.trim() || THIS };
  return readShelfFeed(row, "this label").feed;
}

/** Row on the tab of a feed with this name, or null. */
export function rowOfName(name: string, rows: readonly { row: number; fields: Fields }[]): number | null {
  const key = nameKey(name);
  return key === "" ? null : (rows.find(({ fields }) => nameKey(String(fields.Feed ?? "")) === key)?.row ?? null);
}
