/** The columns of the logs that the add-on appends to: care, batches, purchases, readings in a standard. */

import { CORRECTS, choice, day, id, NOTE, nameOf, number, text, yesNo } from "./columns.ts";
import { elementColumns } from "./shelf-tabs.ts";
import type { TabSpec } from "./spec.ts";

const ID = id(
  ["Id", "Record id"],
  "Keeps a record from being written twice. Made by the add-on; leave it blank in rows typed by hand.",
);
const DATE = day(["Date", "Day", "When"], "The day it was done.");
const WHO = text(["Who", "Person", "By", "Done by"], "Who did it.");

export const CARE_LOG: TabSpec = {
  name: "Care log",
  aliases: ["Plant log", "Care"],
  key: "Id",
  alsoKeys: ["Date", "Plant", "Event"],
  help: "What was done to which plant, one row each.",
  columns: [
    ID,
    DATE,
    nameOf("Plants", ["Plant", "Plant name"], "As it stands in the plant list."),
    nameOf("Events", ["Event", "Action", "What"], "As it stands in Events."),
    number(["Amount mL", "Amount", "Amount (mL)", "mL"], "How much was poured in.", { unit: "mL", aside: true }),
    text(["Solution", "Batch", "Water"], "What was poured: a batch or a water."),
    number(["EC", "EC mS/cm"], "As the meter read.", { unit: "mS/cm at 25 °C", aside: true, format: "0.00" }),
    number("pH", "As the meter read.", { aside: true, format: "0.0#" }),
    WHO,
    text(["Reason", "Why"], "Why roots were disturbed early."),
    NOTE,
    CORRECTS,
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
    number(["Litres", "Liters", "L", "Volume L"], "How much.", { unit: "L", aside: true }),
    nameOf("Waters", "Water", "The water it was mixed from."),
    nameOf("Targets", ["Target", "Recipe"], "What it was meant to reach."),
    text(
      ["Doses", "Feeds"],
      "Each feed with its dose per litre and, in brackets, for the whole batch; feeds are separated by semicolons.",
    ),
    ...elementColumns("in the finished batch, water included.", { aside: true, format: "0.0##" }),
    number("Predicted EC", "What the meter should read.", { unit: "mS/cm at 25 °C", aside: true, format: "0.00" }),
    text(
      ["Acid", "pH down", "Acid or base"],
      "What was added to bring the pH into range, and how much. Mind the caution on its label.",
    ),
    number(["Measured EC", "EC", "EC measured"], "What the meter did read.", {
      unit: "mS/cm at 25 °C",
      aside: true,
      format: "0.00",
    }),
    number(["Measured pH", "pH", "pH measured"], "What the meter did read.", { aside: true, format: "0.0#" }),
    text("Verdict", "Whether the batch is as it should be."),
    NOTE,
    choice("State", "planned: not mixed yet. Blank means mixed.", ["planned", "mixed"]),
    CORRECTS,
  ],
};

export const PURCHASES: TabSpec = {
  name: "Purchases",
  aliases: ["Bought", "Receipts"],
  key: "Id",
  alsoKeys: ["Date", "Feed", "Amount"],
  help: "What was bought for the shelf, one row a pack. What is on hand follows from this and from the Batch log.",
  columns: [
    ID,
    DATE,
    nameOf("Feeds", ["Feed", "Fertilizer", "Fertiliser", "Product"], "As it stands in Feeds."),
    number(["Amount", "Quantity", "Pack"], "How much is in the pack, in the unit beside it.", { aside: true }),
    choice("Unit", "Unit of the amount.", ["g", "kg", "mL", "L"]),
    number(["Price", "Cost"], "What the pack cost, in the household's money.", { aside: true }),
    text(["Lot", "Batch number", "Lot number"], "As printed on the pack.", { format: "@" }),
    WHO,
    NOTE,
    CORRECTS,
  ],
};

export const METER_LOG: TabSpec = {
  name: "Meter log",
  aliases: ["Meters", "Calibrations"],
  key: "Id",
  alsoKeys: ["Date", "Meter", "Standard"],
  help: "What a meter read in a solution whose value is known, and when it was calibrated.",
  columns: [
    ID,
    DATE,
    choice("Meter", "What it measures.", ["EC", "pH"]),
    number("Standard", "The value printed on the standard: mS/cm at 25 °C, or pH.", { aside: true }),
    number("Reading", "What the meter showed in it, in the same unit.", { aside: true }),
    number(["Temp C", "Temperature"], "Temperature of the standard.", { unit: "°C", aside: true }),
    yesNo("Calibrated", "yes: the meter was set to the standard after this reading."),
    WHO,
    NOTE,
    CORRECTS,
  ],
};
