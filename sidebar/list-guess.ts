/** What the cells of somebody's own plant list say about its columns: where names, places, pots and past days stand. */

import { nameKey } from "../src/core/cell.ts";
import { type ListCell, shareOfDays } from "../src/core/list-days.ts";
import { readNumberText } from "../src/core/number-text.ts";
import { count } from "./show.ts";

/** A tab as it stands: one text for each column, "" where a column has no heading, and the rows below. */
export interface OwnTab {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly ListCell[])[];
}

export interface ListColumn {
  readonly heading: string;
  readonly cells: readonly ListCell[];
  /** Cells with something in them. */
  readonly filled: number;
  /** Different texts, as names are compared. */
  readonly distinct: number;
  readonly looksLike: "days" | "numbers" | "words" | "nothing";
}

/** A cell as one would read it out. */
export function cellWords(cell: ListCell): string {
  if (typeof cell === "object") return cell.day;
  return typeof cell === "boolean" ? (cell ? "yes" : "no") : String(cell).trim();
}

/** The number in a cell, or null; a unit behind it is left out of account. */
function numberIn(cell: ListCell): number | null {
  if (typeof cell === "number") return cell;
  if (typeof cell !== "string") return null;
  const found = /^([\d.,' ]*\d)\s*(?:ml|millilitres?|milliliters?)?$/i.exec(cell.trim());
  if (found === null) return null;
  try {
    return readNumberText(found[1] ?? "", { what: "pot" });
  } catch {
    return null;
  }
}

/** The columns with a heading, each heading once. */
export function columnsOf({ headings, rows }: OwnTab): ListColumn[] {
  const seen = new Set<string>();
  return headings.flatMap((raw, at) => {
    const heading = raw.trim();
    if (heading === "" || seen.has(heading)) return [];
    seen.add(heading);
    const cells = rows.map((row) => row[at] ?? "");
    const words = cells.map(cellWords).filter((text) => text !== "");
    const numbers = cells.filter((cell) => cellWords(cell) !== "" && numberIn(cell) !== null).length;
    const looksLike =
      words.length === 0
        ? "nothing"
        : shareOfDays(cells) >= 0.5
          ? "days"
          : numbers / words.length >= 0.8
            ? "numbers"
            : "words";
    const column: ListColumn = {
      heading,
      cells,
      filled: words.length,
      distinct: new Set(words.map(nameKey)).size,
      looksLike,
    };
    return [column];
  });
}

/** Pots of houseplants in mL; smaller figures are rather a width in cm or inches. Common practice, no source. */
const LEAST_POT_ML = 40;
const MOST_POT_ML = 100_000;

function holdsPots({ cells }: ListColumn): boolean {
  const numbers = cells.filter((cell) => cellWords(cell) !== "").map(numberIn);
  return numbers.every((number) => number !== null && number >= LEAST_POT_ML && number <= MOST_POT_ML);
}

/** Where the headings say nothing: the one column whose cells fit; none where two would fit alike. */
export function guessByCells(columns: readonly ListColumn[], rows: number): Readonly<Record<string, string>> {
  const guess: Record<string, string> = {};
  const names = columns.filter(
    ({ looksLike, filled, distinct }) => looksLike === "words" && filled >= 0.9 * rows && distinct >= 0.9 * filled,
  );
  if (names[0] !== undefined) guess.Plant = names[0].heading;
  const places = columns.filter(
    ({ looksLike, filled, distinct }) => looksLike === "words" && filled >= 0.7 * rows && distinct * 2 <= filled,
  );
  if (places.length === 1 && places[0] !== undefined) guess.Place = places[0].heading;
  const pots = columns.filter((column) => column.looksLike === "numbers" && column.distinct > 1 && holdsPots(column));
  if (pots.length === 1 && pots[0] !== undefined && pots[0].filled >= 0.5 * rows) guess["Pot mL"] = pots[0].heading;
  return guess;
}

/** The first few different texts of a column: "Hoya, Fern, Arum". */
export function examplesOf({ cells }: ListColumn, most = 3): string {
  return [...new Set(cells.map(cellWords).filter((text) => text !== ""))].slice(0, most).join(", ");
}

/** True where a column cannot be what it would be taken for. */
export function speaksAgainst(ours: string, column: ListColumn | undefined): boolean {
  if (column === undefined || column.looksLike === "nothing") return false;
  if (ours === "Since") return column.looksLike !== "days";
  if (ours === "Pot mL") return !holdsPots(column);
  return column.looksLike === "days";
}

/** What a person should look at before the list is used, a sentence each. */
export function listDoubts(columns: readonly ListColumn[], chosen: Readonly<Record<string, string>>): string[] {
  const at = (ours: string) => columns.find(({ heading }) => heading === chosen[ours]);
  const doubts: string[] = [];
  const plant = at("Plant");
  if (plant !== undefined && plant.distinct < plant.filled) {
    const twice = repeated(plant);
    doubts.push(
      `In “${plant.heading}”, ${count(twice.length, "name")} ${twice.length === 1 ? "stands" : "stand"} more than once (${twice.slice(0, 3).join(", ")}). The log cannot tell such plants apart: choose a column in which each name stands once, or make the names differ.`,
    );
  }
  const pot = at("Pot mL");
  if (pot !== undefined && speaksAgainst("Pot mL", pot)) {
    const example = pot.cells.find((cell) => {
      const number = numberIn(cell);
      return cellWords(cell) !== "" && (number === null || number < LEAST_POT_ML || number > MOST_POT_ML);
    });
    doubts.push(
      `“${pot.heading}” holds “${cellWords(example ?? "")}”, which is no volume in mL, perhaps a width. Leave Pot mL open, or add a column with the volumes.`,
    );
  }
  const since = at("Since");
  if (since !== undefined && speaksAgainst("Since", since)) {
    doubts.push(`“${since.heading}” holds no days. Choose another column for Since, or leave it open.`);
  }
  return doubts;
}

/** Names that stand more than once, as first spelled. */
function repeated({ cells }: ListColumn): string[] {
  const first = new Map<string, string>();
  const twice = new Map<string, string>();
  for (const cell of cells) {
    const word = cellWords(cell);
    const key = nameKey(word);
    if (key === "") continue;
    const earlier = first.get(key);
    if (earlier === undefined) first.set(key, word);
    else twice.set(key, earlier);
  }
  return [...twice.values()];
}

/** Where the headings rather stand when row 1 has fewer filled cells than a row below it: that row, else null. */
export function headingRowElsewhere({ headings, rows }: OwnTab): number | null {
  const filled = (cells: readonly ListCell[]) => cells.filter((cell) => cellWords(cell) !== "").length;
  const here = filled(headings);
  const index = rows.slice(0, 10).findIndex((row) => filled(row) >= 2 && filled(row) > here);
  return here <= 1 && index !== -1 ? index + 2 : null;
}

/** Columns of days that may be past disturbances, with the event their heading tells, "" where it tells none. */
export function pastColumns(columns: readonly ListColumn[]): { readonly column: ListColumn; readonly event: string }[] {
  return columns
    .filter(({ looksLike }) => looksLike === "days")
    .map((column) => ({ column, event: eventInHeading(column.heading) }));
}

const EVENT_WORDS: readonly (readonly [words: RegExp, event: string])[] = [
  [/root\s*(trim|prun)/i, "Root trim"],
  [/divi(de|ded|sion)/i, "Division"],
  [/(from|out of) soil/i, "Move from soil"],
  [/pot(ted)?[\s-]*up\b|up[\s-]*pott/i, "Pot up"],
  [/re-?\s?pot|new pot|potted/i, "Repot"],
];

function eventInHeading(heading: string): string {
  return EVENT_WORDS.find(([words]) => words.test(heading))?.[1] ?? "";
}
