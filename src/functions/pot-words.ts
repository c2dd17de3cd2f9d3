/** What is said about the custom functions on reservoirs, with examples that tests try; printed, never shipped with a call. */

import type { POT_RECORDS } from "./pot.ts";
import type { ExampleValue, WordsOf } from "./words.ts";

const EXAMPLE_LOG: ExampleValue = [
  ["Date", "Plant", "Event", "Amount mL", "Who"],
  [{ day: "2026-03-01" }, "Window fern", "Solution change", 400, "Ines"],
  [{ day: "2026-03-08" }, "Window fern", "Top up", 105, "Ines"],
  [{ day: "2026-03-15" }, "Window fern", "Top up", 98, "Ines"],
  [{ day: "2026-03-15" }, "Window fern", "Top up", 98, "Tomas"],
  [{ day: "2026-03-29" }, "Window fern", "Top up", 203, "Ines"],
];
/** Weekly top-ups of 1, 2, 3, 4, 5, 16 and 7 mL a day. */
const TREND_LOG: ExampleValue = [
  ["Date", "Plant", "Event", "Amount mL"],
  [{ day: "2026-01-04" }, "Desk pothos", "Repot", ""],
  [{ day: "2026-01-11" }, "Desk pothos", "Top up", 7],
  [{ day: "2026-01-18" }, "Desk pothos", "Top up", 14],
  [{ day: "2026-01-25" }, "Desk pothos", "Top up", 21],
  [{ day: "2026-02-01" }, "Desk pothos", "Top up", 28],
  [{ day: "2026-02-08" }, "Desk pothos", "Top up", 35],
  [{ day: "2026-02-15" }, "Desk pothos", "Top up", 112],
  [{ day: "2026-02-22" }, "Desk pothos", "Top up", 49],
];
const BY_HAND = "Worked by hand; the plant is made up.";
const HELSEL_HIRSCH =
  "Helsel & Hirsch, Statistical methods in water resources, ch. 10: x 1 to 7, y 1 2 3 4 5 16 7 has a Theil–Sen slope of 1 (figures from memory); 1 a week on the median of 4 is 25 %.";
const PRACTICE =
  "That a top-up fills the reservoir to the same mark, and the limits for a top-up that is missing in the log: common practice, no source";
const BALANCE = "Mass balance: c = c0 + ct W / V for an ion that stays behind";

const PLANTS_HELP = "Names of plants, one cell or a range of one column; case and spaces around them do not matter.";
const LOG_HELP =
  "The care log with its heading row; it needs the columns Date, Plant, Event and Amount mL, in any order. Who tells one top-up written down by two from two; with Id and Corrects, rows taken back do not count.";
const ASOF_HELP =
  "The day to count to: a cell with a date, such as the one for today on the Settings tab. Later rows of the log do not count yet.";
const HEADING_HELP =
  "Optional. A heading: then the first cell of plants is taken as that range's own heading and the result begins with this text, so the formula can stand in the heading row and survive every sort.";
const EVENTS_HELP =
  "Optional. A table with the columns Event and Disturbs roots (yes or no) that goes before the built-in list: a disturbance begins the count anew.";

export const POT_WORDS: WordsOf<typeof POT_RECORDS> = {
  POT_USE: {
    summary: "Says how much each plant drinks a day, from what was poured in to fill its reservoir up again.",
    args: {
      plants: PLANTS_HELP,
      log: LOG_HELP,
      asOf: ASOF_HELP,
      days: "Optional. Over how many days the mean goes; 28 when left out.",
      heading: HEADING_HELP,
      events: EVENTS_HELP,
    },
    result:
      "Mean mL a day for each plant. What a top-up pours in was drunk since the filling before it, however long that was. A change, a flush or a disturbance fills anew and counts for nothing; since the last disturbance only. Nothing where it is not known.",
    examples: [
      {
        formula: "=POT_USE(\"window fern\", 'Care log'!A1:E6, DATE(2026,3,29))",
        args: ["window fern", EXAMPLE_LOG, { day: "2026-03-29" }],
        gives: 14.5,
        source: `${BY_HAND} 105 + 98 + 203 mL in 28 days: the top-up that two wrote down counts once, the weeks away count whole.`,
      },
      {
        formula: "=POT_USE(A1:A3, 'Care log'!A1:E6, Settings!B2, 14, \"mL a day\")",
        args: [[["Plant"], ["Window fern"], ["New cutting"]], EXAMPLE_LOG, { day: "2026-03-29" }, 14, "mL a day"],
        gives: [["mL a day"], [14.5], [""]],
        source: `${BY_HAND} 203 mL in the last 14 days.`,
      },
    ],
    sources: [PRACTICE],
    seeAlso: ["POT_TREND", "POT_DUE"],
  },
  POT_TREND: {
    summary: "Says by how many percent a week each plant drinks more or less.",
    args: {
      plants: PLANTS_HELP,
      log: LOG_HELP,
      asOf: ASOF_HELP,
      days: "Optional. Over how many days the trend goes; 56 when left out.",
      heading: HEADING_HELP,
      events: EVENTS_HELP,
    },
    result:
      "Percent a week for each plant, below 0 for less: the Theil–Sen slope of the mL a day over the middles of the intervals between fillings, as a share of their median. Nothing with fewer than three intervals or two weeks since the last disturbance.",
    examples: [
      {
        formula: "=POT_TREND(\"Desk pothos\", 'Care log'!A1:D9, DATE(2026,2,22))",
        args: ["Desk pothos", TREND_LOG, { day: "2026-02-22" }],
        gives: 25,
        source: HELSEL_HIRSCH,
      },
      {
        formula: "=POT_TREND(A1:A3, 'Care log'!A1:D9, Settings!B2, 28, \"% a week\")",
        args: [[["Plant"], ["Desk pothos"], ["New cutting"]], TREND_LOG, { day: "2026-02-08" }, 28, "% a week"],
        gives: [["% a week"], [(100 * 1) / 3.5], [""]],
        source: `${BY_HAND} 2, 3, 4 and 5 mL a day in the last four weeks: 1 a week on a median of 3.5.`,
      },
    ],
    sources: [
      "Theil 1950; Sen 1968, J. Am. Stat. Assoc. 63, 1379; Helsel & Hirsch, Statistical methods in water resources, ch. 10",
      PRACTICE,
    ],
    seeAlso: ["POT_USE", "POT_DUE"],
  },
  POT_SALT: {
    summary: "Works out the level in a reservoir of an ion that stays behind while the water is drunk and replaced.",
    args: {
      fill: "Level in the full reservoir at the start, such as mg/L of sodium; a cell or a range.",
      topup: "Level in what it is topped up with, in the same unit; a cell or a range.",
      used: "Water drunk and replaced since then, in the unit of volume; a cell or a range.",
      volume: "What the full reservoir holds, such as L or mL; a cell or a range.",
    },
    result:
      "Level in the full reservoir, in the unit of fill and topup. EC in mS/cm works roughly, as a highest value: what the plant takes up lowers it.",
    examples: [
      {
        formula: "=POT_SALT(20, 20, 3, 0.5)",
        args: [20, 20, 3, 0.5],
        gives: 140,
        source: `${BALANCE}: 20 + 20 × 3 / 0.5.`,
      },
      {
        formula: "=POT_SALT(A2:A4, B2:B4, C2:C4, D2:D4)",
        args: [
          [[20], [20], [1.2]],
          [[20], [0], [0.4]],
          [[500], [500], [900]],
          [[500], [500], [600]],
        ],
        gives: [[40], [20], [1.8]],
        source: `${BALANCE}: 20 + 20, 20 + 0 and 1.2 + 0.4 × 1.5.`,
      },
    ],
    sources: [BALANCE],
    seeAlso: ["POT_USE", "POT_DUE"],
  },
  POT_DUE: {
    summary:
      "Lists what is due: thirsty plants by their own drinking, flushes, changes, reservoirs filling with roots, recovering plants and claims to look at again.",
    args: {
      plants: PLANTS_HELP,
      log: `${LOG_HELP} EC readings in the column EC are held against the ceiling.`,
      asOf: ASOF_HELP,
      events: EVENTS_HELP,
      rules:
        "Optional. A table with the columns Setting and Value, such as the Settings tab: Top up days 14, Flush days 30, Change days 90, EC ceiling 2, Root rise % 30, Look days 7, Recovery days 90, which are what counts where a row is missing; off means never.",
      claims:
        "Optional. A table with the columns Claim and Look again, such as the Claims tab; claims that are kept or dropped are settled.",
    },
    result:
      "A table Plant, Due, Since, Why: Top up, Flush, Change, Pot up, Look at and Look again in this order, the longest due first. Since is the first day it was due, Why the reason with its numbers. Plant is blank for a claim.",
    examples: [
      {
        formula: "=POT_DUE(A2:A3, 'Care log'!A1:E6, DATE(2026,4,12))",
        args: [[["Window fern"], ["New cutting"]], EXAMPLE_LOG, { day: "2026-04-12" }],
        gives: [
          ["Plant", "Due", "Since", "Why"],
          [
            "Window fern",
            "Top up",
            { day: "2026-04-05" },
            "It drinks 14.5 mL a day, about 203 mL in the 14 days since 2026-03-29; 105 mL is its usual top-up.",
          ],
          [
            "Window fern",
            "Flush",
            { day: "2026-03-31" },
            "Neither flushed nor changed for 42 days, since 2026-03-01; the rule is 30 days.",
          ],
        ],
        source: `${BY_HAND} 105 mL at 14.5 mL a day last a week; 1 March and 30 days is 31 March.`,
      },
      {
        formula: "=POT_DUE(A2:A2, 'Care log'!A1:E6, DATE(2026,4,2), Events!A1:B1, Settings!A1:B2)",
        args: [
          [["Window fern"]],
          EXAMPLE_LOG,
          { day: "2026-04-02" },
          [["Event", "Disturbs roots"]],
          [
            ["Setting", "Value"],
            ["Flush days", "off"],
          ],
        ],
        gives: [["Plant", "Due", "Since", "Why"]],
        source: `${BY_HAND} Four days after a top-up that lasts a week; flushing is switched off.`,
      },
    ],
    sources: [
      "The rules and their defaults, among them a rise of 30 % over eight weeks for a reservoir filling with roots: common practice, no source",
      PRACTICE,
    ],
    seeAlso: ["POT_USE", "ROOT_BOARD"],
  },
};
