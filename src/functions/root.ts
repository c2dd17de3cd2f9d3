/** Custom functions on roots left alone: the last disturbance, the days since, the board of all plants. */

import { nameKey } from "../core/cell.ts";
import { rootBoard } from "../core/roots.ts";
import { badRow } from "./answers.ts";
import type { Answer, Argument, FunctionRecord } from "./record.ts";
import { readEvents, readRootLog } from "./root-log.ts";

const LOG_COLUMNS = ["Date", "Plant", "Event"];
const EVENT_COLUMNS = ["Event", "Disturbs roots"];

const plants: Argument = {
  name: "plants",
  kind: "key",
  help: "Names of plants, one cell or a range of one column; case and spaces around them do not matter.",
};
const log: Argument = {
  name: "log",
  kind: "table",
  columns: LOG_COLUMNS,
  help: "The care log with its heading row; it needs the columns Date, Plant and Event, in any order.",
};
const asOf: Argument = {
  name: "asOf",
  kind: "day",
  help: "The day to count to: a cell with a date, such as the one for today on the Settings tab. Later rows of the log do not count yet.",
};
const heading: Argument = {
  name: "heading",
  kind: "heading",
  optional: true,
  help: "Optional. A heading such as Days at rest: then the first cell of plants is taken as that range's own heading and the result begins with this text, so the formula can stand in the heading row and survive every sort.",
};
const events: Argument = {
  name: "events",
  kind: "table",
  columns: EVENT_COLUMNS,
  optional: true,
  help: "Optional. A table with the columns Event and Disturbs roots (yes or no) that goes before the built-in list.",
};

export const ROOT_RECORDS: readonly FunctionRecord[] = [
  {
    name: "ROOT_LAST",
    group: "ROOT",
    summary: "Finds the day on which each plant's roots were last disturbed.",
    args: [plants, log, heading, events],
    result: "A date for each plant; nothing where no disturbance is on record.",
    formulas: [
      "=ROOT_LAST(\"desk pothos\", 'Care log'!A1:C5)",
      "=ROOT_LAST(A1:A4, 'Care log'!A1:C5, \"Last disturbed\")",
    ],
    compute: {
      kind: "rows",
      prepare: (fixed) => {
        const known = readRootLog(fixed.table("log"), readEvents(fixed.optionalTable("events")));
        return (row) => {
          const last = known.last(row.text("plants"), null);
          return last === null ? null : { day: last.day };
        };
      },
    },
  },
  {
    name: "ROOT_REST",
    group: "ROOT",
    summary: "Counts the whole days for which each plant's roots have been left alone.",
    args: [plants, log, asOf, heading, events],
    result: "Calendar days from the last disturbance to asOf for each plant; nothing where none is on record.",
    formulas: [
      "=ROOT_REST(\"Window fern\", 'Care log'!A1:C5, DATE(2026,3,31))",
      "=ROOT_REST(A1:A4, 'Care log'!A1:C5, Settings!B2, \"Days at rest\")",
    ],
    compute: {
      kind: "rows",
      prepare: (fixed) => {
        const known = readRootLog(fixed.table("log"), readEvents(fixed.optionalTable("events")));
        return (row) => {
          const day = row.day("asOf");
          const last = known.last(row.text("plants"), day);
          return last === null ? null : day - last.day;
        };
      },
    },
  },
  {
    name: "ROOT_BOARD",
    group: "ROOT",
    summary: "Lists the plants by how long their roots have been left alone, longest rest first.",
    args: [plants, log, asOf, events],
    result: "A table Plant, Days at rest, Last event, Date; plants never disturbed come last, each name once.",
    formulas: [
      "=ROOT_BOARD(A2:A4, 'Care log'!A1:C5, Settings!B2)",
      "=ROOT_BOARD(A2:A3, 'Care log'!A1:C5, DATE(2026,3,31), Events!A1:B2)",
    ],
    compute: {
      kind: "whole",
      answer: (fixed, row) => {
        const known = readRootLog(fixed.table("log"), readEvents(fixed.optionalTable("events")));
        const keys = fixed.keys("plants");
        const names = keys.flatMap((key) => (key.name === null ? [] : [key.name]));
        const board: (readonly Answer[])[] = [["Plant", "Days at rest", "Last event", "Date"]];
        const unreadable: (readonly Answer[])[] = [];
        for (const { plant, restDays, event, day } of rootBoard(names, known.index, row.day("asOf"))) {
          const why = known.unreadable.get(nameKey(plant));
          if (why !== undefined) unreadable.push([plant, badRow(why)]);
          else board.push([plant, restDays, event, day === null ? null : { day }]);
        }
        for (const key of keys) if (key.name === null) unreadable.push([badRow(key.reason)]);
        return [...board, ...unreadable];
      },
    },
  },
];
