/** How many cases a test draws: all, or, while code is being changed (FEW_DRAWS, see test/mutation), a tenth. */

const LEAST = 20;

export function drawn(all: number): number {
  return process.env.FEW_DRAWS === undefined ? all : Math.min(all, Math.max(LEAST, Math.round(all / 10)));
}
