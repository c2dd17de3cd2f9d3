/** Moves old rows of the Care log to a tab of their own: copied first, compared, and only then taken out of the log. */

import { isoFromDay } from "../core/calendar.ts";
import { BadInput } from "../core/errors.ts";
import { appendTo, type Log, openLog, placesById } from "./append.ts";
import { type ArchivePlan, planArchive } from "./archive-plan.ts";
import { columnAt, columnLetters, findColumns, findTab, noTab, openBook } from "./find.ts";
import { CARE_LOG } from "./log-tabs.ts";
import { findMade, isMadeMark, madeMark, quotedTab } from "./made-tabs.ts";
import type { TabPort, WorkbookPort } from "./port.ts";
import { refuseNewer } from "./schema.ts";
import { cellOf, isBlank, sameCell, sameRaw } from "./stored.ts";

export const ARCHIVE = "Care log archive";
/** More stretches than this take too long to take out; sorted by date, the old rows are one stretch. */
const MOST_STRETCHES = 60;
/** Rows of one write. */
const CHUNK = 5_000;

interface Stretch {
  readonly from: number;
  readonly count: number;
}

function stretchesOf(places: readonly number[]): Stretch[] {
  const stretches: { from: number; count: number }[] = [];
  for (const place of places) {
    const last = stretches[stretches.length - 1];
    if (last && last.from + last.count === place) last.count++;
    else stretches.push({ from: place, count: 1 });
  }
  return stretches;
}

function openCare(workbook: WorkbookPort): { log: Log; plan: ArchivePlan } {
  const book = openBook(workbook, [CARE_LOG.name], isMadeMark);
  const tab = findTab(book, CARE_LOG);
  if (!tab) throw noTab(CARE_LOG);
  refuseNewer(book, tab, CARE_LOG.name);
  // Everything, for rows are taken out whole: other people's columns move along.
  const values = tab.readAll();
  const log = { book, spec: CARE_LOG, tab, values, columns: findColumns(book, CARE_LOG, tab, values[0] ?? []) };
  for (const heading of ["Id", "Date", "Plant", "Event"]) columnAt(log.columns, heading);
  return { log, plan: planArchive(log, workbook.today()) };
}

/** What would be done, to be agreed to; null when there is nothing old enough. Reads only. */
export function archiveWords(workbook: WorkbookPort): string | null {
  const { log, plan } = openCare(workbook);
  const { places, rows, before, withoutId, more } = plan;
  const byHand = withoutId === 0 ? "" : ` ${withoutId} old rows without an Id were typed by hand and stay.`;
  if (places.length === 0) return null;
  const width = columnLetters(log.values[0]?.length ?? 1);
  return [
    `${places.length} of ${rows} rows of “${log.tab.name}” are of before ${isoFromDay(before)} and would move to “${ARCHIVE}”.${more ? " More are left for the next time." : ""}${byHand}`,
    "The newest row of each plant and event stays, so days at rest and days due do not change. What the panel and formulas count over earlier years no longer finds the moved rows.",
    `A formula that should go on counting them takes both tabs: {${quotedTab(log.tab.name)}!A1:${width}; ${quotedTab(ARCHIVE)}!A2:${width}}.`,
    "Let nobody sort or insert meanwhile. Go on?",
  ].join("\n\n");
}

/** Safe to run again after any failure: what is in the archive already is compared, not written twice. */
export function archiveCare(workbook: WorkbookPort): string {
  return workbook.locked(() => {
    const { log, plan } = openCare(workbook);
    if (plan.places.length === 0) return NOTHING_OLD;
    const stretches = stretchesOf(plan.places);
    if (stretches.length > MOST_STRETCHES) {
      throw new BadInput(
        "unsorted",
        `The old rows of “${log.tab.name}” lie in ${stretches.length} places. Sort the tab by Date first, then try again; nothing was written.`,
      );
    }
    const idAt = columnAt(log.columns, "Id");
    const moved = new Map(plan.places.map((place) => [log.values[place]?.[idAt - 1], log.values[place] ?? []]));
    const byId = placesById(log);
    if ([...moved.keys()].some((id) => (byId.get(id)?.length ?? 0) > 1)) {
      throw new BadInput(
        "id-twice",
        `Some old rows of “${log.tab.name}” bear the same Id. Clear the Id of the copies, then try again; nothing was written.`,
      );
    }
    const archive = openArchive(log);
    copyRows(archive, log, moved);
    compare(archive, log, moved);
    for (const stretch of [...stretches].reverse()) takeOut(log, stretch, idAt);
    return afterwards(log, plan, new Set(moved.keys()));
  });
}

export const NOTHING_OLD = "No row of the Care log is old enough to be moved: this year and the last one stay.";

interface Archive {
  readonly tab: TabPort;
  readonly values: readonly (readonly unknown[])[];
  /** Its column for each column of the log, from 1. */
  readonly columnFor: readonly number[];
}

function openArchive({ book, values, tab: log }: Log): Archive {
  const headings = (values[0] ?? []).map((heading, index) =>
    isBlank(heading) ? `Column ${columnLetters(index + 1)}` : String(heading),
  );
  const found = findMade(book, ARCHIVE);
  const tab = found?.tab ?? book.workbook.addTab(ARCHIVE);
  const there = found ? tab.readAll() : [];
  const row = [...(there[0] ?? [])].map(String);
  const columnFor = headings.map((heading) => {
    const at = row.indexOf(heading);
    if (row.indexOf(heading, at + 1) !== -1) {
      throw new BadInput(
        "archive-headings",
        `“${tab.name}” has the heading “${heading}” twice. Rename the one that does not come from “${log.name}”, then try again; nothing was moved.`,
      );
    }
    return at === -1 ? row.push(heading) : at + 1;
  });
  if (row.length > (there[0]?.length ?? 0)) tab.write(1, 1, [row]);
  if (!found?.marked) book.workbook.setup(tab).mark(null, madeMark(ARCHIVE));
  return { tab, values: there, columnFor };
}

const idsOf = ({ values, columnFor }: Archive, idAt: number): Map<unknown, number> => {
  const at = (columnFor[idAt - 1] ?? 0) - 1;
  return new Map(values.flatMap((row, place) => (place > 0 && !isBlank(row[at]) ? [[row[at], place] as const] : [])));
};

function copyRows(archive: Archive, log: Log, moved: ReadonlyMap<unknown, readonly unknown[]>): void {
  const { workbook } = log.book;
  const there = idsOf(archive, columnAt(log.columns, "Id"));
  const fresh = [...moved].filter(([id]) => !there.has(id)).map(([, row]) => row);
  const width = Math.max(...archive.columnFor);
  const rows = fresh.map((row) => {
    const cells = Array.from({ length: width }, (): ReturnType<typeof cellOf> => null);
    archive.columnFor.forEach((column, index) => {
      cells[column - 1] = cellOf(row[index], workbook);
    });
    return cells;
  });
  const next = Math.max(2, archive.values.length + 1);
  for (let from = 0; from < rows.length; from += CHUNK)
    archive.tab.write(next + from, 1, rows.slice(from, from + CHUNK));
}

/** Throws BadInput, with the log untouched, unless the archive holds every one of the rows, once and cell for cell. */
function compare(archive: Archive, log: Log, moved: ReadonlyMap<unknown, readonly unknown[]>): void {
  const values = archive.tab.readAll();
  const there = idsOf({ ...archive, values }, columnAt(log.columns, "Id"));
  const { workbook } = log.book;
  const wrong = [...moved].filter(([id, row]) => {
    const copy = values[there.get(id) ?? 0] ?? [];
    return !archive.columnFor.every((column, index) => {
      const cell = cellOf(row[index], workbook);
      return cell === null || sameCell(copy[column - 1], cell, workbook);
    });
  });
  if (wrong.length === 0) return;
  throw new BadInput(
    "archive-differs",
    `${wrong.length} rows in “${archive.tab.name}” are not what the log holds, so none was taken out of “${log.tab.name}”. Compare them there, delete the wrong copies and try again.`,
  );
}

function takeOut({ tab, values }: Log, { from, count }: Stretch, idAt: number): void {
  const ids = tab.readBlock({ row: from + 1, column: idAt, rows: count, columns: 1 });
  for (let index = 0; index < count; index++) {
    if (sameRaw(ids[index]?.[0], values[from + index]?.[idAt - 1])) continue;
    throw new BadInput(
      "moved",
      `“${tab.name}” was being rearranged, so no more rows were taken out of it. All of them are safe in “${ARCHIVE}”. Try again when nobody is at the tab: what is copied already is not copied twice.`,
    );
  }
  tab.removeRows(from + 1, count);
}

/** Counts what is left, and brings back what somebody's sorting in between made go by mistake. */
function afterwards(log: Log, { rows }: ArchivePlan, moved: ReadonlySet<unknown>): string {
  const now = openLog(openBook(log.book.workbook, [CARE_LOG.name]), CARE_LOG);
  const ids = (of: Log) => of.values.slice(1).map((row) => row[columnAt(of.columns, "Id") - 1]);
  const left = new Set(ids(now));
  const lost = log.values.filter((row, place) => {
    const id = row[columnAt(log.columns, "Id") - 1];
    return place > 0 && !isBlank(id) && !moved.has(id) && !left.has(id);
  });
  appendTo(
    now,
    lost.map((row) =>
      Object.fromEntries([...log.columns.at].map(([heading, at]) => [heading, cellOf(row[at - 1], log.book.workbook)])),
    ),
  );
  const back = lost.length === 0 ? "" : ` ${lost.length} rows that had got in between were put back at the end.`;
  return `Moved ${moved.size} rows to “${ARCHIVE}”; ${rows - moved.size} of ${rows} are left in “${log.tab.name}”.${back}`;
}
