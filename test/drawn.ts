/** While code is being changed: it is enough to see that something is wrong (see test/mutation). */
export const fewDraws = process.env.FEW_DRAWS !== undefined;

/** How many cases a test draws: all, or, with few draws, a tenth. */
export function drawn(all: number, least = 20): number {
  return !fewDraws ? all : Math.min(all, Math.max(least, Math.round(all / 10)));
}
