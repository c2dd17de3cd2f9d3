/** Tables that chemistry reads: ions of a water, elements of a solution, each under any heading that says it plainly. */

import type { IonReport } from "../core/balance.ts";
import { ATOMIC_WEIGHTS } from "../core/elements.ts";
import { BadInput } from "../core/errors.ts";
import {
  CACO3_MG_PER_MEQ,
  COMPOSITION_COLUMNS,
  type Composition,
  type CompositionColumn,
  type CompositionUnit,
  ION_G_MOL,
} from "../core/ions.ts";
import { readNumber } from "../core/reading.ts";
import { sayGiven, sayNumber } from "../core/saying.ts";
import type { Elements } from "../core/solution.ts";
import type { TableRow } from "./record.ts";

const { B, N, P, S } = ATOMIC_WEIGHTS;

/** A heading, and mg of what is wanted in one mg of what stands under it. */
type Way = readonly [heading: string, factor: number];

const ALKALINITY_OF_HCO3 = CACO3_MG_PER_MEQ / ION_G_MOL.HCO3;

/** Besides the ion itself. */
const OTHER_WAYS: Readonly<Partial<Record<CompositionColumn, readonly Way[]>>> = {
  NH4: [["NH4-N", ION_G_MOL.NH4 / N]],
  NO3: [["NO3-N", ION_G_MOL.NO3 / N]],
  SO4: [["S", ION_G_MOL.SO4 / S]],
  PO4: [
    ["PO4-P", ION_G_MOL.PO4 / P],
    ["P", ION_G_MOL.PO4 / P],
  ],
  H3BO3: [["B", ION_G_MOL.H3BO3 / B]],
};

const SOLUTION_WAYS = {
  N: [["N", 1]],
  nitrate: [
    ["NO3-N", 1],
    ["NO3", N / ION_G_MOL.NO3],
  ],
  ammonium: [
    ["NH4-N", 1],
    ["NH4", N / ION_G_MOL.NH4],
  ],
  urea: [["Urea-N", 1]],
  P: [
    ["P", 1],
    ["PO4-P", 1],
    ["PO4", P / ION_G_MOL.PO4],
  ],
  K: [["K", 1]],
  Ca: [["Ca", 1]],
  Mg: [["Mg", 1]],
  S: [
    ["S", 1],
    ["SO4", S / ION_G_MOL.SO4],
  ],
  Na: [["Na", 1]],
  Cl: [["Cl", 1]],
  B: [
    ["B", 1],
    ["H3BO3", B / ION_G_MOL.H3BO3],
  ],
  alkalinity: [["Alkalinity", 1]],
  bicarbonate: [["HCO3", ALKALINITY_OF_HCO3]],
} as const satisfies Readonly<Record<string, readonly Way[]>>;

function waysOf(column: CompositionColumn): readonly Way[] {
  return [[column, 1], ...(OTHER_WAYS[column] ?? [])];
}

/** Headings of a water in ions; HCO3 stands for the alkalinity where that is not given. */
export const ION_HEADINGS: readonly string[] = [
  ...COMPOSITION_COLUMNS.flatMap((column) => waysOf(column).map(([heading]) => heading)),
  "HCO3",
];
/** Headings of a solution in elements. */
export const SOLUTION_HEADINGS: readonly string[] = Object.values(SOLUTION_WAYS).flatMap((ways) =>
  ways.map(([heading]) => heading),
);

/** A kilogram in a litre; anything above is a slip of the pen. */
const MOST_MG_L = 1_000_000;
/** Rounding of two printed forms of the same amount. */
const AGREE = 0.02;

interface AmountWords {
  readonly unit: "mg/L" | "mmol/L" | "meq/L";
  /** Alkalinity falls below 0 in a water with free acid. */
  readonly min?: number;
}

/**
 * The amount under the first of these headings that is filled; null where none is. Throws BadInput for a number that
 * cannot be read or cannot be, and where two headings disagree by more than 2 %.
 */
function readAmount(row: TableRow, ways: readonly Way[], { unit, min = 0 }: AmountWords): number | null {
  const where = row.table.where(row.row);
  let first: { readonly heading: string; readonly given: number; readonly amount: number } | null = null;
  for (const [heading, factor] of ways) {
    const given = readNumber(row.table.cell(row.row, row.table.column(heading)), {
      what: `${heading} in ${where}`,
      unit,
      min,
      max: MOST_MG_L,
    });
    if (given === null) continue;
    const amount = unit === "mg/L" ? given * factor : given;
    if (first === null) first = { heading, given, amount };
    else if (Math.abs(amount - first.amount) > AGREE * Math.max(amount, first.amount)) {
      const said = sayNumber(first.given * (amount / first.amount));
      throw new BadInput(
        "two-values",
        `${heading} in ${where} makes ${said} ${unit} ${first.heading}, but ${first.heading} is ${sayGiven(first.given)} ${unit}. Leave out the wrong one.`,
      );
    }
  }
  return first === null ? null : first.amount;
}

function noAmounts(row: TableRow, headings: readonly string[]): BadInput {
  return new BadInput(
    "no-amounts",
    `There is no amount in ${row.table.where(row.row)}. Fill in one or more of ${headings.join(", ")}.`,
  );
}

/** The composition of one row, in `unit`. Throws BadInput for a row without any amount. */
export function readComposition(row: TableRow, unit: CompositionUnit): Composition {
  const composition: Partial<Record<CompositionColumn, number>> = {};
  const equivalents = unit === "mg/L" ? unit : "meq/L";
  for (const column of COMPOSITION_COLUMNS) {
    const words: AmountWords =
      column === "Alkalinity" ? { unit: equivalents, min: Number.NEGATIVE_INFINITY } : { unit };
    const amount = readAmount(row, waysOf(column), words);
    if (amount !== null) composition[column] = amount;
  }
  if (composition.Alkalinity === undefined) {
    const alkalinity = readAmount(row, SOLUTION_WAYS.bicarbonate, { unit: equivalents });
    if (alkalinity !== null) composition.Alkalinity = alkalinity;
  }
  if (Object.keys(composition).length === 0) throw noAmounts(row, ION_HEADINGS);
  return composition;
}

/** Ions of one row of a water report, mg/L; HCO3 and CO3 count where HCO3 is given, else alkalinity. */
export function readReport(row: TableRow): IonReport {
  const { CO3, Alkalinity, H3BO3: _, ...ions } = readComposition(row, "mg/L");
  const HCO3 = readAmount(row, [["HCO3", 1]], { unit: "mg/L" });
  if (HCO3 !== null) return { ...ions, HCO3, ...(CO3 === undefined ? {} : { CO3 }) };
  if (Alkalinity !== undefined) return { ...ions, alkalinityMgCaCO3L: Alkalinity };
  return CO3 === undefined ? ions : { ...ions, CO3 };
}

/**
 * Elements of one row of a table of solutions, mg/L. Without N its forms add up to it. Throws BadInput for a row
 * without any amount, and for forms that are more than N.
 */
export function readSolution(row: TableRow): Elements {
  const read = (what: keyof typeof SOLUTION_WAYS) => readAmount(row, SOLUTION_WAYS[what], { unit: "mg/L" });
  const amounts: Partial<Record<"N" | "P" | "K" | "Ca" | "Mg" | "S" | "Na" | "Cl" | "B", number>> = {};
  for (const symbol of ["N", "P", "K", "Ca", "Mg", "S", "Na", "Cl", "B"] as const) {
    const amount = read(symbol);
    if (amount !== null) amounts[symbol] = amount;
  }
  const nitrogen = { nitrate: read("nitrate"), ammonium: read("ammonium"), urea: read("urea") };
  const forms = (nitrogen.nitrate ?? 0) + (nitrogen.ammonium ?? 0) + (nitrogen.urea ?? 0);
  if (amounts.N !== undefined && forms > amounts.N * (1 + AGREE)) {
    throw new BadInput(
      "nitrogen-forms",
      `The forms of nitrogen in ${row.table.where(row.row)} add up to ${sayNumber(forms)} mg/L, but N is ${sayGiven(amounts.N)} mg/L. Leave out the wrong one.`,
    );
  }
  if (forms > (amounts.N ?? 0)) amounts.N = forms;
  const alkalinityMgCaCO3L = read("alkalinity") ?? read("bicarbonate");
  if (Object.keys(amounts).length === 0 && alkalinityMgCaCO3L === null) throw noAmounts(row, SOLUTION_HEADINGS);
  return { amounts, nitrogen, ...(alkalinityMgCaCO3L === null ? {} : { alkalinityMgCaCO3L }) };
}
