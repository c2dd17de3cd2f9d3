/** What is said about the custom functions on roots left alone, with examples that tests try; printed, never shipped with a call. */

import type { ROOT_RECORDS } from "./root.ts";
import type { ExampleValue, WordsOf } from "./words.ts";

const EXAMPLE_LOG: ExampleValue = [
  ["Date", "Plant", "Event"],
  [{ day: "2026-01-18" }, "Window fern", "Repot"],
  [{ day: "2026-02-28" }, "Desk pothos", "Root trim"],
  [{ day: "2026-03-02" }, "Window fern", "Decay removed"],
  [{ day: "2026-03-29" }, "Desk pothos", "Top up"],
];
const BY_CALENDAR = "Counted on a calendar; the plants are made up.";
const PRACTICE =
  "Which events disturb roots: common practice, no source. Decayed hairs taken off by hand do not; a repot, a root trim and a rinse out of the pot do";

const PLANTS_HELP = "Names of plants, one cell or a range of one column; case and spaces around them do not matter.";
const LOG_HELP = "The care log with its heading row; it needs the columns Date, Plant and Event, in any order.";
const HEADING_HELP =
  "Optional. A heading such as Days at rest: then the first cell of plants is taken as that range's own heading and the result begins with this text, so the formula can stand in the heading row and survive every sort.";
const EVENTS_HELP =
  "Optional. A table with the columns Event and Disturbs roots (yes or no) that goes before the built-in list.";
const ASOF_HELP =
  "The day to count to: a cell with a date, such as the one for today on the Settings tab. Later rows of the log do not count yet.";

export const ROOT_WORDS: WordsOf<typeof ROOT_RECORDS> = {
  ROOT_LAST: {
    summary: "Finds the day on which each plant's roots were last disturbed.",
    args: { plants: PLANTS_HELP, log: LOG_HELP, heading: HEADING_HELP, events: EVENTS_HELP },
    result: "A date for each plant; nothing where no disturbance is on record.",
    examples: [
      {
        formula: "=ROOT_LAST(\"desk pothos\", 'Care log'!A1:C5)",
        args: ["desk pothos", EXAMPLE_LOG],
        gives: { day: "2026-02-28" },
        source: BY_CALENDAR,
      },
      {
        formula: "=ROOT_LAST(A1:A4, 'Care log'!A1:C5, \"Last disturbed\")",
        args: [[["Plant"], ["Window fern"], ["Desk pothos"], ["New cutting"]], EXAMPLE_LOG, "Last disturbed"],
        gives: [["Last disturbed"], [{ day: "2026-01-18" }], [{ day: "2026-02-28" }], [""]],
        source: BY_CALENDAR,
      },
    ],
    sources: [PRACTICE],
    seeAlso: ["ROOT_REST", "ROOT_BOARD"],
  },
  ROOT_REST: {
    summary: "Counts the whole days for which each plant's roots have been left alone.",
    args: { plants: PLANTS_HELP, log: LOG_HELP, asOf: ASOF_HELP, heading: HEADING_HELP, events: EVENTS_HELP },
    result: "Calendar days from the last disturbance to asOf for each plant; nothing where none is on record.",
    examples: [
      {
        formula: "=ROOT_REST(\"Window fern\", 'Care log'!A1:C5, DATE(2026,3,31))",
        args: ["Window fern", EXAMPLE_LOG, { day: "2026-03-31" }],
        gives: 72,
        source: "Counted on a calendar: 13 days left in January, 28 in February, 31 in March.",
      },
      {
        formula: "=ROOT_REST(A1:A4, 'Care log'!A1:C5, Settings!B2, \"Days at rest\")",
        args: [
          [["Plant"], ["Window fern"], ["Desk pothos"], ["New cutting"]],
          EXAMPLE_LOG,
          { day: "2026-03-31" },
          "Days at rest",
        ],
        gives: [["Days at rest"], [72], [31], [""]],
        source: "Counted on a calendar: the 31 days of March for the second plant, summer time or not.",
      },
    ],
    sources: [PRACTICE],
    seeAlso: ["ROOT_LAST", "ROOT_BOARD"],
  },
  ROOT_BOARD: {
    summary: "Lists the plants by how long their roots have been left alone, longest rest first.",
    args: {
      plants: PLANTS_HELP,
      log: LOG_HELP,
      asOf: ASOF_HELP,
      events: EVENTS_HELP,
      rules:
        "Optional. A table with the columns Setting and Value, such as the Settings tab: then a fifth column says in words which plants to leave alone, by its Rest days (180 where that row is missing) and, if both are given, Rest days in season and Season months.",
    },
    result:
      "A table Plant, Days at rest, Last event, Date, and with rules also Roots; plants never disturbed come last, each name once.",
    examples: [
      {
        formula: "=ROOT_BOARD(A2:A4, 'Care log'!A1:C5, Settings!B2)",
        args: [[["New cutting"], ["Desk pothos"], ["Window fern"]], EXAMPLE_LOG, { day: "2026-03-31" }],
        gives: [
          ["Plant", "Days at rest", "Last event", "Date"],
          ["Window fern", 72, "Repot", { day: "2026-01-18" }],
          ["Desk pothos", 31, "Root trim", { day: "2026-02-28" }],
          ["New cutting", "", "", ""],
        ],
        source: BY_CALENDAR,
      },
      {
        formula: "=ROOT_BOARD(A2:A3, 'Care log'!A1:C5, DATE(2026,3,31), Events!A1:B2)",
        args: [
          [["Desk pothos"], ["Window fern"]],
          EXAMPLE_LOG,
          { day: "2026-03-31" },
          [
            ["Event", "Disturbs roots"],
            ["Decay removed", "yes"],
          ],
        ],
        gives: [
          ["Plant", "Days at rest", "Last event", "Date"],
          ["Desk pothos", 31, "Root trim", { day: "2026-02-28" }],
          ["Window fern", 29, "Decay removed", { day: "2026-03-02" }],
        ],
        source: BY_CALENDAR,
      },
      {
        formula: "=ROOT_BOARD(A2:A4, 'Care log'!A1:C5, Settings!B2, Events!A1:B2, Settings!A1:B2)",
        args: [
          [["New cutting"], ["Desk pothos"], ["Window fern"]],
          EXAMPLE_LOG,
          { day: "2026-03-31" },
          [
            ["Event", "Disturbs roots"],
            ["Repot", "yes"],
          ],
          [
            ["Setting", "Value"],
            ["Rest days", 60],
          ],
        ],
        gives: [
          ["Plant", "Days at rest", "Last event", "Date", "Roots"],
          ["Window fern", 72, "Repot", { day: "2026-01-18" }, "Rested long enough"],
          ["Desk pothos", 31, "Root trim", { day: "2026-02-28" }, "Leave alone"],
          ["New cutting", "", "", "", "No disturbance on record"],
        ],
        source: BY_CALENDAR,
      },
    ],
    sources: [PRACTICE],
    seeAlso: ["ROOT_REST", "ROOT_LAST"],
  },
};
