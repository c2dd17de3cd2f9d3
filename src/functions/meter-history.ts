/** The custom function that lays readings out over time, to be looked at and to be drawn. */

import { nameKey } from "../core/cell.ts";
import { checkRange, USUAL_PH } from "../core/check-every.ts";
import { isBadInput } from "../core/errors.ts";
import { readYesNo } from "../core/reading.ts";
import { type HistoryBatch, readingHistory } from "../core/reading-history.ts";
import { logCells } from "./log-cells.ts";
import type { Answer, FunctionRecord, Table } from "./record.ts";
import { voidRowsOf } from "./void-rows.ts";

export const HISTORY_HEADINGS = [
  "Date",
  "EC",
  "EC expected",
  "EC low",
  "EC high",
  "pH",
  "pH low",
  "pH high",
  "Calibrated",
  "New lot",
] as const;

const EC_WORDS = { unit: "mS/cm", min: 0, max: 100 } as const;
const PH_BOUNDS = { min: 0, max: 14 } as const;

interface Read {
  readonly batches: readonly HistoryBatch[];
  /** Sentences on rows that could not be read. */
  readonly problems: readonly string[];
}

/** What `read` gives; where it throws BadInput its sentence is kept, and null comes back. */
function orTold<T>(problems: string[], read: () => T): T | null {
  try {
    return read();
  } catch (error) {
    if (!isBadInput(error)) throw error;
    problems.push(error.message);
    return null;
  }
}

/** Rows that still count, one call each; a row that cannot be read is told and passed over. */
function eachRow<T>(table: Table, problems: string[], read: (row: number) => T | null): T[] {
  const gone = voidRowsOf(table);
  const found: T[] = [];
  for (let row = 0; row < table.rowCount; row++) {
    if (gone.has(row) || table.isBlank(row)) continue;
    const one = orTold(problems, () => read(row));
    if (one !== null) found.push(one);
  }
  return found;
}

function readBatches(table: Table): Read {
  const cells = logCells(table);
  const problems: string[] = [];
  const batches = eachRow(table, problems, (row): HistoryBatch | null => {
    if (nameKey(cells.text(row, "State") ?? "") === "planned") return null;
    const [ecMsCm, expectedMsCm, pH] = [
      cells.number(row, "Measured EC", EC_WORDS),
      cells.number(row, "Predicted EC", EC_WORDS),
      cells.number(row, "Measured pH", PH_BOUNDS),
    ];
    // A row that only takes another back, or that was never measured nor worked out, has nothing to draw.
    if (ecMsCm === null && expectedMsCm === null && pH === null) return null;
    return { day: cells.day(row), ecMsCm, expectedMsCm, pH };
  });
  return { batches, problems };
}

function calibrationDays(table: Table | null, problems: string[]): number[] {
  if (table === null) return [];
  const cells = logCells(table);
  return eachRow(table, problems, (row) => {
    const what = (heading: string) => `${heading} in ${table.where(row)}`;
    const set = readYesNo(table.cell(row, table.column("Calibrated")), what("Calibrated"));
    return set === true ? cells.day(row) : null;
  });
}

/** Days on which a feed came in another lot than before. */
function lotDays(table: Table | null, problems: string[]): number[] {
  if (table === null) return [];
  const cells = logCells(table);
  const bought = eachRow(table, problems, (row) => {
    const [feed, lot] = [cells.text(row, "Feed"), cells.text(row, "Lot")];
    return feed === null || lot === null ? null : { day: cells.day(row), feed: nameKey(feed), lot: nameKey(lot) };
  }).sort((a, b) => a.day - b.day);
  const open = new Map<string, string>();
  return bought.flatMap(({ day, feed, lot }) => {
    const before = open.get(feed);
    open.set(feed, lot);
    return before === lot ? [] : [day];
  });
}

export const METER_HISTORY_RECORDS = [
  {
    name: "METER_HISTORY",
    group: "METER",
    args: [
      { name: "batches", kind: "table", columns: ["Date", "Measured EC", "Measured pH"] },
      { name: "low", kind: "number", ...PH_BOUNDS, optional: true },
      { name: "high", kind: "number", ...PH_BOUNDS, optional: true },
      { name: "meters", kind: "table", columns: ["Date", "Calibrated"], optional: true },
      { name: "purchases", kind: "table", columns: ["Date", "Feed", "Lot"], optional: true },
    ],
    compute: {
      kind: "whole",
      answer: (fixed, row) => {
        const range = {
          low: row.optionalNumber("low") ?? USUAL_PH.low,
          high: row.optionalNumber("high") ?? USUAL_PH.high,
        };
        checkRange(range);
        const { batches, problems } = readBatches(fixed.table("batches"));
        const told = { meters: [] as string[], purchases: [] as string[] };
        const rows = readingHistory({
          ...range,
          batches,
          calibrations: calibrationDays(fixed.optionalTable("meters"), told.meters),
          lots: lotDays(fixed.optionalTable("purchases"), told.purchases),
        });
        // What is wrong beside the batches stands in the newest row, so that the table has no more rows than the log.
        const beside = (place: number, mark: number | null, [first]: readonly string[]): Answer =>
          first !== undefined && place === rows.length - 1 ? `? ${first}` : mark;
        const drawn = rows.map((one, place): Answer[] => [
          { day: one.day },
          one.ecMsCm,
          one.expectedMsCm,
          one.ecLowMsCm,
          one.ecHighMsCm,
          one.pH,
          one.low,
          one.high,
          beside(place, one.calibrated, told.meters),
          beside(place, one.newLot, told.purchases),
        ]);
        const blank = HISTORY_HEADINGS.slice(1).map(() => null);
        return [HISTORY_HEADINGS, ...drawn, ...problems.map((sentence) => [`? ${sentence}`, ...blank])];
      },
    },
  },
] as const satisfies readonly FunctionRecord[];
