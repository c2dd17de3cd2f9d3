/** What the tests of least squares under limits share. */

export const dot = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);

/** How far the columns are from being mixes of each other; quadprog squares this. */
export function apart(columns: readonly (readonly number[])[]): number {
  let least = 1;
  const basis: number[][] = [];
  for (const column of columns) {
    let rest = [...column];
    for (const q of basis) {
      const along = dot(q, rest);
      rest = rest.map((value, i) => value - along * (q[i] ?? 0));
    }
    const length = Math.sqrt(dot(rest, rest));
    least = Math.min(least, length / Math.sqrt(dot(column, column)));
    basis.push(rest.map((value) => value / length));
  }
  return least;
}
