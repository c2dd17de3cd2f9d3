/** How fields of a label are said: "nitrogen N 10 %, nitrate NO3-N 6 %". */

import type { LabelTerm } from "../src/core/analysis.ts";
import { ELEMENT_NAMES, type ElementSymbol } from "../src/core/elements.ts";
import type { LabelFields } from "../src/core/label-draft.ts";
import { sayGiven } from "../src/core/saying.ts";

const TERM_NAMES: Readonly<Record<Exclude<LabelTerm, ElementSymbol>, string>> = {
  P2O5: "phosphate",
  K2O: "potash",
  CaO: "calcium oxide",
  MgO: "magnesium oxide",
  SO3: "sulfur trioxide",
  Na2O: "sodium oxide",
  SiO2: "silica",
  "NO3-N": "nitrate nitrogen",
  "NH4-N": "ammonium nitrogen",
  "Urea-N": "urea nitrogen",
  "Other-N": "other nitrogen",
};

const NAMES: Readonly<Record<string, string>> = { ...ELEMENT_NAMES, ...TERM_NAMES };

/** A percent as a person writes it: what came from mg/kg has no tail of binary digits. */
const sayPercent = (value: number): string => sayGiven(Number(value.toPrecision(6)));

export function sayField(heading: string, value: number | string): string {
  if (heading === "Basis") return value === "w/v" ? "percent by volume" : "percent by weight";
  if (typeof value === "string") return `${heading} ${value}`;
  if (heading === "Density") return `density ${sayPercent(value)} g/mL`;
  return `${NAMES[heading] ?? ""} ${heading} ${sayPercent(value)} %`.trim();
}

export function sayFields(fields: LabelFields): string {
  return Object.entries(fields)
    .map(([heading, value]) => sayField(heading, value))
    .join(", ");
}
