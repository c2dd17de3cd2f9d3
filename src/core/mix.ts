/** What is in the water after all feeds of a recipe are in it. */

import { nameKey } from "./cell.ts";
import { DOSE_UNITS, type DoseUnit, doseAmounts } from "./dose.ts";
import { type Amounts, type ElementSymbol, SYMBOLS } from "./elements.ts";
import { BadInput } from "./errors.ts";
import { type Feed, feedByName, fieldCell, type NamedFields, type ShelfFeed } from "./feeds.ts";
import { readChoice, readNumber, readText } from "./reading.ts";
import { checkAmounts } from "./waters.ts";

export interface MixPart {
  readonly feed: Feed;
  readonly dose: number;
  readonly unit: DoseUnit;
}

/** mg/L of every element that the water or a feed states. Throws BadInput as checkAmounts and doseAmounts do. */
export function mixAmounts(parts: readonly MixPart[], water: Amounts): Amounts {
  const amounts: Partial<Record<ElementSymbol, number>> = {};
  const add = (some: Amounts) => {
    for (const symbol of SYMBOLS) {
      const amount = some[symbol];
      if (amount !== undefined) amounts[symbol] = (amounts[symbol] ?? 0) + amount;
    }
  };
  checkAmounts(water, "The water");
  add(water);
  for (const { feed, dose, unit } of parts) add(doseAmounts(feed, dose, unit));
  return amounts;
}

/**
 * A recipe from rows with Feed, Dose and Unit (blank: g/L, or mL/L for a liquid). A row without a feed and
 * without a dose is passed over. Throws BadInput, naming the row, for a feed that is not on the shelf or enters
 * no recipe, one named twice, a missing or negative dose.
 */
export function readRecipe(rows: readonly NamedFields[], shelf: readonly ShelfFeed[]): MixPart[] {
  const parts: MixPart[] = [];
  const rowOf = new Map<string, string>();
  for (const { fields, where } of rows) {
    const name = readText(fieldCell(fields, "Feed"), `Feed in ${where}`);
    const dose = readNumber(fieldCell(fields, "Dose"), { what: `Dose in ${where}`, min: 0 });
    if (name === null && dose === null) continue;
    if (name === null) throw new BadInput("no-feed", `There is a dose but no feed in ${where}. Name the feed.`);
    if (dose === null) throw new BadInput("no-dose", `There is no dose of ${name} in ${where}. Give a number, or 0.`);
    const before = rowOf.get(nameKey(name));
    if (before !== undefined) {
      throw new BadInput(
        "feed-twice",
        `${name} stands twice in the recipe, in ${before} and ${where}. Put both doses into one row.`,
      );
    }
    rowOf.set(nameKey(name), where);
    const feed = feedByName(shelf, name);
    const unit = readChoice(fieldCell(fields, "Unit"), { what: `Unit in ${where}`, choices: DOSE_UNITS });
    parts.push({ feed, dose, unit: unit ?? (feed.liquid ? "mL/L" : "g/L") });
  }
  return parts;
}
