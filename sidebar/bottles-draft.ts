/** What was typed about two stock bottles: how many times stronger, and how large. */

import { type Bottles, splitIntoBottles } from "../src/core/bottles.ts";
import { isBadInput } from "../src/core/errors.ts";
import type { Worked } from "./batch.ts";
import { type DraftStorage, isRecord, keptStore, textOf } from "./drafts.ts";
import { dosesOf } from "./mix-state.ts";
import type { Store } from "./store.ts";
import { type Typed, typedNumber } from "./typed.ts";

export interface BottlesDraft {
  readonly factor: string;
  readonly litres: string;
}

const FRESH: BottlesDraft = { factor: "100", litres: "1" };

export function bottlesStore(storage: DraftStorage | null): Store<BottlesDraft> {
  return keptStore<BottlesDraft>(storage, "stillroot.bottles", {
    fresh: () => FRESH,
    read: (kept) =>
      isRecord(kept)
        ? { factor: textOf(kept, "factor", FRESH.factor), litres: textOf(kept, "litres", FRESH.litres) }
        : null,
  });
}

export interface BottlesAnswer {
  readonly factor: Typed;
  readonly litres: Typed;
  readonly bottles: Bottles | null;
  /** Why there are none. */
  readonly problem: string | null;
}

/** Two bottles for the batch on show, from what it takes for a litre. */
export function bottlesFor(worked: Worked, draft: BottlesDraft): BottlesAnswer {
  const factor = typedNumber(draft.factor, { what: "Times stronger", min: 2, max: 2000 });
  const litres = typedNumber(draft.litres, { what: "The bottle", unit: "L", min: 0.05, max: 100 });
  const nothing = { factor, litres, bottles: null };
  if (factor.value === null || litres.value === null) return { ...nothing, problem: null };
  try {
    const bottles = splitIntoBottles({
      doses: dosesOf(worked),
      factor: factor.value,
      bottleLitres: litres.value,
      water: worked.water?.amounts ?? {},
    });
    return { ...nothing, bottles, problem: null };
  } catch (error) {
    if (isBadInput(error)) return { ...nothing, problem: error.message };
    throw error;
  }
}
