/** Waters and targets as rows of numbers: what is in the water already, and what should be. */

import { type Amounts, ATOMIC_WEIGHTS, ELEMENTS, type ElementSymbol, SYMBOLS } from "./elements.ts";
import { BadInput } from "./errors.ts";
import { type Fields, fieldCell } from "./feeds.ts";
import { checkNumber, readNumber, readText } from "./reading.ts";
import { sayGiven, sayNumber } from "./saying.ts";

export interface Water {
  readonly name: string;
  /** mg/L of the element; nitrate as N, sulfate as S. */
  readonly amounts: Amounts;
  /** mg/L as CaCO3. */
  readonly alkalinityMgCaCO3L: number | null;
  /** mS/cm at 25 °C. */
  readonly ecMsCm: number | null;
  readonly pH: number | null;
}

export interface Target {
  readonly name: string;
  /** mg/L of the element; 0 is wanted to be 0, an element that is not there is not counted. */
  readonly wanted: Amounts;
}

/** Share of sulfate that is sulfur, from the atomic weights. */
export const SULFUR_IN_SULFATE = ATOMIC_WEIGHTS.S / (ATOMIC_WEIGHTS.S + 4 * ATOMIC_WEIGHTS.O);

/** A kilogram in a litre; anything above is a slip of the pen. */
const MOST_MG_L = 1_000_000;
/** Sea water is about 54 mS/cm; 650 is µS/cm. */
const MOST_MS_CM = 100;

/** Refuses amounts that no water holds: below 0 or above a kilogram in a litre. `what`: "The water", "The target". */
export function checkAmounts(amounts: Amounts, what: string): void {
  for (const symbol of SYMBOLS) {
    const amount = amounts[symbol];
    if (amount === undefined) continue;
    checkNumber(amount, { what: `${what}: ${symbol}`, unit: "mg/L", min: 0, max: MOST_MG_L });
  }
}

function readAmount(fields: Fields, heading: string, where: string): number | null {
  return readNumber(fieldCell(fields, heading), {
    what: `${heading} in ${where}`,
    unit: "mg/L",
    min: 0,
    max: MOST_MG_L,
  });
}

/** One number for what may be printed in two ways; refused when both are there and differ by more than 2 %. */
function oneOf(element: [string, number | null], other: [string, number | null], where: string): number | null {
  const [heading, direct] = element;
  const [otherHeading, converted] = other;
  if (direct === null) return converted;
  if (converted === null) return direct;
  if (Math.abs(direct - converted) > 0.02 * Math.max(direct, converted)) {
    throw new BadInput(
      "two-values",
      `${otherHeading} in ${where} makes ${sayNumber(converted)} mg/L ${heading}, but ${heading} is ${sayGiven(direct)} mg/L. Leave out the wrong one.`,
    );
  }
  return direct;
}

/**
 * A row of the Waters tab: NO3-N counts as N, SO4 is sulfate and counts as S, the other columns are elements.
 * Throws BadInput, naming the column and the row, for a number that cannot be read or cannot be.
 */
export function readWater(fields: Fields, where: string): Water {
  const amounts: Partial<Record<ElementSymbol, number>> = {};
  for (const symbol of SYMBOLS) {
    let amount = readAmount(fields, symbol, where);
    if (symbol === "N") amount = oneOf(["N", amount], ["NO3-N", readAmount(fields, "NO3-N", where)], where);
    if (symbol === "S") {
      const sulfate = readAmount(fields, "SO4", where);
      amount = oneOf(["S", amount], ["SO4", sulfate === null ? null : sulfate * SULFUR_IN_SULFATE], where);
    }
    if (amount !== null) amounts[symbol] = amount;
  }
  return {
    name: readText(fieldCell(fields, "Water"), `Water in ${where}`) ?? "",
    amounts,
    alkalinityMgCaCO3L: readAmount(fields, "Alkalinity", where),
    ecMsCm: readNumber(fieldCell(fields, "EC"), { what: `EC in ${where}`, unit: "mS/cm", min: 0, max: MOST_MS_CM }),
    pH: readNumber(fieldCell(fields, "pH"), { what: `pH in ${where}`, min: 0, max: 14 }),
  };
}

/**
 * A row of the Targets tab, elemental mg/L. Throws BadInput for a number that cannot be read, and for a row
 * without any number.
 */
export function readTarget(fields: Fields, where: string): Target {
  const name = readText(fieldCell(fields, "Target"), `Target in ${where}`) ?? "";
  const wanted: Partial<Record<ElementSymbol, number>> = {};
  for (const symbol of SYMBOLS) {
    const amount = readAmount(fields, symbol, where);
    if (amount !== null) wanted[symbol] = amount;
  }
  if (Object.keys(wanted).length === 0) {
    throw new BadInput(
      "empty-target",
      `The target in ${where} has no numbers. Fill in mg/L under ${ELEMENTS.join(" ")}.`,
    );
  }
  return { name, wanted };
}
