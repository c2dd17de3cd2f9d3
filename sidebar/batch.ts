/** What is being put together in "Mix a batch": read from the draft, worked out at every key. */

import type { Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { amountsPerUnit, DOSE_UNITS, type DoseUnit, measureUnit } from "../src/core/dose.ts";
import { type Amounts, SYMBOLS } from "../src/core/elements.ts";
import { isBadInput } from "../src/core/errors.ts";
import { type Feed, readShelf, type ShelfFeed } from "../src/core/feeds.ts";
import { mixAmounts } from "../src/core/mix.ts";
import { sayList } from "../src/core/saying.ts";
import { type NotReached, solveDoses } from "../src/core/solve.ts";
import type { BatchDraft } from "./batch-draft.ts";
import { type Choice, chosen, targetChoices, waterChoices } from "./choices.ts";
import { type Typed, typedNumber } from "./typed.ts";

/** What can be chosen, read once after each load. */
export interface Shelf {
  readonly feeds: readonly ShelfFeed[];
  readonly waters: readonly Choice[];
  readonly targets: readonly Choice[];
}

export interface DoseLine {
  readonly feed: string;
  /** Of `unit` for each litre. */
  readonly perLitre: number;
  readonly unit: "g" | "mL";
}

export interface Worked {
  readonly litres: Typed;
  readonly water: Choice | null;
  readonly target: Choice | null;
  readonly feeds: readonly Feed[];
  /** What is still to be chosen or typed before there is a result: "Choose a water." */
  readonly missing: string | null;
  /** Why there is no result although everything was chosen. */
  readonly problem: string | null;
  /** One for each chosen feed with a dose, also those of 0; empty while something is missing. */
  readonly lines: readonly DoseLine[];
  /** mg/L; null while something is missing. */
  readonly reached: Amounts | null;
  /** What cannot be reached and why. */
  readonly notReached: readonly NotReached[];
  /** Chosen feeds that are not in `lines`, as their dose is blank or cannot be read. */
  readonly uncounted: readonly string[];
  /** Feed → what is wrong with the dose typed for it. */
  readonly doses: Readonly<Record<string, Typed>>;
}

export function readChoices(loaded: Pick<Loaded, "feeds" | "waters" | "targets">): Shelf {
  return {
    feeds: readShelf(loaded.feeds.map(({ row, fields }) => ({ fields, where: `row ${row} of Feeds` }))).filter(
      ({ name }) => name !== "",
    ),
    waters: waterChoices(loaded.waters),
    targets: targetChoices(loaded.targets),
  };
}

/** The feeds of the draft that may enter a recipe; one that left the shelf meanwhile is no longer chosen. */
export function chosenFeeds(draft: Pick<BatchDraft, "feeds">, shelf: Shelf): readonly Feed[] {
  const keys = new Set(draft.feeds.map(nameKey));
  return shelf.feeds.flatMap(({ feed, name }) => (feed !== null && keys.has(nameKey(name)) ? [feed] : []));
}

/** The units in which a dose of `feed` can be given; a volume of a solid needs a density. */
export function unitsFor(feed: Feed): readonly DoseUnit[] {
  return DOSE_UNITS.filter((unit) => {
    try {
      amountsPerUnit(feed, unit);
      return true;
    } catch (error) {
      if (!isBadInput(error)) throw error;
      return false;
    }
  });
}

export function unitOfDose(draft: Pick<BatchDraft, "units">, feed: Feed): DoseUnit {
  const units = unitsFor(feed);
  return units.find((unit) => unit === draft.units[feed.name]) ?? (feed.liquid ? "mL/L" : "g/L");
}

/** g or mL of `feed` for each litre, as it is measured out, for `dose` in `unit`. */
export function perLitreOf(feed: Feed, dose: number, unit: DoseUnit): number {
  const base: DoseUnit = measureUnit(feed) === "mL" ? "mL/L" : "g/L";
  if (unit === base) return dose;
  // Both bring the same elements, so any element on the label gives the ratio; a feed on the shelf has one.
  const symbol = SYMBOLS.find((one) => (feed.label.percent[one] ?? 0) > 0);
  if (symbol === undefined) return 0;
  return (dose * (amountsPerUnit(feed, unit)[symbol] ?? 0)) / (amountsPerUnit(feed, base)[symbol] ?? 1);
}

/** More than this a person does not mix at once; it also settles what "1.234" means. */
const MOST_LITRES = 1000;
const MOST_DOSE = 500;

export function work(draft: BatchDraft, shelf: Shelf): Worked {
  const water = chosen(shelf.waters, draft.water);
  const target = chosen(shelf.targets, draft.target);
  const feeds = chosenFeeds(draft, shelf);
  const doses = draft.mode === "doses" ? typedDoses(draft, feeds) : {};
  const basis = {
    litres: typedNumber(draft.litres, { what: "The batch", unit: "L", min: 0, max: MOST_LITRES }),
    water,
    target,
    feeds,
    doses,
    lines: [],
    reached: null,
    notReached: [],
    uncounted: [],
    problem: null,
  };
  const toChoose = [
    ...(water === null ? ["a water"] : []),
    ...(target === null && draft.mode === "target" ? ["a target"] : []),
    ...(feeds.length === 0 ? ["at least one feed"] : []),
  ];
  if (water === null || toChoose.length > 0) return { ...basis, missing: `Choose ${sayList(toChoose, "and")}.` };
  try {
    return { ...basis, ...result(draft, { water, target, feeds, doses }) };
  } catch (error) {
    if (error instanceof Error) return { ...basis, missing: null, problem: error.message };
    throw error;
  }
}

function typedDoses(draft: BatchDraft, feeds: readonly Feed[]): Record<string, Typed> {
  const doses: Record<string, Typed> = {};
  for (const feed of feeds) {
    const unit = unitOfDose(draft, feed);
    doses[feed.name] = typedNumber(draft.doses[feed.name] ?? "", { what: "The dose", unit, min: 0, max: MOST_DOSE });
  }
  return doses;
}

function result(
  draft: BatchDraft,
  { water, target, feeds, doses }: Pick<Worked, "feeds" | "doses" | "target"> & { readonly water: Choice },
): Pick<Worked, "lines" | "reached" | "notReached" | "uncounted"> & { missing: string | null } {
  const inWater = water.amounts;
  if (draft.mode === "doses") {
    const parts = feeds.flatMap((feed) => {
      const dose = doses[feed.name]?.value ?? null;
      return dose === null ? [] : [{ feed, dose, unit: unitOfDose(draft, feed) }];
    });
    return {
      missing: parts.length === 0 ? "Type a dose for each feed." : null,
      lines: parts.map(({ feed, dose, unit }) => ({
        feed: feed.name,
        perLitre: perLitreOf(feed, dose, unit),
        unit: measureUnit(feed),
      })),
      reached: mixAmounts(parts, inWater),
      notReached: [],
      uncounted: feeds.filter((feed) => !parts.some((part) => part.feed === feed)).map(({ name }) => name),
    };
  }
  const solved = solveDoses({ wanted: target?.amounts ?? {}, feeds, water: inWater });
  return {
    missing: null,
    lines: solved.doses.map(({ feed, perLitre, unit }) => ({ feed: feed.name, perLitre, unit })),
    reached: solved.reached,
    notReached: solved.notReached,
    uncounted: [],
  };
}
