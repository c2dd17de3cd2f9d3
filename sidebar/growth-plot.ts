/** How recovery curves are drawn: one staircase a group, told apart by dashes as well as by colour. */

import type uPlot from "uplot";
import { type Curve, grownBy } from "./growth-curves.ts";
import type { Drawing } from "./history-plot.ts";
import { type PlotLook, plotAxis } from "./plot.tsx";

/** More curves than this cannot be told apart at 300 px. */
export const MOST_CURVES = 4;

const DASHES: readonly (readonly number[])[] = [[], [7, 4], [2, 3], [9, 3, 2, 3]];
/** As the list beside the drawing calls them. */
export const DASH_WORDS = ["full line", "dashes", "dots", "dashes and dots"] as const;

/** The staircase by hand: uPlot is given every corner, so that a step is as steep as it is. */
function daysOf(curves: readonly Curve[]): number[] {
  const days = new Set<number>([0]);
  for (const { curve } of curves) {
    for (const { days: day } of curve.steps) {
      days.add(day);
      // Just before the step the curve is still where it was.
      if (day > 0) days.add(day - 0.001);
    }
  }
  // Beyond the last of them nothing happens any more, however long others are still waited for.
  const last = Math.max(0, ...days);
  for (const { curve } of curves) days.add(Math.min(curve.lastDays, last));
  return [...days].sort((a, b) => a - b);
}

/** Share that has grown again, percent, against days since the disturbance. */
export function growthDrawing(curves: readonly Curve[]): Omit<Drawing, "something"> {
  const drawn = curves.slice(0, MOST_CURVES);
  const days = daysOf(drawn);
  const colours = (look: PlotLook): readonly string[] => [look.water, look.feeds, look.warn, look.ink];
  return {
    data: [
      days,
      ...drawn.map((curve) =>
        days.map((day) => {
          const share = grownBy(curve, day);
          return share === null ? null : 100 * share;
        }),
      ),
    ],
    options: (look) => ({
      scales: { x: { time: false }, y: { range: [0, 100] } },
      series: [
        {},
        ...drawn.map(
          (_, at): uPlot.Series => ({
            stroke: colours(look)[at] ?? look.ink,
            width: 2,
            dash: [...(DASHES[at] ?? [])],
            points: { show: false },
          }),
        ),
      ],
      axes: [
        plotAxis(look, { size: 26, space: 44, values: (_, ticks) => ticks.map((day) => `${day} d`) }),
        plotAxis(look, { size: 50, space: 30, values: (_, ticks) => ticks.map((share) => `${share} %`) }),
      ],
      padding: [8, 18, 0, 0],
    }),
  };
}
