/** Custom functions on feeds: what a dose brings, what a recipe makes, which doses reach a target. */

import { DOSE_UNITS, doseAmounts } from "../core/dose.ts";
import { type Amounts, ELEMENTS, parseElements } from "../core/elements.ts";
import { BadInput } from "../core/errors.ts";
import { mixAmounts, readRecipe } from "../core/mix.ts";
import { solveDoses } from "../core/solve.ts";
import { badRow } from "./answers.ts";
import { feedOfLabel, readShelfTable, readTargetTable, readWaterTable, recipeRows } from "./feed-tables.ts";
import type { Answer, Argument, FunctionRecord } from "./record.ts";

const elements: Argument = {
  name: "elements",
  kind: "text",
  fallback: ELEMENTS.join(" "),
  optional: true,
  help: `Optional. Elements wanted, such as "N P K" or "Fe"; ${ELEMENTS.join(" ")} when left out.`,
};
const feeds: Argument = {
  name: "feeds",
  kind: "table",
  columns: ["Feed"],
  help: "The feeds with their heading row, as on the Feeds tab: Feed, and percent of what the label prints (N, P2O5, K2O, P, K, Ca, Mg and so on), Basis, Density.",
};
const water: Argument = {
  name: "water",
  kind: "table",
  columns: [],
  optional: true,
  help: "Optional. The water before any feed: a heading row as on the Waters tab and one row of mg/L; pure water when left out.",
};

/** Null, shown as nothing, for an element that neither a label nor the water states. */
function inOrder(amounts: Amounts, list: string): Answer[] {
  return parseElements(list).map((symbol) => amounts[symbol] ?? null);
}

export const FEED_RECORDS: readonly FunctionRecord[] = [
  {
    name: "FEED_PPM",
    group: "FEED",
    summary: "Works out how much of each element a dose of a feed brings into the water.",
    args: [
      {
        name: "label",
        kind: "label",
        help: 'The printed analysis: "10-5-5", "10-5-5 Ca 4 Mg 1.2 Fe 0.1", "N 10 P 2.2 K 4.2 elemental", with w/v where the label counts by volume; or a table of feeds with its heading row. In a cell, type a grade with an apostrophe in front, or it becomes a date.',
      },
      {
        name: "dose",
        kind: "number",
        unitFrom: "unit",
        min: 0,
        help: "How much of the feed goes into the water; a cell or a range. Beside a table of feeds the doses begin with the first feed, not with the heading.",
      },
      {
        name: "unit",
        kind: "choice",
        choices: DOSE_UNITS,
        fallback: "g/L",
        optional: true,
        help: `Optional. Unit of the dose: ${DOSE_UNITS.join(", ")} (US measures); g/L when left out.`,
      },
      elements,
      {
        name: "density",
        kind: "number",
        unit: "g/mL",
        min: 0.3,
        max: 3,
        optional: true,
        help: "Optional. Density of the feed in g/mL; needed for a volume of a feed whose label counts by weight. In a table of feeds its own column Density goes first.",
      },
    ],
    result: "mg/L (ppm) of each element, one row per dose; nothing for an element the label does not state.",
    formulas: [
      '=FEED_PPM("10-5-5", 1, "g/L", "N P K")',
      '=FEED_PPM("10-5-5", 1, "tsp/gal", "N P K", 1.2)',
      '=FEED_PPM("10-5-5", A2:A4, "g/L", "N")',
      '=FEED_PPM(A2:A3, B2:B3, "g/L", "P K")',
    ],
    compute: {
      kind: "rows",
      prepare: () => (row) => {
        const feed = feedOfLabel(row.label("label"), row.optionalNumber("density"));
        return inOrder(doseAmounts(feed, row.number("dose"), row.choice("unit", DOSE_UNITS)), row.text("elements"));
      },
    },
  },
  {
    name: "FEED_MIX",
    group: "FEED",
    summary: "Adds up what all feeds of a recipe and the water bring together.",
    args: [
      feeds,
      {
        name: "recipe",
        kind: "table",
        columns: ["Feed", "Dose", "Unit"],
        help: `The recipe with its heading row: Feed, Dose, and Unit per litre or gallon (${DOSE_UNITS.join(", ")}).`,
      },
      water,
      elements,
    ],
    result: "mg/L of each element in one row; nothing for an element that neither a label nor the water states.",
    formulas: ['=FEED_MIX(Feeds!A1:G5, A1:C5, , "N P K Ca Mg S")', '=FEED_MIX(A1:D2, A4:C5, A7:B8, "Mg")'],
    compute: {
      kind: "whole",
      answer: (fixed, row) => {
        const shelf = readShelfTable(fixed.table("feeds"));
        const parts = readRecipe(recipeRows(fixed.table("recipe")), shelf);
        return [inOrder(mixAmounts(parts, readWaterTable(fixed.optionalTable("water"))), row.text("elements"))];
      },
    },
  },
  {
    name: "FEED_SOLVE",
    group: "FEED",
    summary: "Finds the doses of the feeds at hand that come closest to a target.",
    args: [
      {
        name: "target",
        kind: "table",
        columns: [],
        help: "The target: a heading row of elements, as on the Targets tab, and one row of mg/L. A blank is not counted, 0 is wanted to be 0.",
      },
      feeds,
      water,
      {
        name: "litres",
        kind: "number",
        unit: "L",
        min: 0.001,
        max: 1_000_000,
        optional: true,
        help: "Optional. Litres of the batch; the column Batch then gives grams or mL for all of it.",
      },
    ],
    result:
      "A table Feed, Dose, Unit, Batch: the doses per litre, none negative, for the least sum of squared relative errors; below them the feeds that may not enter, and why.",
    formulas: ["=FEED_SOLVE(Targets!A1:F2, Feeds!A1:G5)", "=FEED_SOLVE(A1:C2, Feeds!A1:C2, E1:F2, 10)"],
    compute: {
      kind: "whole",
      answer: (fixed, row) => {
        const shelf = readShelfTable(fixed.table("feeds"));
        if (shelf.length === 0) throw new BadInput("no-feeds", "feeds holds no feed below its heading row.");
        const usable = shelf.flatMap(({ feed }) => (feed === null ? [] : [feed]));
        const { doses } = solveDoses({
          wanted: readTargetTable(fixed.table("target")),
          feeds: usable,
          water: readWaterTable(fixed.optionalTable("water")),
        });
        const litres = row.optionalNumber("litres");
        const table: (readonly Answer[])[] = [["Feed", "Dose", "Unit", "Batch"]];
        for (const { feed, perLitre, unit } of doses) {
          table.push([feed.name, perLitre, `${unit}/L`, litres === null ? null : perLitre * litres]);
        }
        // The name stays out of the column Feed, so that the table can be the recipe of FEED_MIX as it is.
        for (const { reason } of shelf) if (reason !== null) table.push([null, null, null, badRow(reason)]);
        return table;
      },
    },
  },
];
