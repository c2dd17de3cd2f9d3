/** Works out, from a tab before and after a write that was caught in a rearrangement, which cells to put right. */

import type { Log, SheetRecord } from "./append.ts";
import { columnMark } from "./find.ts";
import { overwritten, signatureOf } from "./overwritten.ts";
import type { PlainCell } from "./port.ts";
import type { Landing } from "./settle.ts";
import { cellOf, isBlank, sameCell, sameRaw } from "./stored.ts";

export interface CellToMend {
  readonly row: number;
  readonly column: number;
  readonly value: PlainCell;
}

export interface Repair {
  readonly cells: readonly CellToMend[];
  /** Fresh records that stand nowhere, or where another row has to stand again. */
  readonly again: readonly SheetRecord[];
  /** True when a row to be filled is gone, or somebody else filled it meanwhile. */
  readonly refused: boolean;
}

/** A column before and now. Ours by its heading or mark, somebody else's by its heading. */
interface Track {
  /** Our heading; null for somebody else's. */
  readonly heading: string | null;
  readonly was: number;
  readonly is: number;
}

export interface Scene {
  readonly before: Log;
  readonly now: Log;
  readonly tracks: readonly Track[];
  /** Columns that were not there before, or lay beyond those that were read. */
  readonly unread: readonly number[];
  /** Those of them without a heading: inserted just now. */
  readonly inserted: readonly number[];
  readonly keyWas: number;
  readonly keyIs: number;
  /** True for a value that this request has put into a cell. */
  readonly isOurs: (raw: unknown) => boolean;
  /** The same, and blanks once an earlier round has cleared cells. */
  readonly isStray: (raw: unknown) => boolean;
}

/** What the rounds before this one did. */
export interface Rounds {
  /** The tab as it is now. */
  readonly now: Log;
  /** What was put into cells. */
  readonly put: readonly PlainCell[];
  /** Places, before the write, of rows that were put back; this round adds its own. */
  readonly restored: Set<number>;
}

export function repairOf(before: Log, landing: Landing, { now, put, restored }: Rounds): Repair {
  const { workbook } = now.book;
  const tracks = tracksOf(before, now);
  const key = tracks.find(({ heading }) => heading === before.spec.key);
  const written = [
    ...put,
    ...landing.records.flatMap((record) => landing.headings.map((heading) => record[heading] ?? null)),
  ].filter((cell) => !isBlank(cell));
  const tracked = new Set(tracks.map(({ is }) => is));
  const width = Math.max(0, ...now.values.map((row) => row.length));
  const unread = Array.from({ length: width }, (_, index) => index + 1).filter((at) => !tracked.has(at));
  const blanked = put.some(isBlank);
  const isOurs = (raw: unknown) => !isBlank(raw) && written.some((cell) => sameCell(raw, cell, workbook));
  const scene: Scene = {
    before,
    now,
    tracks,
    unread,
    inserted: unread.filter((at) => isBlank(now.values[0]?.[at - 1])),
    keyWas: key?.was ?? 0,
    keyIs: key?.is ?? 0,
    isOurs,
    isStray: (raw) => isOurs(raw) || (blanked && isBlank(raw)),
  };
  const places = landing.records.map((record) => placeOf(scene, record, landing));
  // One put back in an earlier round may stand beside its columns by now: then it is not gone.
  const isBack = (was: number) => restored.has(was) && placeOfRow(scene, was) !== null;
  const over = landing.fresh ? overwritten(scene, places).filter((was) => !isBack(was)) : [];
  const cells: CellToMend[] = [];
  const again: SheetRecord[] = [];
  const ourRows = new Set<number>();
  let used = 0;
  let refused = false;
  [...landing.records.entries()]
    .sort(([a], [b]) => (places[a] ?? 0) - (places[b] ?? 0))
    .forEach(([index, record]) => {
      const place = places[index] ?? null;
      if (place === null) {
        if (landing.fresh) again.push(record);
        else refused = true;
        return;
      }
      ourRows.add(place);
      const other = over[used];
      if (other !== undefined) {
        used++;
        restored.add(other);
        again.push(record);
        cells.push(...restoreRow(scene, place, other));
        return;
      }
      const was = (landing.rows[index] ?? 0) - 1;
      if (!landing.fresh && isTaken(scene, place, { record, was, landing })) refused = true;
      else cells.push(...mendRow(scene, place, { record, was, landing }));
    });
  for (const was of restored) {
    if (over.includes(was)) continue;
    const place = placeOfRow(scene, was);
    if (place === null || ourRows.has(place)) continue;
    ourRows.add(place);
    cells.push(...restoreRow(scene, place, was));
  }
  cells.push(...mendOthers(scene, ourRows));
  return { cells, again, refused };
}

function tracksOf(before: Log, now: Log): Track[] {
  const mine = [...before.columns.at].flatMap(([heading, was]): Track[] => {
    const text = columnMark(before.spec.name, heading);
    const marked = now.book.marks.find((mark) => mark.tabId === now.tab.id && mark.text === text)?.column;
    const is = now.columns.at.get(heading) ?? marked ?? was;
    return [{ heading, was, is }];
  });
  const taken = new Set(mine.map(({ is }) => is));
  const ours = new Set(before.columns.at.values());
  const headingsNow = now.values[0] ?? [];
  const theirs = (before.values[0] ?? []).flatMap((text, index): Track[] => {
    if (isBlank(text) || ours.has(index + 1)) return [];
    const found = headingsNow.flatMap((each, at) => (each === text && !taken.has(at + 1) ? [at + 1] : []));
    return found.length === 1 && found[0] !== undefined ? [{ heading: null, was: index + 1, is: found[0] }] : [];
  });
  return [...mine, ...theirs];
}

/** Place in the values of the row that bears the key; for a fresh row also where all that was written stands. */
function placeOf({ now, keyIs }: Scene, record: SheetRecord, { fresh, headings }: Landing): number | null {
  const key = record[now.spec.key] ?? null;
  const { workbook } = now.book;
  const named = now.values.findIndex((row, at) => at > 0 && sameCell(row[keyIs - 1], key, workbook));
  if (named !== -1) return named;
  if (!fresh) return null;
  const cells = headings.map((heading) => record[heading] ?? null).filter((cell) => !isBlank(cell));
  const stray = now.values.findIndex(
    (row, at) => at > 0 && cells.every((cell) => row.some((raw) => sameCell(raw, cell, workbook))),
  );
  return stray === -1 ? null : stray;
}

/** Puts back into our columns what stood in that row before. */
function restoreRow({ before, now, tracks, unread, isOurs, isStray }: Scene, place: number, was: number): CellToMend[] {
  const at = (column: number) => now.values[place]?.[column - 1];
  const mended = tracks.flatMap((track): CellToMend[] => {
    const raw = before.values[was]?.[track.was - 1];
    if (sameRaw(at(track.is), raw) || (track.heading === null && !isStray(at(track.is)))) return [];
    return [{ row: place + 1, column: track.is, value: cellOf(raw, now.book.workbook) }];
  });
  const stray = unread.filter((column) => isOurs(at(column)));
  return [...mended, ...stray.map((column) => ({ row: place + 1, column, value: null }))];
}

/**
 * Where a row that was put back is now: by its key, or as it was, or where all that it held stands. A row typed by hand
 * may be one word, which other rows hold besides more: those that stood there before are none of it.
 */
function placeOfRow(scene: Scene, was: number): number | null {
  const { before, now, tracks, keyWas, keyIs } = scene;
  const key = before.values[was]?.[keyWas - 1];
  const named = now.values.findIndex((row, at) => at > 0 && !isBlank(key) && sameRaw(row[keyIs - 1], key));
  if (named !== -1) return named;
  const signature = { was: signatureOf(scene, "was"), is: signatureOf(scene, "is") };
  const whole = now.values.findIndex((_, at) => at > 0 && signature.is(at) === signature.was(was));
  if (whole !== -1) return whole;
  const unchanged = new Set(before.values.map((_, at) => signature.was(at)));
  const keys = new Set(before.values.map((row) => row[keyWas - 1]).filter((one) => !isBlank(one)));
  const held = tracks.flatMap(({ heading, was: column }) => {
    const raw = heading === null ? null : before.values[was]?.[column - 1];
    return isBlank(raw) ? [] : [raw];
  });
  const place = now.values.findIndex(
    (row, at) =>
      at > 0 &&
      !keys.has(row[keyIs - 1]) &&
      !unchanged.has(signature.is(at)) &&
      held.every((raw) => row.some((cell) => sameRaw(cell, raw))),
  );
  return place === -1 ? null : place;
}

interface Row {
  readonly record: SheetRecord;
  /** Its place before. */
  readonly was: number;
  readonly landing: Landing;
}

/** Whether a cell to be filled holds by now what neither stood there before nor came from here. */
function isTaken({ before, now, tracks, isOurs }: Scene, place: number, { was, landing }: Row): boolean {
  return tracks.some(({ heading, was: from, is }) => {
    const raw = now.values[place]?.[is - 1];
    if (heading === null || !landing.headings.includes(heading) || isBlank(raw) || isOurs(raw)) return false;
    return !sameRaw(raw, before.values[was]?.[from - 1]);
  });
}

function mendRow(
  { before, now, tracks, unread, isOurs, isStray }: Scene,
  place: number,
  { record, was, landing }: Row,
): CellToMend[] {
  const { workbook } = now.book;
  const at = (column: number) => now.values[place]?.[column - 1];
  const mended = tracks.flatMap((track): CellToMend[] => {
    const { heading, is } = track;
    const wanted = heading !== null && landing.headings.includes(heading) ? (record[heading] ?? null) : undefined;
    const value = wanted ?? cellOf(before.values[was]?.[track.was - 1], workbook);
    if (sameCell(at(is), value, workbook)) return [];
    // Somebody else's cell, or one that nothing was written to, is only cleared of what strayed into it.
    if (isBlank(wanted) && !isStray(at(is))) return [];
    return [{ row: place + 1, column: is, value }];
  });
  const stray = unread.filter((column) => isOurs(at(column)));
  return [...mended, ...stray.map((column) => ({ row: place + 1, column, value: null }))];
}

/** In all other rows, gives cells back what they held where a value of ours strayed into them. */
function mendOthers(scene: Scene, ourRows: ReadonlySet<number>): CellToMend[] {
  const { before, now, tracks, inserted, keyWas, keyIs, isOurs, isStray } = scene;
  const wasAt = new Map<unknown, number>();
  before.values.forEach((row, at) => {
    const key = row[keyWas - 1];
    if (at > 0 && !isBlank(key)) wasAt.set(key, wasAt.has(key) ? 0 : at);
  });
  const cells: CellToMend[] = [];
  const signature = { was: signatureOf(scene, "was"), is: signatureOf(scene, "is") };
  const unchanged = new Set(before.values.map((_, at) => signature.was(at)));
  const standing = new Set(now.values.map((_, place) => signature.is(place)));
  const theirs = [...tracks.flatMap((track) => (track.heading === null ? [track.is] : [])), ...inserted];
  now.values.forEach((row, place) => {
    if (place === 0 || ourRows.has(place) || !row.some(isStray)) return;
    if (unchanged.has(signature.is(place)) && !theirs.some((column) => isStray(row[column - 1]))) return;
    const strays = tracks.filter(({ is }) => isStray(row[is - 1]));
    const differs = (was: number) =>
      tracks.filter((track) => !sameRaw(row[track.is - 1], before.values[was]?.[track.was - 1]));
    const named = wasAt.get(row[keyIs - 1]);
    const rest = tracks.filter((track) => !strays.includes(track));
    if (rest.every(({ is }) => isBlank(row[is - 1])) && isBlank(row[keyIs - 1])) {
      // A blank row that somebody inserted just there.
      for (const { is } of strays) {
        if (!isBlank(row[is - 1])) cells.push({ row: place + 1, column: is, value: null });
      }
      return;
    }
    // A row typed by hand has no key: it is the one that is the same but for what strayed into it.
    const was =
      named ??
      before.values.findIndex(
        (_, at) => at > 0 && !standing.has(signature.was(at)) && differs(at).every((each) => strays.includes(each)),
      );
    if (was <= 0) return;
    for (const track of differs(was)) {
      if (!strays.includes(track)) continue;
      const value = cellOf(before.values[was]?.[track.was - 1], now.book.workbook);
      cells.push({ row: place + 1, column: track.is, value });
    }
    for (const column of inserted) if (isOurs(row[column - 1])) cells.push({ row: place + 1, column, value: null });
  });
  return cells;
}
