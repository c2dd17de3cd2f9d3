/** What is said of a pasted label and its lines. */

import type { Basis, LabelTerm } from "./analysis.ts";

/** Headings of the Feeds tab, and what goes under them: percent, g/mL, or the basis. */
export type LabelFields = Readonly<Record<string, number | string>>;

export interface LabelChoice {
  readonly words: string;
  readonly fields: LabelFields;
}

export interface LabelQuestion {
  readonly question: string;
  /** "Leave it out" is always the last. */
  readonly choices: readonly LabelChoice[];
}

export interface LabelLine {
  /** From 1. */
  readonly number: number;
  /** As pasted. */
  readonly text: string;
  /**
   * understood: gives fields. asked: at least one question is open. passed over: known to hold no amount (headings,
   * raw materials, what other lines say already, nutrients not counted). not understood: to be looked at by a person.
   */
  readonly outcome: "understood" | "asked" | "passed over" | "not understood";
  readonly fields: LabelFields;
  readonly questions: readonly LabelQuestion[];
  /** Why it is passed over or not understood; "" where the fields say it all. */
  readonly sentence: string;
}

export interface LabelText {
  /** Lines that are not blank, in order. */
  readonly lines: readonly LabelLine[];
  /** What is clear, all lines together. */
  readonly fields: LabelFields;
  /** Why the clear fields contradict each other, or what must be settled for the whole label; "" when nothing. */
  readonly refused: string;
  /** Questions still open. */
  readonly open: number;
}

export const LEAVE_OUT: LabelChoice = { words: "leave it out", fields: {} };

/** A clear amount on a line. */
export interface Entry {
  readonly line: number;
  readonly term: LabelTerm;
  readonly percent: number;
  /** Null where only a percent sign, or nothing, is printed. */
  readonly basis: Basis | null;
  readonly rank: 1 | 2 | 3;
  /** Without any unit. */
  readonly bare: boolean;
}

/** What is found out about a line while all are read. */
export interface Draft {
  readonly number: number;
  readonly text: string;
  entries: Entry[];
  fields: Record<string, number | string>;
  questions: LabelQuestion[];
  passed: string;
  unclear: string;
  /** Three numbers that are asked about as a grade. */
  perhaps: { readonly n: number; readonly p: number; readonly k: number } | null;
}
