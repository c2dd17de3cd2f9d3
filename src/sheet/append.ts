/** Appends records below the last row of a log: once each, as literal text, without touching what is not ours. */

import { BadInput } from "../core/errors.ts";
import { type Book, type Columns, columnAt, columnLetters, findTab, noTab, openBook } from "./find.ts";
import { refuseMerged } from "./merged.ts";
import { readTab } from "./open.ts";
import type { PlainCell, TabPort } from "./port.ts";
import { refuseNewer } from "./schema.ts";
import { type Segment, segmentsOf } from "./segments.ts";
import { marksHold, rearranged, settle, stillFree } from "./settle.ts";
import type { TabSpec } from "./spec.ts";
import { isBlank, sameCell } from "./stored.ts";

/** Cells by our own heading; a heading that is not there stays blank. The key (Id) must be there. */
export type SheetRecord = Readonly<Record<string, PlainCell>>;

export interface Appended {
  readonly written: number;
  /** Found by their Id, from an earlier try. */
  readonly already: number;
  /** Sentences on those that stand there with other values; they were left as they are. */
  readonly differing: readonly string[];
}

/** A log as it was read, to be looked at before anything is appended to it. */
export interface Log {
  readonly book: Book;
  readonly spec: TabSpec;
  readonly tab: TabPort;
  readonly values: readonly (readonly unknown[])[];
  readonly columns: Columns;
}

/** Reads a log. Call it inside `workbook.locked`, with the book opened there. */
export function openLog(book: Book, spec: TabSpec): Log {
  const tab = findTab(book, spec);
  if (!tab) throw noTab(spec);
  refuseNewer(book, tab, spec.name);
  const { values, columns } = readTab(book, spec, tab);
  return { book, spec, tab, values, columns };
}

/** Places in `values` (0 is the heading row) of the rows that bear an Id, by Id: one pass for any number of them. */
export function placesById({ spec, values, columns }: Log): ReadonlyMap<unknown, readonly number[]> {
  const idAt = columnAt(columns, spec.key) - 1;
  const places = new Map<unknown, number[]>();
  for (let at = 1; at < values.length; at++) {
    const id = values[at]?.[idAt];
    if (isBlank(id)) continue;
    const found = places.get(id);
    if (found === undefined) places.set(id, [at]);
    else found.push(at);
  }
  return places;
}

/**
 * Call it inside `workbook.locked`, with the book opened there. Costs seven calls besides those of openBook
 * and the lock, more only when columns of somebody else's lie filled between ours.
 */
export function appendRecords(book: Book, spec: TabSpec, records: readonly SheetRecord[]): Appended {
  return appendTo(openLog(book, spec), records);
}

/** The same, to a log that was read within the same lock. */
export function appendTo(log: Log, records: readonly SheetRecord[]): Appended {
  for (const heading of headingsUsed(log.spec, records)) columnAt(log.columns, heading);
  const { fresh, already, differing } = sortOut(log, once(records, log.spec.key));
  if (fresh.length > 0) writeFresh(log, fresh);
  return { written: fresh.length, already, differing };
}

/** The key and every heading that holds something in one of the records, in the order of the tab's data. */
function headingsUsed(spec: TabSpec, records: readonly SheetRecord[]): string[] {
  return spec.columns
    .map(({ heading }) => heading)
    .filter((heading) => heading === spec.key || records.some((record) => !isBlank(record[heading] ?? null)));
}

/** A record sent twice in one request counts once; two different ones under one Id are refused. */
function once(records: readonly SheetRecord[], key: string): SheetRecord[] {
  const byId = new Map<PlainCell, string>();
  return records.filter((record) => {
    const id = record[key] ?? null;
    const content = JSON.stringify(record);
    const earlier = byId.get(id);
    if (earlier !== undefined && earlier !== content) {
      throw new BadInput("id-twice", "Two different records came under the same Id. Reload the panel and try again.");
    }
    byId.set(id, content);
    return earlier === undefined;
  });
}

/** Parts the records into those not yet there and those found by their Id. */
function sortOut(log: Log, records: readonly SheetRecord[]) {
  const { spec, values, columns, book } = log;
  const idAt = columnAt(columns, spec.key) - 1;
  const rowOfId = new Map<unknown, number>();
  for (let index = 1; index < values.length; index++) {
    const id = values[index]?.[idAt];
    if (!isBlank(id) && !rowOfId.has(id)) rowOfId.set(id, index);
  }
  const fresh: SheetRecord[] = [];
  const differing: string[] = [];
  let already = 0;
  for (const record of records) {
    const index = rowOfId.get(record[spec.key]);
    if (index === undefined) {
      fresh.push(record);
      continue;
    }
    already++;
    const others = Object.keys(record).filter((heading) => {
      const at = columns.at.get(heading);
      return at !== undefined && !sameCell(values[index]?.[at - 1], record[heading] ?? null, book.workbook);
    });
    if (others.length > 0) {
      differing.push(
        `This record is already in row ${index + 1} of “${log.tab.name}”, with another ${others.join(", ")}. It was left as it is; change it there if it is wrong.`,
      );
    }
  }
  return { fresh, already, differing };
}

/** Throws BadInput when a column that is needed is filled by the formula in its heading. One call. */
function writingOf(log: Log, records: readonly SheetRecord[]): Writing {
  const { tab, spec } = log;
  const width = Math.max(log.values[0]?.length ?? 0, ...log.columns.at.values());
  const headingFormulas = tab.readFormulas({ row: 1, column: 1, rows: 1, columns: width })[0] ?? [];
  const computed = new Set(headingFormulas.flatMap((formula, index) => (formula === "" ? [] : [index + 1])));
  for (const heading of headingsUsed(spec, records)) {
    const column = columnAt(log.columns, heading);
    if (!computed.has(column)) continue;
    throw new BadInput(
      "column-computed",
      `Column ${columnLetters(column)} (“${heading}”) of “${tab.name}” is filled by the formula in its heading, so nothing can be kept there. Move that formula to a column of its own and type ${heading} as a plain heading.`,
    );
  }
  return { records, width, computed };
}

/** Whether an earlier try of these very records wrote a part of them and failed before their Ids. Two calls. */
export function halfThere(log: Log, records: readonly SheetRecord[]): boolean {
  return records.length > 0 && findPlace(log, writingOf(log, records)).retried;
}

/** More often than this, and people are rearranging the tab faster than it can be written to. */
const TRIES = 4;

function writeFresh(log: Log, records: readonly SheetRecord[], tries = TRIES): void {
  const { tab, spec, book } = log;
  const startOver = (again: readonly SheetRecord[]): void => {
    if (tries <= 1) throw rearranged(log);
    writeFresh(openLog(openBook(book.workbook, [spec.name]), spec), again, tries - 1);
  };
  const writing = writingOf(log, records);
  // The time zone is asked for now, so that nothing comes between the last look and the write.
  book.workbook.today();
  const place = findPlace(log, writing);
  refuseMerged(tab, { row: place.row, column: 1, rows: records.length, columns: writing.width }, place.segments);
  if (!marksHold(log) || !stillFree(log, place.row, records.length)) {
    startOver(records);
    return;
  }
  const headingAt = new Map([...log.columns.at].map(([heading, column]) => [column, heading]));
  for (const { from, to } of place.segments) {
    tab.write(
      place.row,
      from,
      records.map((record) =>
        Array.from({ length: to - from + 1 }, (_, index) => record[headingAt.get(from + index) ?? ""] ?? null),
      ),
    );
  }
  const again = settle(log, {
    records,
    rows: records.map((_, index) => place.row + index),
    headings: [...log.columns.at].flatMap(([heading, at]) =>
      place.segments.some(({ from, to }) => from <= at && at <= to) ? [heading] : [],
    ),
    fresh: true,
  });
  if (again.length > 0) startOver(again);
}

interface Writing {
  readonly records: readonly SheetRecord[];
  /** Columns that have a heading or content. */
  readonly width: number;
  /** Columns filled by a formula in their heading. */
  readonly computed: ReadonlySet<number>;
}

interface Place {
  /** The first row to write to. */
  readonly row: number;
  /** The blocks, the one with the Id last. */
  readonly segments: readonly Segment[];
  /** An earlier try wrote a part there. */
  readonly retried: boolean;
}

function findPlace(log: Log, writing: Writing): Place {
  const { tab, spec, values, columns } = log;
  const ours = [...columns.at.values()].filter((column) => !writing.computed.has(column));
  const keys = [spec.key, ...(spec.alsoKeys ?? [])].flatMap((heading) => columns.at.get(heading) ?? []);
  const end =
    lastFilled(
      values,
      keys.filter((column) => ours.includes(column)),
    ) + 1;
  const anywhere = lastFilled(values, ours);
  const count = writing.records.length;

  // Around the end of the list: formulas filled in ahead, and notes somebody typed without a date.
  const first = Math.max(2, end - count);
  const last = Math.max(anywhere, end - 1) + count;
  const formulas = tab.readFormulas({ row: first, column: 1, rows: last - first + 1, columns: writing.width });
  const hasFormula = (row: number, column: number) => (formulas[row - first]?.[column - 1] ?? "") !== "";
  let row = end;
  for (let typed = end; typed <= anywhere; typed++) {
    const typedByHand = ours.some((column) => !isBlank(values[typed - 1]?.[column - 1]) && !hasFormula(typed, column));
    if (typedByHand) row = typed + 1;
  }
  const layout = (from: number) => segmentsOf({ log: { ...log, ours }, writing, row: from, hasFormula });
  // Where a formula stands in the way of what is to be written, no earlier try wrote anything.
  const needed = headingsUsed(spec, writing.records).map((heading) => columnAt(columns, heading));
  const planted = (from: number) =>
    writing.records.some((_, offset) => needed.some((column) => hasFormula(from + offset, column)));
  const half = halfWritten(log, writing, { below: row, layout: (from) => (planted(from) ? [] : layout(from)) });
  return half === null ? { row, segments: layout(row), retried: false } : { ...half, retried: true };
}

/** The last row, counted from 1 with the heading, in which one of the columns holds something; at least 1. */
function lastFilled(values: readonly (readonly unknown[])[], columns: readonly number[]): number {
  for (let row = values.length; row > 1; row--) {
    if (columns.some((column) => !isBlank(values[row - 1]?.[column - 1]))) return row;
  }
  return 1;
}

/**
 * The row from which an earlier try wrote the first blocks and then failed: the last block is blank there, and the other
 * cells of ours are exactly what is to be written, or blank. A record that has nothing for the first block may have left
 * its row blank, also at `below` and further down.
 */
function halfWritten(
  { spec, values, columns, book }: Log,
  { records }: Writing,
  { below, layout }: { readonly below: number; readonly layout: (from: number) => readonly Segment[] },
): Pick<Place, "row" | "segments"> | null {
  const idAt = columnAt(columns, spec.key);
  for (let row = Math.max(2, below - records.length); row < below; row++) {
    if (!isBlank(values[row - 1]?.[idAt - 1])) continue;
    const segments = layout(row);
    const [firstBlock] = segments;
    const idBlock = segments[segments.length - 1];
    const ours = [...columns.at].flatMap(([heading, column]) => {
      const block = segments.find(({ from, to }) => from <= column && column <= to);
      return block ? [{ heading, column, block }] : [];
    });
    let filled = 0;
    const matches = records.every((record, offset) => {
      const raw = (column: number) => values[row - 1 + offset]?.[column - 1];
      const there = ours.filter(({ column }) => !isBlank(raw(column)));
      if (there.length === 0) {
        return ours.every(({ heading, block }) => block !== firstBlock || isBlank(record[heading] ?? null));
      }
      filled += there.length;
      return there.every(
        ({ heading, column, block }) =>
          block !== idBlock && sameCell(raw(column), record[heading] ?? null, book.workbook),
      );
    });
    if (matches && filled > 0) return { row, segments };
  }
  return null;
}
