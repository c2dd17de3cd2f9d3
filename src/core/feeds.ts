/** Feeds as they stand on the shelf: a row of the Feeds tab becomes a feed, or a reason why it enters no recipe. */

import { LABEL_TERMS, type Label, type LabelTerm, labelFrom } from "./analysis.ts";
import { type Cell, nameKey, readCell } from "./cell.ts";
import { BadInput, isBadInput } from "./errors.ts";
import { checkNumber, readChoice, readNumber, readText, readYesNo } from "./reading.ts";

/** A row by our own headings of a tab; a blank cell is not there. */
export type Fields = Readonly<Record<string, string | number | boolean | undefined>>;

export interface Feed {
  readonly name: string;
  readonly label: Label;
  /** g/mL; null when not known, as with most solids. */
  readonly densityGPerMl: number | null;
  /** Dosed in mL; otherwise in g. */
  readonly liquid: boolean;
}

export interface ShelfFeed {
  readonly name: string;
  /** Null when the feed may not enter a recipe. */
  readonly feed: Feed | null;
  /** The sentence that says why not. */
  readonly reason: string | null;
}

export interface NamedFields {
  readonly fields: Fields;
  /** Where the row stands, for sentences: "row 7 of Feeds". */
  readonly where: string;
}

/** A field as a cell. Days come as ISO texts, so there is no date value to read. */
export function fieldCell(fields: Fields, heading: string): Cell {
  return readCell(fields[heading], () => null);
}

/** Anything from light powders to concentrated acids (sulfuric 95 % is 1.84 g/mL). */
const DENSITY = { unit: "g/mL", min: 0.3, max: 3 };

/** A density, or null for a blank cell. Throws BadInput outside 0.3 to 3 g/mL. */
export function readDensity(cell: Cell, what: string): number | null {
  return readNumber(cell, { what, ...DENSITY });
}

/** A feed from a label; a liquid has a density or a w/v label. Throws BadInput for a density outside 0.3 to 3 g/mL. */
export function feedOf(name: string, label: Label, densityGPerMl: number | null): Feed {
  if (densityGPerMl !== null) checkNumber(densityGPerMl, { what: `The density of ${name}`, ...DENSITY });
  return { name, label, densityGPerMl, liquid: densityGPerMl !== null || label.basis === "w/v" };
}

/** Common practice, no source: an organic feed needs soil life and fouls a reservoir. */
function organicReason(name: string): string {
  return `${name} is organic: it feeds only where a soil's life breaks it down, and it fouls a reservoir. It may stand on the shelf but enters no recipe.`;
}

function readFeed({ fields, where }: NamedFields, name: string): Feed | string {
  const at = (heading: string) => `${heading} in ${where}`;
  const origin = readChoice(fieldCell(fields, "Origin"), {
    what: at("Origin"),
    choices: ["mineral", "organic", "organic-mineral"],
  });
  if (origin === "organic" || origin === "organic-mineral") return organicReason(name);
  const published = readYesNo(fieldCell(fields, "Analysis published"), at("Analysis published"));
  if (published === false) {
    return `${name} has no published analysis, so nobody can say what a dose of it brings. It may stand on the shelf but enters no recipe.`;
  }
  const basis = readChoice(fieldCell(fields, "Basis"), { what: at("Basis"), choices: ["w/w", "w/v"] }) ?? "w/w";
  const densityGPerMl = readDensity(fieldCell(fields, "Density"), at("Density"));
  const printed = new Map<LabelTerm, number>();
  let any = false;
  for (const term of LABEL_TERMS) {
    const percent = readNumber(fieldCell(fields, term), { what: at(term), unit: "%", min: 0, max: 100 });
    if (percent === null) continue;
    printed.set(term, percent);
    any = any || percent > 0;
  }
  if (!any) {
    return `${name} has nothing on its label in ${where}. Fill in the printed analysis before it enters a recipe.`;
  }
  return feedOf(name, labelFrom(printed, { basis, densityGPerMl, what: `The label of ${name}` }), densityGPerMl);
}

/**
 * A row of the Feeds tab. Never throws: what cannot be used comes back with its reason. P and K are elements,
 * P2O5 and K2O oxides; a blank Basis is w/w; a feed with a density or a w/v label is a liquid.
 */
export function readShelfFeed(fields: Fields, where: string): ShelfFeed {
  let name = "";
  try {
    name = readText(fieldCell(fields, "Feed"), `Feed in ${where}`)?.trim() ?? "";
    if (name === "") return { name, feed: null, reason: `There is no name in the column Feed, ${where}.` };
    const feed = readFeed({ fields, where }, name);
    return typeof feed === "string" ? { name, feed: null, reason: feed } : { name, feed, reason: null };
  } catch (error) {
    if (!isBadInput(error)) throw error;
    return { name, feed: null, reason: error.message };
  }
}

/** All rows of a shelf. Feeds that share a name enter no recipe, for nobody could tell which is meant. */
export function readShelf(rows: readonly NamedFields[]): ShelfFeed[] {
  const shelf = rows.map(({ fields, where }) => readShelfFeed(fields, where));
  const firstRow = new Map<string, number>();
  const twins = new Map<number, string>();
  shelf.forEach(({ name }, index) => {
    if (name === "") return;
    const first = firstRow.get(nameKey(name));
    if (first === undefined) {
      firstRow.set(nameKey(name), index);
      return;
    }
    const both = `Two feeds are called ${name} (${rows[first]?.where} and ${rows[index]?.where}). Give one of them another name.`;
    twins.set(index, both);
    if (!twins.has(first)) twins.set(first, both);
  });
  return shelf.map((entry, index) => {
    const reason = twins.get(index);
    return reason === undefined ? entry : { name: entry.name, feed: null, reason };
  });
}

/** The feed of that name, case and surrounding spaces ignored. Throws BadInput when it is not there or enters no recipe. */
export function feedByName(shelf: readonly ShelfFeed[], name: string): Feed {
  const key = nameKey(name);
  const found = shelf.find((entry) => nameKey(entry.name) === key);
  if (found === undefined) {
    throw new BadInput(
      "unknown-feed",
      `"${name}" is no feed on the shelf. Write the name as it stands in the column Feed.`,
    );
  }
  if (found.feed === null) throw new BadInput("feed-not-usable", found.reason ?? `${found.name} enters no recipe.`);
  return found.feed;
}
