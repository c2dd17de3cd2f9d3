/** Custom functions on feeds: what a dose brings, what a recipe makes, which doses reach a target. */

import { DOSE_UNITS, doseAmounts } from "../core/dose.ts";
import { type Amounts, ELEMENTS, parseElements } from "../core/elements.ts";
import { BadInput } from "../core/errors.ts";
import { measurableDoses } from "../core/grid-doses.ts";
import { mixAmounts, readRecipe } from "../core/mix.ts";
import { type Dose, type SolveTask, solveDoses } from "../core/solve.ts";
import { badRow } from "./answers.ts";
import { feedOfLabel, readShelfTable, readTargetTable, readWaterTable, recipeRows } from "./feed-tables.ts";
import type { Answer, Argument, FunctionRecord } from "./record.ts";

const elements = {
  name: "elements",
  kind: "text",
  fallback: ELEMENTS.join(" "),
  optional: true,
} as const satisfies Argument;
const feeds = {
  name: "feeds",
  kind: "table",
  columns: ["Feed"],
} as const satisfies Argument;
const water = {
  name: "water",
  kind: "table",
  columns: [],
  optional: true,
} as const satisfies Argument;

/** Null, shown as nothing, for an element that neither a label nor the water states. */
function inOrder(amounts: Amounts, list: string): Answer[] {
  return parseElements(list).map((symbol) => amounts[symbol] ?? null);
}

type BatchDose = Dose & { readonly perBatch: number | null };

/** The closest doses; with a step, the closest of which the batch holds whole steps. */
function dosesFor(task: SolveTask, litres: number | null, step: number | null): readonly BatchDose[] {
  if (step === null) {
    return solveDoses(task).doses.map((dose) => ({
      ...dose,
      perBatch: litres === null ? null : dose.perLitre * litres,
    }));
  }
  if (litres === null) {
    throw new BadInput("no-litres", `step is ${step} g or mL for the whole batch. Give litres as well.`);
  }
  return measurableDoses({ ...task, litres, measures: task.feeds.map(() => ({ kind: "step", step })) }).doses;
}

export const FEED_RECORDS = [
  {
    name: "FEED_PPM",
    group: "FEED",
    args: [
      {
        name: "label",
        kind: "label",
      },
      {
        name: "dose",
        kind: "number",
        unitFrom: "unit",
        min: 0,
      },
      {
        name: "unit",
        kind: "choice",
        choices: DOSE_UNITS,
        fallback: "g/L",
        optional: true,
      },
      elements,
      {
        name: "density",
        kind: "number",
        unit: "g/mL",
        min: 0.3,
        max: 3,
        optional: true,
      },
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
    args: [
      feeds,
      {
        name: "recipe",
        kind: "table",
        columns: ["Feed", "Dose", "Unit"],
      },
      water,
      elements,
    ],
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
    args: [
      {
        name: "target",
        kind: "table",
        columns: [],
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
      },
      {
        name: "step",
        kind: "number",
        min: 0.000001,
        max: 1_000_000,
        optional: true,
      },
    ],
    compute: {
      kind: "whole",
      answer: (fixed, row) => {
        const shelf = readShelfTable(fixed.table("feeds"));
        if (shelf.length === 0) throw new BadInput("no-feeds", "feeds holds no feed below its heading row.");
        const usable = shelf.flatMap(({ feed }) => (feed === null ? [] : [feed]));
        const litres = row.optionalNumber("litres");
        const task = {
          wanted: readTargetTable(fixed.table("target")),
          feeds: usable,
          water: readWaterTable(fixed.optionalTable("water")),
        };
        const table: (readonly Answer[])[] = [["Feed", "Dose", "Unit", "Batch"]];
        for (const { feed, perLitre, unit, perBatch } of dosesFor(task, litres, row.optionalNumber("step"))) {
          table.push([feed.name, perLitre, `${unit}/L`, perBatch]);
        }
        // The name stays out of the column Feed, so that the table can be the recipe of FEED_MIX as it is.
        for (const { reason } of shelf) if (reason !== null) table.push([null, null, null, badRow(reason)]);
        return table;
      },
    },
  },
] as const satisfies readonly FunctionRecord[];
