/** Contradictions within what a label says, and a pasted label with its questions answered. */

import { type Basis, LABEL_TERMS, type LabelTerm, labelFrom, type Printed } from "./analysis.ts";
import { isBadInput } from "./errors.ts";
import type { LabelFields, LabelLine, LabelQuestion, LabelText } from "./label-draft.ts";
import { OXIDES, oxideElement, oxideFactor } from "./oxides.ts";

/** Printed numbers agree when they differ by no more than labels round: a twentieth of a percent and a hundredth part. */
export const agree = (a: number, b: number) => Math.abs(a - b) <= 0.05 + 0.01 * Math.max(a, b);

/** Where an oxide and its element are both clear and agree, the oxide goes into the sheet. */
export function dropElements(fields: Record<string, number | string>): void {
  for (const oxide of OXIDES) {
    const element = oxideElement(oxide);
    const [a, b] = [fields[oxide], fields[element]];
    if (typeof a === "number" && typeof b === "number" && agree(a * oxideFactor(oxide), b)) delete fields[element];
  }
}

/** The sentence on what contradicts itself in fields of a label; "" when nothing does. */
export function contradiction(fields: LabelFields): string {
  const printed = new Map<LabelTerm, number>();
  for (const term of LABEL_TERMS) {
    const value = fields[term];
    if (typeof value === "number") printed.set(term, value);
  }
  const density = fields.Density;
  try {
    labelFrom(printed as Printed, {
      basis: fields.Basis === "w/v" ? "w/v" : "w/w",
      densityGPerMl: typeof density === "number" ? density : null,
      what: "The label",
    });
    return "";
  } catch (error) {
    if (!isBadInput(error)) throw error;
    return error.message;
  }
}

/** Key of a question for withAnswers. */
export function questionKey(line: LabelLine, question: LabelQuestion): string {
  return `${line.number}.${line.questions.indexOf(question)}`;
}

/** True when the lines of a label leave open whether they count by weight or by volume, and a person must say. */
export function asksBasis({ refused }: Pick<LabelText, "refused">): boolean {
  return /Choose the basis|in one of them/.test(refused);
}

/**
 * The label with questions answered: position of the choice by questionKey. A question without an answer stays open
 * and gives nothing. `basis`, chosen by a person, settles what the lines leave open.
 */
export function withAnswers(
  read: LabelText,
  answers: ReadonlyMap<string, number>,
  basis: Basis | null = null,
): Pick<LabelText, "fields" | "refused" | "open"> {
  const fields: Record<string, number | string> = { ...read.fields };
  let open = 0;
  for (const line of read.lines) {
    for (const question of line.questions) {
      const choice = question.choices[answers.get(questionKey(line, question)) ?? -1];
      if (choice === undefined) open += 1;
      else Object.assign(fields, choice.fields);
    }
  }
  if (basis !== null) fields.Basis = basis;
  dropElements(fields);
  const unsettled = basis === null && asksBasis(read) ? read.refused : "";
  return { fields, refused: unsettled === "" ? contradiction(fields) : unsettled, open };
}
