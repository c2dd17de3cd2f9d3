/** Which rows of a log still stand, when a later row may correct or take back an earlier one and none is ever rewritten. */

/** A row as far as this matters: its own Id and the Id it points at, "" for none. */
export interface Pointing {
  readonly id: string;
  readonly corrects: string;
}

/**
 * Places in `rows` of those that are void: a row is void when a standing row points at its Id. So a correction that
 * is itself taken back brings the first row back. Rows may stand in any order; an Id that stands twice is void in
 * both places; a pointer at an Id that is not there, or at the row itself, changes nothing. Rows that point at each
 * other in a ring all stand, unless a row outside the ring points in: nothing is lost to a slip of the pen.
 */
export function voidRows(rows: readonly Pointing[]): ReadonlySet<number> {
  const gone = new Set<number>();
  if (!rows.some(({ corrects }) => corrects !== "")) return gone;
  const byId = new Map<string, number[]>();
  rows.forEach(({ id }, at) => {
    const places = byId.get(id);
    if (places === undefined) byId.set(id, [at]);
    else places.push(at);
  });
  const pointsAt = rows.map(({ id, corrects }) =>
    corrects === "" || corrects === id ? [] : (byId.get(corrects) ?? []),
  );
  const undecided = new Int32Array(rows.length);
  for (const places of pointsAt) for (const at of places) undecided[at] = (undecided[at] as number) + 1;
  const ready: number[] = [];
  undecided.forEach((count, at) => {
    if (count === 0) ready.push(at);
  });
  for (let next = ready.pop(); next !== undefined; next = ready.pop()) {
    for (const at of pointsAt[next] ?? []) {
      if (!gone.has(next)) gone.add(at);
      undecided[at] = (undecided[at] as number) - 1;
      if (undecided[at] === 0) ready.push(at);
    }
  }
  return gone;
}
