/** What is said about the custom function on stock, with examples that tests try; printed, never shipped with a call. */

import type { FEED_LEFT_RECORDS } from "./feed-left.ts";
import type { ExampleValue, WordsOf } from "./words.ts";

const PURCHASES: ExampleValue = [
  ["Date", "Feed", "Amount", "Unit"],
  [{ day: "2026-01-10" }, "Potassium nitrate", 1, "kg"],
  [{ day: "2026-01-10" }, "Bloom liquid", 2.4, "kg"],
  [{ day: "2026-03-20" }, "Potassium nitrate", 500, "g"],
];
const BATCHES: ExampleValue = [
  ["Date", "Doses"],
  [{ day: "2026-02-01" }, "Potassium nitrate 1.25 g/L (12.5 g); Bloom liquid 5 mL/L (50 mL)"],
  [{ day: "2026-02-15" }, "Potassium nitrate 1.25 g/L (25 g)"],
  [{ day: "2026-04-01" }, "Potassium nitrate 1.25 g/L (12.5 g)"],
];
const SUBTRACTED = "Subtraction by hand; purchases and batches are made up.";

export const FEED_LEFT_WORDS: WordsOf<typeof FEED_LEFT_RECORDS> = {
  FEED_LEFT: {
    summary: "Works out how much of each feed is left: what was bought less what the Batch log used.",
    args: {
      feeds:
        "Names of feeds as they stand in Purchases and in the doses of the Batch log, one cell or a range of one column; case and spaces around them do not matter.",
      purchases:
        "The tab Purchases with its heading row; it needs the columns Date, Feed, Amount and Unit (g, kg, mL or L), in any order. An amount below 0 is what left the shelf by another way, spilled or given away.",
      batches:
        "The Batch log with its heading row; it needs the columns Date and Doses, in any order. Planned batches and rows that were corrected or taken back do not count.",
      asOf: "Optional. The day to count to, such as the cell for today on the Settings tab: later rows do not count yet. All rows count when left out.",
      unit: "Optional. Unit of the answer: g, kg, mL or L, one cell or a range beside the feeds; where blank, g or mL as the feed was last bought.",
      density:
        "Optional. Density in g/mL, one cell or a range beside the feeds; needed only for a feed that is bought by weight and dosed by volume, or the other way round.",
      heading:
        "Optional. A heading such as On hand: then the first cell of feeds is taken as that range's own heading and the result begins with this text, so the formula can stand in the heading row and survive every sort.",
    },
    result:
      "How much is left of each feed, below 0 where more was used than bought; nothing where no purchase is on record.",
    examples: [
      {
        formula: "=FEED_LEFT(\"potassium nitrate\", Purchases!B1:E4, 'Batch log'!A1:B4)",
        args: ["potassium nitrate", PURCHASES, BATCHES],
        gives: 1450,
        source: `${SUBTRACTED} 1000 + 500 g less 12.5 + 25 + 12.5 g.`,
      },
      {
        formula: "=FEED_LEFT(A1:A4, Purchases!B1:E4, 'Batch log'!A1:B4, DATE(2026,3,1), B1:B4, C1:C4, \"On hand\")",
        args: [
          [["Feed"], ["Potassium nitrate"], ["Bloom liquid"], ["Seaweed extract"]],
          PURCHASES,
          BATCHES,
          { day: "2026-03-01" },
          [["Unit"], ["kg"], [""], [""]],
          [["Density"], [""], [1.2], [""]],
          "On hand",
        ],
        gives: [["On hand"], [0.9625], [2340], [""]],
        source: `${SUBTRACTED} 1 kg less 37.5 g; 2400 g less 50 mL at 1.2 g/mL; nothing bought of the third.`,
      },
    ],
    sources: ["Bookkeeping: stock is what came in less what went out"],
    seeAlso: ["FEED_MIX", "FEED_SOLVE"],
  },
};
