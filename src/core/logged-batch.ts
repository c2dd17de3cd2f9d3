/** A batch as its row in the log has it: the feeds as they stand on the shelf now, and all else that was in the water. */

import { nameKey } from "./cell.ts";
import type { LoggedDose } from "./dose-text.ts";
import { type Amounts, ELEMENT_NAMES, ELEMENTS, type ElementSymbol } from "./elements.ts";
import { isBadInput } from "./errors.ts";
import type { Feed, ShelfFeed } from "./feeds.ts";
import { type Mixture, type MixtureDose, mixtureOf } from "./mixture.ts";
import { sayList } from "./saying.ts";

export interface LoggedBatch {
  readonly doses: readonly LoggedDose[];
  /** mg/L of the whole batch as logged, acid included; without an element, nothing was logged. */
  readonly reached: Amounts;
  /** The text of the column Acid. */
  readonly acid: string;
}

export interface Rebuilt {
  /** Feeds that still are what the log says they were. */
  readonly doses: readonly MixtureDose[];
  /** mg/L of all else: water, acid and the feeds that are not in `doses`. */
  readonly rest: Amounts;
  /** Whole sentences on feeds for which no slip can be worked out. */
  readonly unchecked: readonly string[];
}

/** The log keeps six figures; a label that was retyped differs by more than this, a rounded dose by less. */
const SAME_SHARE = 0.03;
const SAME_MG_L = 1;

/** Elements that an acid or a base of the trade brings into the batch, by its name; all four where the name is not known. */
const ACIDS: readonly (readonly [name: RegExp, brings: readonly ElementSymbol[]])[] = [
  [/phosphoric/i, ["P"]],
  [/nitric/i, ["N"]],
  [/sulfuric|sulphuric/i, ["S"]],
  [/citric/i, []],
  [/potassium/i, ["K"]],
];

function fromAcid(acid: string): readonly ElementSymbol[] {
  if (acid.trim() === "") return [];
  return ACIDS.find(([name]) => name.test(acid))?.[1] ?? ["N", "P", "K", "S"];
}

/** The feed if it can be dosed in the unit that was logged; else the sentence that says why not. */
function stillThere(dose: LoggedDose, shelf: readonly ShelfFeed[]): Feed | string {
  const entry = shelf.find(({ name }) => nameKey(name) === nameKey(dose.feed));
  const cannot = "so whether it went in twice or was left out cannot be checked.";
  if (entry === undefined) return `${dose.feed} is no longer on the shelf, ${cannot}`;
  if (entry.feed === null) return `${dose.feed} may no longer enter a recipe, ${cannot}`;
  if (entry.feed.liquid !== (dose.unit === "mL")) {
    return `${dose.feed} was measured in ${dose.unit} and now counts in ${entry.feed.liquid ? "mL" : "g"}, ${cannot}`;
  }
  try {
    mixtureOf([{ feed: entry.feed, perLitre: dose.perLitre }], {});
    return entry.feed;
  } catch (error) {
    if (isBadInput(error)) return `${error.message} Until then, ${dose.feed} cannot be checked.`;
    throw error;
  }
}

/**
 * Elements of which water and feeds, as they are now, come to another amount than the log has. `whole`: all feeds and
 * the water are in `now`.
 */
export function differing(
  now: Mixture,
  { reached, acid }: Pick<LoggedBatch, "reached" | "acid">,
  whole: boolean,
): ElementSymbol[] {
  const besides = fromAcid(acid);
  return ELEMENTS.filter((symbol) => {
    const logged = reached[symbol];
    if (logged === undefined) return false;
    const off = (now.amounts[symbol] ?? 0) - logged;
    if (Math.abs(off) <= Math.max(SAME_SHARE * logged, SAME_MG_L)) return false;
    // Less than was logged proves nothing where an acid, or a feed that is gone, may have brought the rest.
    return off > 0 || (whole && !besides.includes(symbol));
  });
}

/**
 * What the log says of a batch, as far as the shelf can still tell it apart. `water`: mg/L of its water as it stands
 * on the Waters tab, null where it is not there any more.
 */
export function rebuildBatch(batch: LoggedBatch, shelf: readonly ShelfFeed[], water: Amounts | null): Rebuilt {
  const unchecked: string[] = [];
  const found: MixtureDose[] = [];
  for (const dose of batch.doses) {
    const feed = stillThere(dose, shelf);
    if (typeof feed === "string") unchecked.push(feed);
    else found.push({ feed, perLitre: dose.perLitre });
  }
  if (Object.keys(batch.reached).length === 0) return { doses: found, rest: water ?? {}, unchecked };
  const whole = unchecked.length === 0 && water !== null;
  const changed = differing(mixtureOf(found, water ?? {}), batch, whole);
  const brings = ({ feed }: MixtureDose) => changed.filter((symbol) => (feed.label.percent[symbol] ?? 0) > 0);
  const doses = found.filter((dose) => brings(dose).length === 0);
  for (const dose of found) {
    const symbols = brings(dose);
    if (symbols.length === 0) continue;
    const names = sayList(
      symbols.map((symbol) => ELEMENT_NAMES[symbol]),
      "and",
    );
    unchecked.push(
      `The log has another amount of ${names} than shelf and water now come to, so whether ${dose.feed.name} went in twice or was left out cannot be checked.`,
    );
  }
  return { doses, rest: restOf(batch.reached, mixtureOf(doses, {}).amounts, water ?? {}), unchecked };
}

/** Logged less what the feeds bring; Na, Cl and Si, which the log does not have, as in the water. */
function restOf(reached: Amounts, fed: Amounts, water: Amounts): Amounts {
  const rest: Partial<Record<ElementSymbol, number>> = {};
  for (const symbol of Object.keys(water) as ElementSymbol[]) {
    if (reached[symbol] === undefined) rest[symbol] = water[symbol] ?? 0;
  }
  for (const symbol of ELEMENTS) {
    const logged = reached[symbol];
    if (logged !== undefined) rest[symbol] = Math.max(logged - (fed[symbol] ?? 0), 0);
  }
  return rest;
}

/** Litres that this household fills besides `litres`, most often first; at most `most`. */
export function usualLitres(all: readonly number[], litres: number, most: number): number[] {
  const counts = new Map<number, number>();
  for (const one of all) {
    // Beyond a quarter or four times, nobody takes one vessel for the other.
    if (one > 0 && one !== litres && one >= litres / 4 && one <= litres * 4)
      counts.set(one, (counts.get(one) ?? 0) + 1);
  }
  return [...counts]
    .sort((a, b) => b[1] - a[1])
    .slice(0, most)
    .map(([one]) => one);
}
