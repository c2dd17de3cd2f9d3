/** References in A1 notation, to rows and columns counted from 1 and back. */

import type { Area } from "./grid.ts";

export function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

export function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
}

export function a1Of(area: Area): string {
  const first = `${columnLetters(area.column)}${area.row}`;
  if (area.rows === 1 && area.columns === 1) return first;
  return `${first}:${columnLetters(area.column + area.columns - 1)}${area.row + area.rows - 1}`;
}

/** "A1", "A1:B3", "A2:A" (to the bottom of the grid), "A:C", "2:3"; null when it is none of these. */
export function areaOf(a1: string, size: { rows: number; columns: number }): Area | null {
  const match = /^\$?([A-Z]{1,3})?\$?(\d+)?(?::\$?([A-Z]{1,3})?\$?(\d+)?)?$/i.exec(a1.trim());
  if (!match || (match[1] === undefined && match[2] === undefined)) return null;
  const single = !a1.includes(":");
  if (single && (match[1] === undefined || match[2] === undefined)) return null;
  if (!single && match[3] === undefined && match[4] === undefined) return null;
  const left = match[1] === undefined ? 1 : columnNumber(match[1]);
  const top = match[2] === undefined ? 1 : Number(match[2]);
  const right = single ? left : match[3] === undefined ? size.columns : columnNumber(match[3]);
  const bottom = single ? top : match[4] === undefined ? size.rows : Number(match[4]);
  return {
    row: Math.min(top, bottom),
    column: Math.min(left, right),
    rows: Math.abs(bottom - top) + 1,
    columns: Math.abs(right - left) + 1,
  };
}

export function quoted(tab: string): string {
  return /^[A-Za-z_]\w*$/.test(tab) ? tab : `'${tab.replace(/'/g, "''")}'`;
}

/** Splits "'Care log'!A2:A" into its tab and the rest; the tab is null where none is named. */
export function splitReference(reference: string): { tab: string | null; a1: string } {
  const match = /^(?:'((?:[^']|'')+)'|([^!']+))!(.+)$/.exec(reference.trim());
  if (!match) return { tab: null, a1: reference.trim() };
  return { tab: (match[1] ?? match[2] ?? "").replace(/''/g, "'"), a1: match[3] ?? "" };
}

export function overlaps(one: Area, other: Area): boolean {
  return (
    one.row < other.row + other.rows &&
    other.row < one.row + one.rows &&
    one.column < other.column + other.columns &&
    other.column < one.column + one.columns
  );
}

/** An area after columns were inserted: pushed to the right, or wider when they lie inside. */
export function widened(area: Area, before: number, count: number): Area {
  if (before <= area.column) return { ...area, column: area.column + count };
  return before < area.column + area.columns ? { ...area, columns: area.columns + count } : area;
}
