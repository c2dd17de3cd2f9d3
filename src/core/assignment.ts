/** Who gets what in a trial: pairs of plants that are alike, and the groups that a recorded draw makes. */

import { nameKey } from "./cell.ts";
import { randomOf, shuffled } from "./random.ts";
import type { Design } from "./trial-power.ts";

export interface TrialPlant {
  readonly plant: string;
  readonly kind: string;
  readonly place: string;
  readonly potMl: number | null;
}

export interface Pair {
  /** In the order of their names, so that a draw can be repeated from the names alone. */
  readonly first: string;
  readonly second: string;
  /** In what they differ: "kind", "place", "pot". */
  readonly differs: readonly string[];
}

export interface Pairing {
  /** Most alike first. */
  readonly pairs: readonly Pair[];
  /** The odd one out of an odd number of plants; it stays outside the trial. */
  readonly left: string | null;
}

export interface Groups {
  /** For pairs, a[k] and b[k] belong together. */
  readonly a: readonly string[];
  readonly b: readonly string[];
}

/** How unlike two plants are; a kind weighs more than a place, a place more than a pot. Our own choice. */
const KIND_WEIGHT = 4;
const PLACE_WEIGHT = 2;
/** A pot of eight times the size is as unlike as can be; one of unknown size like one of twice the size. */
const MOST_DOUBLINGS = 3;
const UNKNOWN_DOUBLINGS = 1;
/** Pots up to this many doublings apart are called alike. */
const ALIKE_DOUBLINGS = 0.5;

function byName(a: string, b: string): number {
  const [x, y] = [nameKey(a), nameKey(b)];
  return x < y ? -1 : x > y ? 1 : 0;
}

function unlike(a: TrialPlant, b: TrialPlant): { readonly weight: number; readonly differs: readonly string[] } {
  const kind = nameKey(a.kind) === "" || nameKey(a.kind) !== nameKey(b.kind);
  const place = nameKey(a.place) === "" || nameKey(a.place) !== nameKey(b.place);
  const [one, other] = [a.potMl ?? 0, b.potMl ?? 0];
  const known = one > 0 && other > 0;
  const doublings = known ? Math.abs(Math.log2(one / other)) : UNKNOWN_DOUBLINGS;
  const differs = [
    ...(kind ? ["kind"] : []),
    ...(place ? ["place"] : []),
    ...(known && doublings <= ALIKE_DOUBLINGS ? [] : ["pot"]),
  ];
  const weight = (kind ? KIND_WEIGHT : 0) + (place ? PLACE_WEIGHT : 0) + Math.min(doublings, MOST_DOUBLINGS);
  return { weight, differs };
}

/** Pairs the plants, the two most alike by kind, place and pot first, then the next two of those that are left. */
export function proposePairs(plants: readonly TrialPlant[]): Pairing {
  const sorted = plants.slice().sort((a, b) => byName(a.plant, b.plant));
  const all = sorted.flatMap((first, at) =>
    sorted.slice(at + 1).map((second) => ({ first, second, ...unlike(first, second) })),
  );
  all.sort((a, b) => a.weight - b.weight);
  const free = new Set(sorted.map(({ plant }) => plant));
  const pairs: Pair[] = [];
  for (const { first, second, differs } of all) {
    if (!free.has(first.plant) || !free.has(second.plant)) continue;
    free.delete(first.plant);
    free.delete(second.plant);
    pairs.push({ first: first.plant, second: second.plant, differs });
  }
  const [left = null] = free;
  return { pairs, left };
}

/**
 * Draws which plant of each pair gets it, in the order of the pairs: 0 of `below(2)` is the one whose name comes
 * first. Throws BadInput for a draw that is no whole number from 0 to 99,999,999.
 */
export function drawPairs(pairs: readonly (readonly [string, string])[], draw: number): Groups {
  const random = randomOf(draw);
  const drawn = pairs.map((pair) => {
    const [first, second] = pair.slice().sort(byName) as [string, string];
    return random.below(2) === 0 ? ([first, second] as const) : ([second, first] as const);
  });
  return { a: drawn.map(([a]) => a), b: drawn.map(([, b]) => b) };
}

/** Draws half of the plants, rounded up: the names in order, shuffled, the first half gets it. Throws as drawPairs does. */
export function drawTogether(plants: readonly string[], draw: number): Groups {
  const order = shuffled(plants.slice().sort(byName), randomOf(draw));
  const half = Math.ceil(order.length / 2);
  return { a: order.slice(0, half).sort(byName), b: order.slice(half).sort(byName) };
}

/** Whether the recorded draw gives these very groups. */
export function drawRepeats({ a, b }: Groups, design: Design, draw: number): boolean {
  const again =
    design === "Pairs"
      ? drawPairs(
          a.map((plant, k) => [plant, b[k] ?? ""] as const),
          draw,
        )
      : drawTogether([...a, ...b], draw);
  const same = (x: readonly string[], y: readonly string[]) =>
    x.length === y.length && x.every((plant, k) => nameKey(plant) === nameKey(y[k] ?? ""));
  if (design === "Pairs") return a.length === b.length && same(again.a, a);
  return same(again.a, a.slice().sort(byName));
}
