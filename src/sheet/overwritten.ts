/** Which rows are gone from a tab since it was read, because what was written fell on them. */

import type { Scene } from "./repair.ts";
import { isBlank, sameRaw } from "./stored.ts";

/** Our columns of a row as one text. */
export function signatureOf({ before, now, tracks }: Scene, side: "was" | "is"): (place: number) => string {
  const { values } = side === "was" ? before : now;
  const mine = tracks.filter(({ heading }) => heading !== null);
  return (place) => JSON.stringify(mine.map((track) => values[place]?.[track[side] - 1] ?? ""));
}

/**
 * Places, before the write, of rows that are gone now: rows inserted further up had moved them to where the new ones
 * were written. A row with a key is missed by it; rows typed by hand only as many as there are too few, the lowest
 * ones first. A row that somebody deleted in that very moment comes back, which is the lesser evil.
 */
export function overwritten(scene: Scene, places: readonly (number | null)[]): number[] {
  const { before, now, tracks, keyWas, keyIs } = scene;
  const [was, is] = [signatureOf(scene, "was"), signatureOf(scene, "is")];
  const blank = was(-1);
  const oldKey = (at: number) => before.values[at]?.[keyWas - 1];
  const newKey = (at: number) => now.values[at]?.[keyIs - 1];
  const old = before.values.map((_, at) => at).filter((at) => at > 0 && was(at) !== blank);
  const ours = new Set(places);
  const standing = now.values.map((_, at) => at).filter((at) => at > 0 && is(at) !== blank && !ours.has(at));
  const keys = new Set(standing.map(newKey));
  const withoutKey = standing.filter((at) => isBlank(newKey(at)));
  /** There, but for cells that were blanked. */
  const isDamaged = (at: number) =>
    withoutKey.some((place) => {
      const raws = tracks.map((track) => [now.values[place]?.[track.is - 1], before.values[at]?.[track.was - 1]]);
      return raws.every(([raw, old]) => isBlank(raw) || sameRaw(raw, old));
    });
  // How many rows there are that say just that: two typed by hand may be the same.
  const there = new Map<string, number>();
  for (const place of standing) there.set(is(place), (there.get(is(place)) ?? 0) + 1);
  const typed = old.filter((at) => isBlank(oldKey(at)));
  let lost = typed.length - withoutKey.length;
  const gone: number[] = [];
  for (const at of [...old].reverse()) {
    if (gone.length >= ours.size) break;
    const alike = there.get(was(at)) ?? 0;
    there.set(was(at), alike - 1);
    if (alike > 0) continue;
    if (!isBlank(oldKey(at))) {
      if (!keys.has(oldKey(at)) && !isDamaged(at)) gone.unshift(at);
    } else if (lost > 0) {
      gone.unshift(at);
      lost--;
    }
  }
  return gone;
}
