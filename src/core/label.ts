/** Reads a label typed as one text: "10-5-5 Ca 4 Mg 1.2 Fe 0.1", "N 10 P 2.2 K 4.2 elemental", "10-5-5 w/v". */

import { type Basis, LABEL_TERMS, type Label, type LabelTerm, labelFrom } from "./analysis.ts";
import { isoFromDay } from "./calendar.ts";
import type { Cell } from "./cell.ts";
import { elementOf } from "./elements.ts";
import { BadInput } from "./errors.ts";
import { readNumberText } from "./number-text.ts";

export type { Label } from "./analysis.ts";

const FORMS_OF_LABEL = `Write it like "10-5-5", "10-5-5 Ca 4 Mg 1.2 Fe 0.1" or "N 10 P 2.2 K 4.2 elemental"`;

const termKey = (word: string) => word.replace(/[\s-]/g, "").toLowerCase();

const TERMS: ReadonlyMap<string, LabelTerm> = new Map<string, LabelTerm>([
  ...LABEL_TERMS.map((term): [string, LabelTerm] => [termKey(term), term]),
  ["nitraten", "NO3-N"],
  ["ammoniumn", "NH4-N"],
  ["ammoniacaln", "NH4-N"],
]);

/** What people write for a nutrient that is not a percent of it: the sentence says what to write instead. */
const INSTEAD: ReadonlyMap<string, string> = new Map([
  ["no3", "NO3-N, the nitrogen in the nitrate"],
  ["nh4", "NH4-N, the nitrogen in the ammonium"],
  ["urea", "Urea-N, the nitrogen in the urea"],
  ["po4", "P or P2O5"],
  ["so4", "S or SO3"],
]);

const NUMBER = String.raw`(?:\d+(?:[.,]\d+)*|[.,]\d+)`;
const GRADE = new RegExp(
  String.raw`^(?:NPK\s*:?\s*)?(${NUMBER})\s*-\s*(${NUMBER})\s*-\s*(${NUMBER})(?=$|[\s,;+%]|[A-Za-z])`,
  "i",
);
const NEXT = new RegExp(
  String.raw`^([A-Za-z][A-Za-z0-9]*(?:\s?-\s?N)?)(?![A-Za-z0-9])\s*[:=]?\s*(-?\s*${NUMBER})\s*%?`,
  "i",
);

interface Wording {
  readonly basis: Basis;
  readonly elemental: boolean;
  readonly oxide: boolean;
  readonly rest: string;
}

/** Takes the words that hold for the whole label out of it. */
function readWording(text: string): Wording {
  let rest = text;
  const take = (pattern: RegExp): boolean => {
    const before = rest;
    rest = rest.replace(pattern, "");
    return rest !== before;
  };
  const byWeight = take(/(^|\s)%?\s*w\s*\/\s*w(?=$|[\s,;])/i);
  const byVolume = take(/(^|\s)%?\s*w\s*\/\s*v(?=$|[\s,;])/i);
  const elemental = take(/(^|\s)elemental(?=$|[\s,;])/i);
  const oxide = take(/(^|\s)oxides?(?=$|[\s,;])/i);
  if (byWeight && byVolume) {
    throw new BadInput("two-bases", `The label "${text}" says both w/w and w/v. Leave one out.`);
  }
  if (elemental && oxide) {
    throw new BadInput("two-bases", `The label "${text}" says both elemental and oxide. Leave one out.`);
  }
  return { basis: byVolume ? "w/v" : "w/w", elemental, oxide, rest: rest.trim() };
}

/** Printed terms of a label, in the order they stand. */
class PrintedTerms {
  readonly found = new Map<LabelTerm, number>();
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  add(term: LabelTerm, number: string): void {
    if (this.found.has(term)) {
      throw new BadInput("term-twice", `The label "${this.text}" gives ${term} twice. Leave one out.`);
    }
    const what = `${term} on the label "${this.text}"`;
    this.found.set(term, readNumberText(number.replace(" ", ""), { what, min: 0, max: 100 }));
  }
}

function termOf(word: string, text: string): LabelTerm {
  const key = termKey(word);
  const term = TERMS.get(key) ?? elementOf(word);
  if (term !== null) return term;
  const instead = INSTEAD.get(key);
  throw new BadInput(
    "unknown-term",
    instead === undefined
      ? `"${word}" on the label "${text}" is not known. Use ${LABEL_TERMS.join(" ")}.`
      : `"${word}" on the label "${text}" does not say how much nutrient there is. Give ${instead}.`,
  );
}

/**
 * Reads a label. The grade's P and K are P2O5 and K2O unless the text says elemental; Ca, Mg, S and the rest are
 * elements unless named as oxides; percents are w/w unless the text says w/v. A percent is never grouped by
 * thousands, so "1,234" is 1.234. `densityGPerMl`, when known, raises what a w/v label may add up to.
 * Throws BadInput for a text that cannot be read and for the contradictions of labelFrom.
 */
export function parseLabel(text: string, densityGPerMl: number | null = null): Label {
  const plain = text
    .replace(/[‐‑‒–—−]/g, "-")
    .replace(/\s+/g, " ")
    .trim();
  if (plain === "") throw new BadInput("no-label", `The label is blank. ${FORMS_OF_LABEL}.`);
  const { basis, elemental, oxide, rest: body } = readWording(plain);
  const terms = new PrintedTerms(plain);
  const grade = GRADE.exec(body);
  let rest = body;
  if (grade !== null) {
    terms.add("N", grade[1] ?? "");
    terms.add(elemental ? "P" : "P2O5", grade[2] ?? "");
    terms.add(elemental ? "K" : "K2O", grade[3] ?? "");
    rest = body.slice(grade[0].length);
  }
  for (rest = rest.replace(/^[\s,;+%]+/, ""); rest !== ""; rest = rest.replace(/^[\s,;+]+/, "")) {
    const next = NEXT.exec(rest);
    if (next === null) {
      throw new BadInput(
        "unreadable-label",
        `The label "${plain}" cannot be read from "${rest}" on. ${FORMS_OF_LABEL}.`,
      );
    }
    const [whole, word = "", number = ""] = next;
    let term = termOf(word, plain);
    if (grade === null && !elemental && (term === "P" || term === "K")) {
      const asOxide = term === "P" ? "P2O5" : "K2O";
      if (!oxide) {
        throw new BadInput(
          "two-readings",
          `"${term} ${number}" on the label "${plain}" can mean ${asOxide} or the element. Write ${asOxide} ${number}, or add the word elemental.`,
        );
      }
      term = asOxide;
    }
    if (grade === null && elemental && (term === "P2O5" || term === "K2O")) {
      throw new BadInput("two-bases", `The label "${plain}" says elemental and also ${term}. Leave one out.`);
    }
    terms.add(term, number);
    rest = rest.slice(whole.length);
  }
  if (terms.found.size === 0) throw new BadInput("no-label", `The label "${plain}" has no numbers. ${FORMS_OF_LABEL}.`);
  return labelFrom(terms.found, { basis, densityGPerMl, what: `The label "${plain}"` });
}

/**
 * Reads a label from a cell; null for a blank one. A grade like 10-5-5 typed into a cell often becomes a day:
 * the sentence says how to type it so that it stays a grade.
 */
export function readLabel(cell: Cell, densityGPerMl: number | null = null): Label | null {
  switch (cell.kind) {
    case "blank":
      return null;
    case "text":
      return parseLabel(cell.value, densityGPerMl);
    case "day":
      throw new BadInput(
        "grade-became-date",
        `The label is the date ${isoFromDay(cell.day)}: the sheet took a grade like 10-5-5 for a day. Type it with an apostrophe in front, '10-5-5, or in quotes inside the formula.`,
      );
    case "error":
      throw new BadInput("error-cell", `The label is an error cell (${cell.text}). Mend that cell or clear it.`);
    default:
      throw new BadInput("not-a-label", `The label is ${String(cell.value)}. ${FORMS_OF_LABEL}.`);
  }
}
