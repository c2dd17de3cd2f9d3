/** How many cases a test draws: all, or, while code is being changed (FEW_DRAWS, see test/mutation), a tenth. */
export function drawn(all: number, least = 20): number {
  return process.env.FEW_DRAWS === undefined ? all : Math.min(all, Math.max(least, Math.round(all / 10)));
}
