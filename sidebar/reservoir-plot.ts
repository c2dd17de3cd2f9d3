/** How a plant's drinking is drawn: each interval between fillings as a step at its mL a day. */

import type uPlot from "uplot";
import { isoFromDay } from "../src/core/calendar.ts";
import { rateOf, type Uptake } from "../src/core/drinking.ts";
import { type PlotLook, plotAxis } from "./plot.tsx";
import { showDay } from "./show.ts";

export interface DrinkDrawing {
  readonly data: uPlot.AlignedData;
  readonly options: (look: PlotLook) => Omit<uPlot.Options, "width" | "height">;
}

const STEPS = [7, 14, 28, 56, 91];
const TICK_SPACE = 56;

/** A level line over the days of each interval; a gap where nothing is known. */
export function drinkDrawing(drunk: readonly Uptake[]): DrinkDrawing {
  const days: number[] = [];
  const rates: (number | null)[] = [];
  let lastDay = Number.NEGATIVE_INFINITY;
  for (const one of drunk) {
    if (one.fromDay > lastDay && days.length > 0) {
      days.push(lastDay + 0.5);
      rates.push(null);
    }
    // Ends a hair apart, so that each step keeps its own height.
    days.push(one.fromDay + 0.001, one.toDay);
    rates.push(rateOf(one), rateOf(one));
    lastDay = one.toDay;
  }
  return {
    data: [days, rates],
    options: (look) => ({
      scales: { x: { time: false }, y: { range: (_, __, most) => [0, Math.max(most, 1) * 1.1] } },
      series: [{}, { stroke: look.water, width: 2, points: { show: false } }],
      axes: [
        plotAxis(look, {
          incrs: STEPS,
          space: TICK_SPACE,
          size: 26,
          values: (_, ticks) =>
            ticks.map((day) =>
              showDay(isoFromDay(Math.round(day)))
                .split(" ")
                .slice(0, 2)
                .join(" "),
            ),
        }),
        plotAxis(look, { size: 40, space: 26 }),
      ],
      padding: [4, 20, 0, 0],
    }),
  };
}
