/** The columns of the logs that the add-on appends to: Care log and Batch log. */

import { elementColumns } from "./shelf-tabs.ts";
import type { ColumnSpec, TabSpec } from "./spec.ts";

const ID: ColumnSpec = {
  heading: "Id",
  kind: "id",
  aliases: ["Record id"],
  help: "Keeps a record from being written twice. Made by the add-on; leave it blank in rows typed by hand.",
};
const NOTE: ColumnSpec = {
  heading: "Note",
  kind: "text",
  aliases: ["Notes", "Remark", "Remarks", "Comment"],
  help: "Anything else.",
};
const DATE: ColumnSpec = { heading: "Date", kind: "day", aliases: ["Day", "When"], help: "The day it was done." };
const WHO: ColumnSpec = { heading: "Who", kind: "text", aliases: ["Person", "By", "Done by"], help: "Who did it." };

export const CARE_LOG: TabSpec = {
  name: "Care log",
  aliases: ["Plant log", "Care"],
  key: "Id",
  alsoKeys: ["Date", "Plant", "Event"],
  help: "What was done to which plant, one row each.",
  columns: [
    ID,
    DATE,
    {
      heading: "Plant",
      kind: "name",
      refersTo: "Plants",
      aliases: ["Plant name"],
      help: "As it stands in the plant list.",
    },
    {
      heading: "Event",
      kind: "name",
      refersTo: "Events",
      aliases: ["Action", "What"],
      help: "As it stands in Events.",
    },
    {
      heading: "Amount mL",
      kind: "number",
      aliases: ["Amount", "Amount (mL)", "mL"],
      unit: "mL",
      aside: true,
      help: "How much was poured in.",
    },
    { heading: "Solution", kind: "text", aliases: ["Batch", "Water"], help: "What was poured: a batch or a water." },
    {
      heading: "EC",
      kind: "number",
      aliases: ["EC mS/cm"],
      unit: "mS/cm at 25 °C",
      aside: true,
      format: "0.00",
      help: "As the meter read.",
    },
    { heading: "pH", kind: "number", aside: true, format: "0.0#", help: "As the meter read." },
    WHO,
    { heading: "Reason", kind: "text", aliases: ["Why"], help: "Why roots were disturbed early." },
    NOTE,
  ],
};

export const BATCH_LOG: TabSpec = {
  name: "Batch log",
  aliases: ["Batches"],
  key: "Id",
  alsoKeys: ["Date", "Litres", "Doses"],
  help: "Each batch that was mixed, with its numbers as they were that day.",
  columns: [
    ID,
    DATE,
    WHO,
    {
      heading: "Litres",
      kind: "number",
      aliases: ["Liters", "L", "Volume L"],
      unit: "L",
      aside: true,
      help: "How much.",
    },
    { heading: "Water", kind: "name", refersTo: "Waters", help: "The water it was mixed from." },
    { heading: "Target", kind: "name", refersTo: "Targets", aliases: ["Recipe"], help: "What it was meant to reach." },
    {
      heading: "Doses",
      kind: "text",
      aliases: ["Feeds"],
      help: "Each feed with its dose per litre and, in brackets, for the whole batch; feeds are separated by semicolons.",
    },
    ...elementColumns("in the finished batch, water included.", { aside: true }).map((column) => ({
      ...column,
      format: "0.0##",
    })),
    {
      heading: "Predicted EC",
      kind: "number",
      unit: "mS/cm at 25 °C",
      aside: true,
      format: "0.00",
      help: "What the meter should read.",
    },
    {
      heading: "Acid",
      kind: "text",
      aliases: ["pH down", "Acid or base"],
      help: "What was added to bring the pH into range, and how much. Mind the caution on its label.",
    },
    {
      heading: "Measured EC",
      kind: "number",
      aliases: ["EC", "EC measured"],
      unit: "mS/cm at 25 °C",
      aside: true,
      format: "0.00",
      help: "What the meter did read.",
    },
    {
      heading: "Measured pH",
      kind: "number",
      aliases: ["pH", "pH measured"],
      aside: true,
      format: "0.0#",
      help: "What the meter did read.",
    },
    { heading: "Verdict", kind: "text", help: "Whether the batch is as it should be." },
    NOTE,
  ],
};
