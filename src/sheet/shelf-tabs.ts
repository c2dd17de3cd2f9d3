/** The columns of the tabs that arithmetic reads: Feeds, Waters, Targets. */

import { choice, day, type Names, NOTE, number, type Others, text, yesNo } from "./columns.ts";
import type { ColumnSpec, TabSpec } from "./spec.ts";

const PERCENT: readonly (readonly [names: Names, what: string])[] = [
  [["N", "Nitrogen", "Total N", "N total", "N %"], "Total nitrogen"],
  [["NO3-N", "Nitrate-N", "Nitrate nitrogen", "N-NO3"], "Nitrogen in the nitrate form, as N"],
  [["NH4-N", "Ammonium-N", "Ammoniacal nitrogen", "Ammonium nitrogen", "N-NH4"], "Nitrogen in the ammonium form, as N"],
  [["Urea-N", "Urea nitrogen", "Ureic nitrogen", "N-urea"], "Nitrogen in the urea form, as N"],
  [["Other-N", "Other nitrogen", "N-other"], "Nitrogen in any other form, as N: organic or slow-release"],
  [["P2O5", "P₂O₅", "Phosphate (P2O5)", "Available phosphate"], "Phosphate as P2O5"],
  [["K2O", "K₂O", "Soluble potash", "Potash (K2O)"], "Potash as K2O"],
  [["P", "Phosphorus", "P %"], "Phosphorus as the element; leave blank where P2O5 is given"],
  [["K", "Potassium", "K %"], "Potassium as the element; leave blank where K2O is given"],
  [["Ca", "Calcium", "Ca %"], "Calcium as the element"],
  [["CaO", "Calcium oxide"], "Calcium as CaO"],
  [["Mg", "Magnesium", "Mg %"], "Magnesium as the element"],
  [["MgO", "Magnesium oxide"], "Magnesium as MgO"],
  [["S", "Sulfur", "Sulphur", "S %"], "Sulfur as the element"],
  [["SO3", "SO₃"], "Sulfur as SO3"],
  [["Fe", "Iron"], "Iron"],
  [["Mn", "Manganese"], "Manganese"],
  [["Zn", "Zinc"], "Zinc"],
  [["B", "Boron"], "Boron"],
  [["Cu", "Copper"], "Copper"],
  [["Mo", "Molybdenum"], "Molybdenum"],
  [["Si", "Silicon"], "Silicon"],
  [["SiO2", "SiO₂", "Silica"], "Silicon as SiO2"],
  [["Na", "Sodium"], "Sodium"],
  [["Na2O", "Na₂O"], "Sodium as Na2O"],
  [["Cl", "Chloride", "Chlorine"], "Chloride"],
];

export const FEEDS: TabSpec = {
  name: "Feeds",
  aliases: ["Fertilizers", "Fertilisers", "Salts"],
  key: "Feed",
  help: "The shelf: one row for each bottle, bag or salt, as its label says.",
  columns: [
    text(
      ["Feed", "Fertilizer", "Fertiliser", "Salt", "Product", "Name"],
      "The name by which recipes know it. Each name once.",
      { format: "@" },
    ),
    choice("Basis", "w/w: percent by weight (usual). w/v: grams in 100 mL of a liquid. Blank means w/w.", [
      "w/w",
      "w/v",
    ]),
    ...PERCENT.map(([names, what]) =>
      number(names, `${what}, as guaranteed on the label. Blank means not stated.`, { unit: "%" }),
    ),
    number(
      ["Density", "Density g/mL", "Specific gravity"],
      "Weight of one millilitre. Needed to dose a liquid w/w by volume.",
      { unit: "g/mL" },
    ),
    choice("Origin", "An organic feed does not feed a pot without soil life, and so enters no recipe.", [
      "mineral",
      "organic",
    ]),
    yesNo(
      ["Analysis published", "Guaranteed analysis", "Analysis"],
      "no: the maker does not say what is in it, so it cannot be dosed.",
    ),
    number(
      ["On hand", "Stock", "Left"],
      "How much is left: what was bought less what batches used. Best the formula FEED_LEFT in this very cell, as in the sample sheet; a number typed by hand goes stale.",
      { aside: true, format: "0.0" },
    ),
    choice("Unit", "Unit of what is on hand.", ["g", "kg", "mL", "L"]),
    number("Price", "What the pack cost.", { aside: true }),
    text(["Lot", "Batch number", "Lot number"], "As printed on the pack.", { format: "@" }),
    text(["Label text", "Label"], "The label as it was pasted, word for word.", { format: "@" }),
    NOTE,
  ],
};

export const WATERS: TabSpec = {
  name: "Waters",
  aliases: ["Water reports"],
  key: "Water",
  help: "What is in each water, from a report or from readings of one's own.",
  columns: [
    text(["Water", "Name"], "The name by which batches know it. Each name once."),
    day(["Date", "Day", "Sampled"], "The day it was sampled.", { aside: true }),
    text(["Source", "Reported by"], "Who measured it."),
    number(["Ca", "Calcium"], "Calcium.", { unit: "mg/L" }),
    number(["Mg", "Magnesium"], "Magnesium.", { unit: "mg/L" }),
    number(["Na", "Sodium"], "Sodium.", { unit: "mg/L" }),
    number(["K", "Potassium"], "Potassium.", { unit: "mg/L" }),
    number(
      ["Alkalinity", "Alkalinity as CaCO3", "Total alkalinity", "Alkalinity (CaCO3)"],
      "What holds the pH up against acid.",
      { unit: "mg/L as CaCO3" },
    ),
    number(["SO4", "Sulfate", "Sulphate"], "Sulfate, as SO4.", { unit: "mg/L" }),
    number(["Cl", "Chloride"], "Chloride.", { unit: "mg/L" }),
    number(
      ["NO3-N", "Nitrate-N", "Nitrate nitrogen", "Nitrate as N", "N-NO3"],
      "Nitrate as nitrogen. A report that gives nitrate as NO3 is divided by 4.43 first.",
      { unit: "mg/L as N" },
    ),
    number(["Fe", "Iron"], "Iron.", { unit: "mg/L" }),
    number(["B", "Boron"], "Boron.", { unit: "mg/L" }),
    number(
      ["EC", "EC mS/cm", "Conductivity mS/cm"],
      "Electrical conductivity. A report in µS/cm is divided by 1000 first.",
      { unit: "mS/cm at 25 °C" },
    ),
    number("pH", "pH as measured."),
    choice("Disinfectant", "What the utility adds to keep the water safe.", [
      "none",
      "chlorine",
      "chloramine",
      "chlorine dioxide",
    ]),
    NOTE,
  ],
};

const ELEMENTS: readonly (readonly [symbol: string, name: string, ...aliases: string[]])[] = [
  ["N", "Nitrogen"],
  ["P", "Phosphorus"],
  ["K", "Potassium"],
  ["Ca", "Calcium"],
  ["Mg", "Magnesium"],
  ["S", "Sulfur", "Sulphur"],
  ["Fe", "Iron"],
  ["Mn", "Manganese"],
  ["Zn", "Zinc"],
  ["B", "Boron"],
  ["Cu", "Copper"],
  ["Mo", "Molybdenum"],
];

/** One column of mg/L for each of the twelve elements; `help` follows the element's name in the note. */
export function elementColumns(help: string, others: Others = {}): readonly ColumnSpec[] {
  return ELEMENTS.map((names) => number(names, `${names[1]}, ${help}`, { unit: "mg/L", ...others }));
}

export const TARGETS: TabSpec = {
  name: "Targets",
  aliases: ["Recipes", "Solutions"],
  key: "Target",
  help: "Nutrient solutions to aim at, elements in mg/L.",
  columns: [
    text(["Target", "Name", "Solution", "Recipe"], "Its name. Each name once."),
    ...elementColumns("wanted in the solution. Blank: not counted. 0: none wanted."),
    text(["Source", "Reference"], "Where these numbers were published."),
  ],
};
