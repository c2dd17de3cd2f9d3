/** The sitter's page as cells of a tab, and read back from there. */

import type { RequestFor } from "../src/app/contract.ts";
import { headingKey } from "../src/core/cell.ts";
import type { Planned } from "../src/core/sitter.ts";
import { dayOfWords, dayWords, type SitterPage } from "./sitter-page.ts";

type Cells = RequestFor<"write sitter page">["cells"];

export const HEADINGS = ["Day", "Room", "Plant", "What to do", "About mL", "Done"] as const;
export const NOTHING_TO_DO = "Nothing is due; just look round";

/** Pixels; together as wide as an upright A4 sheet prints without shrinking. */
const WIDTHS = [118, 105, 160, 165, 70, 90];
/** Letters that run over the blank cells beside them without leaving the page. */
const LINE_LETTERS = 92;

/** Breaks a line between words. */
export function broken(line: string, most = LINE_LETTERS): string[] {
  const lines: string[] = [];
  let open = "";
  for (const word of line.split(" ")) {
    if (open !== "" && open.length + 1 + word.length > most) {
      lines.push(open);
      open = `   ${word}`;
    } else open = open === "" ? word : `${open} ${word}`;
  }
  return [...lines, open];
}

export function pageCells(page: SitterPage): Omit<RequestFor<"write sitter page">, "ask"> {
  const cells: Cells = [];
  const boldRows: number[] = [];
  const bold = (row: Cells[number]): void => {
    cells.push(row);
    boldRows.push(cells.length);
  };
  const lines = (texts: readonly string[]): void => {
    for (const text of texts) for (const line of broken(text)) cells.push([line]);
  };
  bold([page.title]);
  lines(page.intro);
  bold(["What to pour"]);
  lines(page.pouring);
  bold(["Take care"]);
  lines(page.care);
  cells.push([null]);
  bold([...HEADINGS]);
  const from = cells.length;
  for (const { day, lines: poured } of page.days) {
    if (poured.length === 0) cells.push([dayWords(day), null, null, NOTHING_TO_DO, null, null]);
    for (const { room, plant, what, aboutMl } of poured) {
      cells.push([dayWords(day), room === "" ? null : room, plant, what, aboutMl, null]);
    }
  }
  return { cells, widths: [...WIDTHS], boldRows, wrapped: { from, to: cells.length } };
}

export interface ReadPage {
  readonly fromDay: number;
  readonly toDay: number;
  /** With what was written under Done, "" for nothing. */
  readonly lines: readonly (Planned & { readonly done: string })[];
}

/** Reads a page as it stands, also one that was sorted or got columns; null when it is none. */
export function readPageCells(rows: readonly (readonly (string | number)[])[]): ReadPage | null {
  const keys = rows.map((row) => row.map((cell) => headingKey(String(cell))));
  const headingAt = keys.findIndex((row) => [HEADINGS[0], HEADINGS[2]].every((each) => row.includes(headingKey(each))));
  const headings = keys[headingAt];
  if (headings === undefined) return null;
  const at = (heading: (typeof HEADINGS)[number]) => headings.indexOf(headingKey(heading));
  const cell = (row: readonly (string | number)[], heading: (typeof HEADINGS)[number]) => row[at(heading)] ?? "";
  const span = rows
    .slice(0, headingAt)
    .map((row) => /From (.+?) to (.+?):/.exec(String(row[0] ?? "")))
    .find((found) => found !== null);
  const [fromDay, toDay] = [dayOfWords(span?.[1] ?? ""), dayOfWords(span?.[2] ?? "")];
  const lines = rows.slice(headingAt + 1).flatMap((row) => {
    const day = dayOfWords(String(cell(row, "Day")));
    const plant = String(cell(row, "Plant")).trim();
    if (day === null || plant === "") return [];
    const amount = cell(row, "About mL");
    return [
      { day, plant, amountMl: typeof amount === "number" ? amount : null, done: String(cell(row, "Done")).trim() },
    ];
  });
  const days = lines.map(({ day }) => day);
  const [first, last] = [fromDay ?? Math.min(...days), toDay ?? Math.max(...days)];
  return Number.isFinite(first) && Number.isFinite(last) ? { fromDay: first, toDay: last, lines } : null;
}
