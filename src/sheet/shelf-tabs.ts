/** The columns of the tabs that arithmetic reads: Feeds, Waters, Targets. */

import type { ColumnSpec, TabSpec } from "./spec.ts";

const PERCENT: readonly (readonly [heading: string, aliases: readonly string[], what: string])[] = [
  ["N", ["Nitrogen", "Total N", "N total", "N %"], "Total nitrogen"],
  ["NO3-N", ["Nitrate-N", "Nitrate nitrogen", "N-NO3"], "Nitrogen in the nitrate form, as N"],
  ["NH4-N", ["Ammonium-N", "Ammoniacal nitrogen", "Ammonium nitrogen", "N-NH4"], "Nitrogen in the ammonium form, as N"],
  ["Urea-N", ["Urea nitrogen", "Ureic nitrogen", "N-urea"], "Nitrogen in the urea form, as N"],
  ["P2O5", ["P₂O₅", "Phosphate (P2O5)", "Available phosphate"], "Phosphate as P2O5"],
  ["K2O", ["K₂O", "Soluble potash", "Potash (K2O)"], "Potash as K2O"],
  ["P", ["Phosphorus", "P %"], "Phosphorus as the element; leave blank where P2O5 is given"],
  ["K", ["Potassium", "K %"], "Potassium as the element; leave blank where K2O is given"],
  ["Ca", ["Calcium", "Ca %"], "Calcium as the element"],
  ["CaO", ["Calcium oxide"], "Calcium as CaO"],
  ["Mg", ["Magnesium", "Mg %"], "Magnesium as the element"],
  ["MgO", ["Magnesium oxide"], "Magnesium as MgO"],
  ["S", ["Sulfur", "Sulphur", "S %"], "Sulfur as the element"],
  ["SO3", ["SO₃"], "Sulfur as SO3"],
  ["Fe", ["Iron"], "Iron"],
  ["Mn", ["Manganese"], "Manganese"],
  ["Zn", ["Zinc"], "Zinc"],
  ["B", ["Boron"], "Boron"],
  ["Cu", ["Copper"], "Copper"],
  ["Mo", ["Molybdenum"], "Molybdenum"],
  ["Si", ["Silicon"], "Silicon"],
  ["Na", ["Sodium"], "Sodium"],
  ["Cl", ["Chloride", "Chlorine"], "Chloride"],
];

const NOTE: ColumnSpec = {
  heading: "Note",
  kind: "text",
  aliases: ["Notes", "Remark", "Remarks", "Comment"],
  help: "Anything else.",
};

export const FEEDS: TabSpec = {
  name: "Feeds",
  aliases: ["Fertilizers", "Fertilisers", "Salts"],
  key: "Feed",
  help: "The shelf: one row for each bottle, bag or salt, as its label says.",
  columns: [
    {
      heading: "Feed",
      kind: "text",
      aliases: ["Fertilizer", "Fertiliser", "Salt", "Product", "Name"],
      format: "@",
      help: "The name by which recipes know it. Each name once.",
    },
    {
      heading: "Basis",
      kind: "choice",
      choices: ["w/w", "w/v"],
      help: "w/w: percent by weight (usual). w/v: grams in 100 mL of a liquid. Blank means w/w.",
    },
    ...PERCENT.map(
      ([heading, aliases, what]): ColumnSpec => ({
        heading,
        kind: "number",
        aliases,
        unit: "%",
        help: `${what}, as guaranteed on the label. Blank means not stated.`,
      }),
    ),
    {
      heading: "Density",
      kind: "number",
      aliases: ["Density g/mL", "Specific gravity"],
      unit: "g/mL",
      help: "Weight of one millilitre. Needed to dose a liquid w/w by volume.",
    },
    {
      heading: "Origin",
      kind: "choice",
      choices: ["mineral", "organic"],
      help: "An organic feed does not feed a pot without soil life, and so enters no recipe.",
    },
    {
      heading: "Analysis published",
      kind: "yes-no",
      aliases: ["Guaranteed analysis", "Analysis"],
      choices: ["yes", "no"],
      help: "no: the maker does not say what is in it, so it cannot be dosed.",
    },
    { heading: "On hand", kind: "number", aliases: ["Stock", "Left"], aside: true, help: "How much is left." },
    { heading: "Unit", kind: "choice", choices: ["g", "kg", "mL", "L"], help: "Unit of what is on hand." },
    { heading: "Price", kind: "number", aside: true, help: "What the pack cost." },
    {
      heading: "Lot",
      kind: "text",
      aliases: ["Batch number", "Lot number"],
      format: "@",
      help: "As printed on the pack.",
    },
    NOTE,
  ],
};

export const WATERS: TabSpec = {
  name: "Waters",
  aliases: ["Water reports"],
  key: "Water",
  help: "What is in each water, from a report or from readings of one's own.",
  columns: [
    { heading: "Water", kind: "text", aliases: ["Name"], help: "The name by which batches know it. Each name once." },
    { heading: "Date", kind: "day", aliases: ["Day", "Sampled"], aside: true, help: "The day it was sampled." },
    { heading: "Source", kind: "text", aliases: ["Reported by"], help: "Who measured it." },
    { heading: "Ca", kind: "number", aliases: ["Calcium"], unit: "mg/L", help: "Calcium." },
    { heading: "Mg", kind: "number", aliases: ["Magnesium"], unit: "mg/L", help: "Magnesium." },
    { heading: "Na", kind: "number", aliases: ["Sodium"], unit: "mg/L", help: "Sodium." },
    { heading: "K", kind: "number", aliases: ["Potassium"], unit: "mg/L", help: "Potassium." },
    {
      heading: "Alkalinity",
      kind: "number",
      aliases: ["Alkalinity as CaCO3", "Total alkalinity", "Alkalinity (CaCO3)"],
      unit: "mg/L as CaCO3",
      help: "What holds the pH up against acid.",
    },
    { heading: "SO4", kind: "number", aliases: ["Sulfate", "Sulphate"], unit: "mg/L", help: "Sulfate, as SO4." },
    { heading: "Cl", kind: "number", aliases: ["Chloride"], unit: "mg/L", help: "Chloride." },
    {
      heading: "NO3-N",
      kind: "number",
      aliases: ["Nitrate-N", "Nitrate nitrogen", "Nitrate as N", "N-NO3"],
      unit: "mg/L as N",
      help: "Nitrate as nitrogen. A report that gives nitrate as NO3 is divided by 4.43 first.",
    },
    { heading: "Fe", kind: "number", aliases: ["Iron"], unit: "mg/L", help: "Iron." },
    { heading: "B", kind: "number", aliases: ["Boron"], unit: "mg/L", help: "Boron." },
    {
      heading: "EC",
      kind: "number",
      aliases: ["EC mS/cm", "Conductivity mS/cm"],
      unit: "mS/cm at 25 °C",
      help: "Electrical conductivity. A report in µS/cm is divided by 1000 first.",
    },
    { heading: "pH", kind: "number", help: "pH as measured." },
    {
      heading: "Disinfectant",
      kind: "choice",
      choices: ["none", "chlorine", "chloramine", "chlorine dioxide"],
      help: "What the utility adds to keep the water safe.",
    },
    NOTE,
  ],
};

const ELEMENT_NAMES: readonly (readonly [symbol: string, name: string])[] = [
  ["N", "Nitrogen"],
  ["P", "Phosphorus"],
  ["K", "Potassium"],
  ["Ca", "Calcium"],
  ["Mg", "Magnesium"],
  ["S", "Sulfur"],
  ["Fe", "Iron"],
  ["Mn", "Manganese"],
  ["Zn", "Zinc"],
  ["B", "Boron"],
  ["Cu", "Copper"],
  ["Mo", "Molybdenum"],
];

/** One column of mg/L for each of the twelve elements; `help` follows the element's name in the note. */
export function elementColumns(help: string, options: { aside: boolean }): readonly ColumnSpec[] {
  return ELEMENT_NAMES.map(([heading, name]) => ({
    heading,
    kind: "number",
    aliases: heading === "S" ? [name, "Sulphur"] : [name],
    unit: "mg/L",
    ...(options.aside ? { aside: true } : {}),
    help: `${name}, ${help}`,
  }));
}

export const TARGETS: TabSpec = {
  name: "Targets",
  aliases: ["Recipes", "Solutions"],
  key: "Target",
  help: "Nutrient solutions to aim at, elements in mg/L.",
  columns: [
    { heading: "Target", kind: "text", aliases: ["Name", "Solution", "Recipe"], help: "Its name. Each name once." },
    ...elementColumns("wanted in the solution. Blank: not counted. 0: none wanted.", { aside: false }),
    { heading: "Source", kind: "text", aliases: ["Reference"], help: "Where these numbers were published." },
  ],
};
