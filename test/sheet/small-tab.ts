/** A small log in memory, for tests that work out by hand where every cell goes. */

import { appendTo, openLog, type SheetRecord } from "../../src/sheet/append.ts";
import { openBook } from "../../src/sheet/find.ts";
import type { Block, Mark, PlainCell, WorkbookPort } from "../../src/sheet/port.ts";
import type { TabSpec } from "../../src/sheet/spec.ts";

/** A formula that shows `shows`. */
interface Formula {
  readonly shows: string;
}
export type Cell = PlainCell | Formula;
export const auto: Formula = { shows: "auto" };

const SPEC: TabSpec = {
  ...{ name: "Care log", key: "Id", alsoKeys: ["Plant"], help: "" },
  columns: ["Id", "Plant", "Note", "Who"].map((heading) => ({ heading, kind: "text", help: "" })),
};

interface Options {
  /** Marks as they are when they are read for this time, from 1. */
  readonly marks?: (time: number) => readonly Mark[];
  /** Somebody at the sheet, before each of these calls. */
  readonly meanwhile?: (call: "look" | "write", rows: Cell[][]) => void;
}

/** A tab whose row 1 is the first of `rows`, read as a log; `rows` changes as it is written to. */
export function tabOf(rows: Cell[][], { marks, meanwhile }: Options = {}) {
  const writes: string[] = [];
  let marksRead = 0;
  const isFormula = (cell: Cell | undefined): cell is Formula => typeof cell === "object" && cell !== null;
  const shown = (row: number, column: number): unknown => {
    const cell = rows[row - 1]?.[column - 1] ?? "";
    return isFormula(cell) && "shows" in cell ? cell.shows : cell;
  };
  const width = () => Math.max(...rows.map((row) => row.length));
  const block = <T>({ row, column, rows: high, columns }: Block, read: (row: number, column: number) => T): T[][] =>
    Array.from({ length: high }, (_, r) => Array.from({ length: columns }, (__, c) => read(row + r, column + c)));
  const all = () => block({ row: 1, column: 1, rows: rows.length, columns: width() }, shown);
  const tab = {
    ...{ id: 1, name: "Care log", readAll: all, readColumns: all, mergedIn: () => [] },
    readBlock(wanted: Block) {
      meanwhile?.("look", rows);
      return block(wanted, shown);
    },
    readFormulas: (wanted: Block) =>
      block(wanted, (row, column) => (isFormula(rows[row - 1]?.[column - 1]) ? "=X" : "")),
    write(row: number, column: number, values: readonly (readonly PlainCell[])[]) {
      meanwhile?.("write", rows);
      const [first = []] = values;
      writes.push(`${row},${column} ${values.length}x${first.length}`);
      values.forEach((line, r) => {
        line.forEach((value, c) => {
          for (let more = rows.length; more < row + r; more++) rows.push([]);
          const cells = rows[row + r - 1] ?? [];
          cells[column + c - 1] = value ?? "";
        });
      });
    },
  };
  const workbook = {
    tabs: () => [tab],
    marks: (wanted: (text: string) => boolean) => (marks?.(++marksRead) ?? []).filter(({ text }) => wanted(text)),
    dayOf: () => null,
    today: () => 20_000,
  } as unknown as WorkbookPort;
  const log = () => openLog(openBook(workbook, ["Care log"]), SPEC);
  /** What the cells show, row by row, blank ones as "". */
  const shows = () => all().slice(1);
  return { log, writes, shows, append: (...records: SheetRecord[]) => appendTo(log(), records) };
}
