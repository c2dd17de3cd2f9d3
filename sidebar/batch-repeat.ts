/** An old batch at another volume: doses for a litre as they were, measured out with today's tools. */

import type { Amounts, ElementSymbol } from "../src/core/elements.ts";
import { isBadInput } from "../src/core/errors.ts";
import type { Feed } from "../src/core/feeds.ts";
import { gridOf, nearest } from "../src/core/grid.ts";
import { mixtureOf } from "../src/core/mixture.ts";
import { sayGiven, sayNumber } from "../src/core/saying.ts";
import type { DoseLine } from "./batch.ts";
import type { Shelf } from "./batch-shelf.ts";
import type { Result } from "./batch-typed.ts";
import { type Measuring, type Way, wayOf } from "./measuring-ways.ts";
import { changesSince, type PastBatch } from "./past-batch.ts";

/** Measuring that moves a dose by more than this is told. */
const MOVED_BY = 0.02;

function wayOrNone(feed: Feed | null, measuring: Measuring): Way | null {
  if (feed === null || measuring.by === "any") return null;
  try {
    return wayOf(feed, measuring);
  } catch (error) {
    if (isBadInput(error)) return null;
    throw error;
  }
}

function lineOf(
  dose: PastBatch["doses"][number],
  litres: number | null,
  way: Way | null,
): { readonly line: DoseLine; readonly moved: string | null } {
  const { feed, perLitre, unit } = dose;
  const plain = { feed, perLitre, unit, measuredBy: null, how: "", stock: null };
  if (litres === null) return { line: { ...plain, perBatch: null }, moved: null };
  const wanted = perLitre * litres;
  if (way === null) return { line: { ...plain, perBatch: wanted }, moved: null };
  const grid = gridOf(way.measure, feed);
  const perBatch = grid.at(nearest(grid, wanted));
  const off = wanted > 0 ? perBatch / wanted - 1 : 0;
  const moved =
    Math.abs(off) <= MOVED_BY
      ? null
      : `${sayNumber(wanted)} ${unit} of ${feed} cannot be measured: ${sayGiven(perBatch)} ${unit} is ${sayNumber(100 * Math.abs(off))} % ${off > 0 ? "more" : "less"}.`;
  const line = { ...plain, perLitre: perBatch / litres, perBatch, measuredBy: way.kind, how: way.words(perBatch) };
  return { line: { ...line, stock: way.stock }, moved };
}

/** mg/L as logged, moved by what measuring changes. */
function reachedNow(past: PastBatch, lines: readonly DoseLine[], feeds: readonly (Feed | null)[]): Amounts {
  const reached: Partial<Record<ElementSymbol, number>> = { ...past.reached };
  const of = (at: number, perLitre: number): Amounts => {
    const feed = feeds[at];
    return feed == null ? {} : mixtureOf([{ feed, perLitre }], {}).amounts;
  };
  past.doses.forEach(({ perLitre }, at) => {
    const before = of(at, perLitre);
    const now = of(at, lines[at]?.perLitre ?? perLitre);
    for (const symbol of Object.keys(before) as ElementSymbol[]) {
      const moved = (now[symbol] ?? 0) - (before[symbol] ?? 0);
      if (reached[symbol] !== undefined) reached[symbol] = Math.max((reached[symbol] ?? 0) + moved, 0);
    }
  });
  return reached;
}

/**
 * The result of repeating a batch. Where nothing changed since, it is worked out from the feeds as they stand, and
 * an acid can be chosen anew; where something did, `asLogged` is true and the numbers are those of the log.
 */
export function repeatResult(
  past: PastBatch,
  litres: number | null,
  { shelf, measuring, water }: { shelf: Shelf; measuring: Measuring; water: Amounts },
): Omit<Result, "asLogged"> & { readonly feeds: readonly Feed[]; readonly asLogged: boolean } {
  const { feeds, changes } = changesSince(past, shelf);
  const made = past.doses.map((dose, at) => lineOf(dose, litres, wayOrNone(feeds[at] ?? null, measuring)));
  const lines = made.map(({ line }) => line);
  const known = feeds.filter((feed): feed is Feed => feed !== null);
  const asLogged = changes.length > 0;
  const parts = lines.flatMap(({ perLitre }, at) => {
    const feed = feeds[at];
    return feed == null ? [] : [{ feed, perLitre }];
  });
  return {
    missing: null,
    feeds: known.filter((feed, at) => known.findIndex(({ name }) => name === feed.name) === at),
    lines,
    reached: asLogged ? reachedNow(past, lines, feeds) : mixtureOf(parts, water).amounts,
    notices: [...changes, ...made.flatMap(({ moved }) => (moved === null ? [] : [moved]))],
    asLogged,
  };
}
