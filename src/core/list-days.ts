/** Days in somebody's own plant list, however they wrote them: read where one reading exists, asked about where two do. */

import { dayFromCivil, dayFromIso, isoFromDay } from "./calendar.ts";
import { nameKey } from "./cell.ts";
import { isBadInput } from "./errors.ts";
import { monthNamed } from "./months.ts";

/** A cell as the panel gets it; a date cell as its ISO day. */
export type ListCell = string | number | boolean | { readonly day: string };

export type DayOrder = "day first" | "month first";

export type ListDay =
  | { readonly kind: "blank" }
  | { readonly kind: "day"; readonly day: number }
  /** Both readings exist: 3/4/2025. */
  | { readonly kind: "either"; readonly dayFirst: number; readonly monthFirst: number }
  | { readonly kind: "no day"; readonly sentence: string };

/** The day, or null where the calendar has none; a year of two digits lies in 2000 to 2099. */
function civil(year: number, month: number, day: number): number | null {
  try {
    return dayFromCivil(year < 100 ? year + 2000 : year, month, day);
  } catch (error) {
    if (!isBadInput(error)) throw error;
    return null;
  }
}

/** Two figures and a year: 3/4/2025, 3. 4. 25. */
const FIGURES = /^(\d{1,2})\s?[-/.]\s?(\d{1,2})\s?[-/.]\s?(\d{4}|\d{2})$/;

/** A text with the month by name: 1 Mar 2025, 1. March 25, Mar 1, 2025. */
function namedDay(text: string): number | null {
  const first = /^(\d{1,2})(?:st|nd|rd|th)?[.,]?[\s-]+([a-z]+\.?),?[\s-]+(\d{4}|\d{2})$/i.exec(text);
  const second = /^([a-z]+\.?)\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4}|\d{2})$/i.exec(text);
  const month = monthNamed((first?.[2] ?? second?.[1] ?? "").replace(/\.$/, ""));
  if (month === null) return null;
  return civil(Number(first?.[3] ?? second?.[3]), month, Number(first?.[1] ?? second?.[2]));
}

function noDay(said: string, why: string): ListDay {
  return { kind: "no day", sentence: `${said} ${why}` };
}

/** What one cell says of a day. A text of figures that could be read in two ways is "either". */
export function readListDay(cell: ListCell): ListDay {
  if (typeof cell === "object") {
    const day = dayFromIso(cell.day);
    return day === null ? noDay(`“${cell.day}”`, "is no day.") : { kind: "day", day };
  }
  if (typeof cell === "number") return noDay(`${cell}`, "is a number, not a date.");
  if (typeof cell === "boolean") return noDay(cell ? "“yes”" : "“no”", "is no day.");
  const text = cell.trim();
  if (text === "" || /^[-–—?]+$/.test(text)) return { kind: "blank" };
  const yearFirst = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text);
  const day = yearFirst ? civil(Number(yearFirst[1]), Number(yearFirst[2]), Number(yearFirst[3])) : namedDay(text);
  if (day !== null) return { kind: "day", day };
  const figures = FIGURES.exec(text);
  if (figures === null) return noDay(`“${text}”`, "is no day that can be read.");
  const [one, two, year] = [Number(figures[1]), Number(figures[2]), Number(figures[3])];
  const [dayFirst, monthFirst] = [civil(year, two, one), civil(year, one, two)];
  if (dayFirst === null && monthFirst === null) return noDay(`“${text}”`, "is a day that does not exist.");
  if (dayFirst !== null && monthFirst !== null && dayFirst !== monthFirst)
    return { kind: "either", dayFirst, monthFirst };
  return { kind: "day", day: (dayFirst ?? monthFirst) as number };
}

export interface OrderSeen {
  /** The order that the column shows by a day above 12, null where none does or both do. */
  readonly order: DayOrder | null;
  /** Texts that could be read in two ways. */
  readonly either: number;
  /** An example of those, as written. */
  readonly example: string;
}

/** In which order a column writes day and month. */
export function orderOf(cells: readonly ListCell[]): OrderSeen {
  let [dayFirst, monthFirst, either] = [0, 0, 0];
  let example = "";
  for (const cell of cells) {
    if (typeof cell !== "string") continue;
    const figures = FIGURES.exec(cell.trim());
    if (figures === null) continue;
    if (readListDay(cell).kind === "either") {
      either += 1;
      if (example === "") example = cell.trim();
    } else if (Number(figures[1]) > 12 && Number(figures[2]) <= 12) dayFirst += 1;
    else if (Number(figures[2]) > 12 && Number(figures[1]) <= 12) monthFirst += 1;
  }
  const order = dayFirst > 0 === monthFirst > 0 ? null : dayFirst > 0 ? "day first" : "month first";
  return { order, either, example };
}

/** How many of the filled cells are days, 0 to 1; 0 for a column without any. */
export function shareOfDays(cells: readonly ListCell[]): number {
  const kinds = cells.map((cell) => readListDay(cell).kind).filter((kind) => kind !== "blank");
  return kinds.length === 0 ? 0 : kinds.filter((kind) => kind !== "no day").length / kinds.length;
}

export interface PastEntry {
  /** Row on the tab, heading = 1. */
  readonly row: number;
  readonly plant: string;
  /** ISO day. */
  readonly day: string;
}

export interface PastDays {
  readonly entries: readonly PastEntry[];
  /** Why a row is not among them: "Row 7, Fern: “spring” is no day that can be read." */
  readonly left: readonly string[];
  /** Texts that could be read in two ways while no order was given. */
  readonly undecided: number;
}

/**
 * The past days of one column. Each plant and day comes once. `order` decides texts with two readings; without
 * one they are left out and counted. Days after `today` (ISO) are left out: they are not past.
 */
export function pastDays(
  rows: readonly { readonly row: number; readonly plant: string; readonly cell: ListCell }[],
  { order, today }: { readonly order: DayOrder | null; readonly today: string },
): PastDays {
  const entries: PastEntry[] = [];
  const left: string[] = [];
  const seen = new Set<string>();
  let undecided = 0;
  for (const { row, plant, cell } of rows) {
    const read = readListDay(cell);
    if (read.kind === "blank") continue;
    const name = plant.trim();
    const where = `Row ${row}${name === "" ? "" : `, ${name}`}:`;
    if (read.kind === "no day") left.push(`${where} ${read.sentence}`);
    else if (name === "") left.push(`${where} there is a day but no plant.`);
    else if (read.kind === "either" && order === null) undecided += 1;
    else {
      const day = isoFromDay(read.kind === "day" ? read.day : order === "day first" ? read.dayFirst : read.monthFirst);
      if (day > today) left.push(`${where} ${day} has not come yet.`);
      else if (!seen.has(`${nameKey(name)} ${day}`)) {
        seen.add(`${nameKey(name)} ${day}`);
        entries.push({ row, plant: name, day });
      }
    }
  }
  return { entries, left, undecided };
}
