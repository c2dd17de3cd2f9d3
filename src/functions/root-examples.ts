/** Examples and sources of the custom functions on roots left alone; they are tried by tests and printed, never shipped. */

import type { ExampleValue, FunctionReference } from "./record.ts";

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

export const ROOT_REFERENCE: readonly FunctionReference[] = [
  {
    name: "ROOT_LAST",
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
  {
    name: "ROOT_REST",
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
  {
    name: "ROOT_BOARD",
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
    ],
    sources: [PRACTICE],
    seeAlso: ["ROOT_REST", "ROOT_LAST"],
  },
];
