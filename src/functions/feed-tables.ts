/** Tables of feeds, recipes, waters and targets as core reads them: rows by our own headings. */

import { LABEL_TERMS } from "../core/analysis.ts";
import { isoFromDay } from "../core/calendar.ts";
import { type Amounts, SYMBOLS } from "../core/elements.ts";
import { BadInput } from "../core/errors.ts";
import { type Feed, feedOf, type NamedFields, readShelf, readShelfFeed, type ShelfFeed } from "../core/feeds.ts";
import { readLabel } from "../core/label.ts";
import { readTarget, readWater } from "../core/waters.ts";
import type { LabelSource, Table } from "./record.ts";
import { needOneColumn, onlyRow } from "./table.ts";

const FEED_HEADINGS = ["Feed", "Basis", "Origin", "Analysis published", "Density", ...LABEL_TERMS];
const WATER_AMOUNTS = [...SYMBOLS, "NO3-N", "SO4"];
const WATER_HEADINGS = ["Water", "Alkalinity", "EC", "pH", ...WATER_AMOUNTS];
const TARGET_HEADINGS = ["Target", ...SYMBOLS];
const RECIPE_HEADINGS = ["Feed", "Dose", "Unit"];

/** A row under the headings core knows; a date comes as its ISO text, an error cell as its text, so that core names them. */
function fieldsOf(table: Table, row: number, headings: readonly string[]): NamedFields {
  const fields: Record<string, string | number | boolean> = {};
  for (const heading of headings) {
    const cell = table.cell(row, table.column(heading));
    if (cell.kind === "blank") continue;
    if (cell.kind === "day") fields[heading] = isoFromDay(cell.day);
    else if (cell.kind === "error") fields[heading] = "#ERROR!";
    else fields[heading] = cell.value;
  }
  return { fields, where: table.where(row) };
}

function filledRows(table: Table, headings: readonly string[]): NamedFields[] {
  const rows: NamedFields[] = [];
  for (let row = 0; row < table.rowCount; row++) {
    if (!table.isBlank(row)) rows.push(fieldsOf(table, row, headings));
  }
  return rows;
}

/** All feeds of a table; one that may not enter a recipe comes with its reason. */
export function readShelfTable(table: Table): ShelfFeed[] {
  return readShelf(filledRows(table, FEED_HEADINGS));
}

export function recipeRows(table: Table): NamedFields[] {
  return filledRows(table, RECIPE_HEADINGS);
}

/** mg/L in a table of one water; nothing when the table is left out. BadInput for a table that holds no water. */
export function readWaterTable(table: Table | null): Amounts {
  if (table === null) return {};
  needOneColumn(table, WATER_AMOUNTS);
  const { fields, where } = fieldsOf(table, onlyRow(table), WATER_HEADINGS);
  return readWater(fields, where).amounts;
}

/** Wanted mg/L in a table of one target. */
export function readTargetTable(table: Table): Amounts {
  const { fields, where } = fieldsOf(table, onlyRow(table), TARGET_HEADINGS);
  return readTarget(fields, where).wanted;
}

/** Which grade it was can no longer be told from the date, so the sentence says every way to keep the next one. */
function gradeBecameDate(day: number): string {
  return (
    `label is the date ${isoFromDay(day)}: the sheet took a grade such as 10-5-5 for a day. ` +
    "Type it with an apostrophe in front, '10-5-5, or format the cell as plain text first, " +
    'or write it out, "N 10 P2O5 5 K2O 5".'
  );
}

/** The feed behind a label. Throws BadInput for a label that cannot be read and a feed that may not enter a recipe. */
export function feedOfLabel(source: LabelSource, densityGPerMl: number | null): Feed {
  if (source.kind === "cell") {
    if (source.cell.kind === "day") throw new BadInput("grade-became-date", gradeBecameDate(source.cell.day));
    const label = readLabel(source.cell, densityGPerMl);
    if (label === null) throw new Error("The runner answers for a blank label.");
    return feedOf("this feed", label, densityGPerMl);
  }
  const { table, row } = source;
  const { fields, where } = fieldsOf(table, row, FEED_HEADINGS);
  const { feed, reason } = readShelfFeed(
    { ...fields, Feed: fields.Feed ?? where, Density: fields.Density ?? densityGPerMl ?? undefined },
    where,
  );
  if (feed === null) throw new BadInput("feed-not-usable", reason ?? `The feed in ${where} enters no recipe.`);
  return feed;
}
