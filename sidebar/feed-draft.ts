/** The draft of "Know a feed": the label as pasted, what was corrected, answered and chosen, and the questions on gaps. */

import { isRecord, textOf, textsOf } from "./drafts.ts";

export const FORMS = ["solid", "liquid"] as const;
export const BASES = ["w/w", "w/v"] as const;
export const ORIGINS = ["mineral", "organic"] as const;

export interface FeedDraft {
  /** Of the press, made at the first key and kept until the feed is saved; "" before. */
  readonly id: string;
  /** As pasted; corrections stand beside it, so that the sheet keeps what the label says. */
  readonly text: string;
  /** Number of a line, from 1, as text → what it is read as instead; "" leaves it out. */
  readonly corrected: Readonly<Record<string, string>>;
  /** Numbers of the lines that are being corrected. */
  readonly open: readonly number[];
  /** answerKey → words of the reading that was chosen. */
  readonly answers: Readonly<Record<string, string>>;
  /** Nothing is printed that says what is in it. */
  readonly noAnalysis: boolean;
  readonly form: "" | (typeof FORMS)[number];
  readonly basis: "" | (typeof BASES)[number];
  readonly origin: "" | (typeof ORIGINS)[number];
  /** g/mL as typed, where the label does not give it. */
  readonly density: string;
  readonly name: string;
  readonly note: string;
  /** True from when the feed is on the tab until something of it is changed. */
  readonly saved: boolean;
  /** What the gaps are looked for in: key of the feed ("" for the one that is pasted), of the target and of the water. */
  readonly gapFeed: string;
  readonly gapTarget: string;
  readonly gapWater: string;
}

export function freshFeed(): FeedDraft {
  return {
    ...{ id: "", text: "", corrected: {}, open: [], answers: {}, noAnalysis: false },
    ...{ form: "", basis: "", origin: "", density: "", name: "", note: "", saved: false },
    ...{ gapFeed: "", gapTarget: "", gapWater: "" },
  };
}

export function readFeedDraft(kept: unknown): FeedDraft | null {
  if (!isRecord(kept) || !/^([a-z0-9-]{8,64})?$/.test(textOf(kept, "id", "damaged!"))) return null;
  const { open } = kept;
  return {
    id: textOf(kept, "id"),
    text: textOf(kept, "text"),
    corrected: textsOf(kept.corrected),
    open: Array.isArray(open) ? open.filter((at): at is number => Number.isInteger(at)) : [],
    answers: textsOf(kept.answers),
    noAnalysis: kept.noAnalysis === true,
    form: FORMS.find((one) => one === kept.form) ?? "",
    basis: BASES.find((one) => one === kept.basis) ?? "",
    origin: ORIGINS.find((one) => one === kept.origin) ?? "",
    density: textOf(kept, "density"),
    name: textOf(kept, "name"),
    note: textOf(kept, "note"),
    saved: kept.saved === true,
    gapFeed: textOf(kept, "gapFeed"),
    gapTarget: textOf(kept, "gapTarget"),
    gapWater: textOf(kept, "gapWater"),
  };
}

/** Another text: corrections and open lines belonged to the old one; answers stay, as they go by the words of a line. */
export function pasteLabel(draft: FeedDraft, text: string): FeedDraft {
  return { ...draft, text, corrected: {}, open: [] };
}

/** A line read in other words; it stays open while it is corrected. */
export function correctLine(draft: FeedDraft, line: number, words: string): FeedDraft {
  const corrected = { ...draft.corrected, [line]: words.replace(/[\r\n]+/g, " ") };
  return { ...openLine(draft, line), corrected };
}

export function openLine(draft: FeedDraft, line: number): FeedDraft {
  return draft.open.includes(line) ? draft : { ...draft, open: [...draft.open, line] };
}

export function closeLine(draft: FeedDraft, line: number): FeedDraft {
  return { ...draft, open: draft.open.filter((one) => one !== line) };
}

/** Lines that hold no guarantee, as a person says who has looked at them. */
export function leaveOut(draft: FeedDraft, lines: readonly number[]): FeedDraft {
  const corrected = { ...draft.corrected };
  for (const line of lines) corrected[line] = "";
  return { ...draft, corrected, open: draft.open.filter((one) => !lines.includes(one)) };
}

/** The line as it was pasted again. */
export function bringBack(draft: FeedDraft, line: number): FeedDraft {
  const { [line]: _, ...corrected } = draft.corrected;
  return { ...closeLine(draft, line), corrected };
}
