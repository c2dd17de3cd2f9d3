/** Doses that a person types: in which units, how much for a litre, and what they add up to. */

import { amountsPerUnit, DOSE_UNITS, type DoseUnit, measureUnit } from "../src/core/dose.ts";
import { SYMBOLS } from "../src/core/elements.ts";
import { isBadInput } from "../src/core/errors.ts";
import type { Feed } from "../src/core/feeds.ts";
import { mixAmounts } from "../src/core/mix.ts";
import type { Worked } from "./batch.ts";
import type { BatchDraft } from "./batch-draft.ts";
import type { Choice } from "./choices.ts";
import { type Typed, typedNumber } from "./typed.ts";

/** More than this a person does not dose; it also settles what "1.234" means. */
const MOST_DOSE = 500;

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

export function typedDoses(draft: BatchDraft, feeds: readonly Feed[]): Record<string, Typed> {
  const doses: Record<string, Typed> = {};
  for (const feed of feeds) {
    const unit = unitOfDose(draft, feed);
    doses[feed.name] = typedNumber(draft.doses[feed.name] ?? "", { what: "The dose", unit, min: 0, max: MOST_DOSE });
  }
  return doses;
}

/** What was chosen, once nothing is missing. */
export type Chosen = Pick<Worked, "feeds" | "doses" | "target" | "litres"> & { readonly water: Choice };

/** What a way of working out a batch gives; the rest is as before. */
export type Result = Partial<Worked> & { readonly missing: string | null };

export function typedResult(draft: BatchDraft, { water, feeds, doses, litres }: Chosen): Result {
  const parts = feeds.flatMap((feed) => {
    const dose = doses[feed.name]?.value ?? null;
    return dose === null ? [] : [{ feed, dose, unit: unitOfDose(draft, feed) }];
  });
  return {
    missing: parts.length === 0 ? "Type a dose for each feed." : null,
    lines: parts.map(({ feed, dose, unit }) => {
      const perLitre = perLitreOf(feed, dose, unit);
      const perBatch = litres.value === null || litres.value === 0 ? null : perLitre * litres.value;
      return { feed: feed.name, perLitre, unit: measureUnit(feed), perBatch, measuredBy: null, how: "", stock: null };
    }),
    reached: mixAmounts(parts, water.amounts),
    uncounted: feeds.filter((feed) => !parts.some((part) => part.feed === feed)).map(({ name }) => name),
  };
}
