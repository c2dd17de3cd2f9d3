/** How EC and pH over time are drawn: dots for readings, dashes for what was expected, dots in a row for limits. */

import type uPlot from "uplot";
import { dayFromIso, isoFromDay } from "../src/core/calendar.ts";
import type { History, Mark } from "./history.ts";
import { type PlotLook, plotAxis } from "./plot.tsx";
import { showDay } from "./show.ts";

export type Drawing = {
  /** A reading to draw. */
  readonly something: boolean;
  readonly data: uPlot.AlignedData;
  readonly options: (look: PlotLook) => Omit<uPlot.Options, "width" | "height">;
};

/** Days between ticks: a day, a week, a month and on. */
const STEPS = [1, 2, 7, 14, 30, 61, 91, 182, 365, 730];
const LONG_DAYS = 150;
/** CSS pixels between ticks, wide enough for "12 Mar". */
const TICK_SPACE = 52;
const DASHES = [6, 4];
const DOTS = [1, 3];

/** "12 Mar", or "Mar 2026" where the drawing spans many months. */
function tickWords(day: number, spanDays: number): string {
  const [number = "", month = "", year = ""] = showDay(isoFromDay(Math.round(day))).split(" ");
  return spanDays > LONG_DAYS ? `${month} ${year}` : `${number} ${month}`;
}

/** Upright lines with their letter, for new lots and calibrations. */
function drawMarks(marks: readonly Mark[], look: PlotLook): (plot: uPlot) => void {
  return (plot) => {
    const { ctx, bbox } = plot;
    const ratio = devicePixelRatio;
    ctx.save();
    ctx.strokeStyle = look.ink;
    ctx.fillStyle = look.ink;
    ctx.font = `${11 * ratio}px ${look.font.slice(look.font.indexOf(" ") + 1)}`;
    ctx.textAlign = "center";
    ctx.textBaseline = "top";
    ctx.lineWidth = ratio;
    let after = Number.NEGATIVE_INFINITY;
    for (const { day, letter } of marks) {
      const x = Math.round(plot.valToPos(day, "x", true)) + 0.5;
      ctx.setLineDash(letter === "L" ? [] : [2 * ratio, 2 * ratio]);
      ctx.globalAlpha = 0.5;
      ctx.beginPath();
      ctx.moveTo(x, bbox.top + 13 * ratio);
      ctx.lineTo(x, bbox.top + bbox.height);
      ctx.stroke();
      ctx.globalAlpha = 1;
      // Letters that would stand on one another are left to the list below.
      if (x - after > 9 * ratio) {
        ctx.fillText(letter, x, bbox.top);
        after = x;
      }
    }
    ctx.restore();
  };
}

interface Line {
  readonly values: (number | null)[];
  readonly look: "read" | "expected" | "limit";
}

function drawing(history: History, lines: readonly Line[], marks: readonly Mark[]): Drawing {
  const days = history.batches.map(({ day }) => dayFromIso(day) ?? 0);
  const spanDays = (days[days.length - 1] ?? 0) - (days[0] ?? 0);
  const stroke = (line: Line["look"], look: PlotLook): uPlot.Series => {
    if (line === "read") {
      return { stroke: look.water, width: 1.5, spanGaps: true, points: { show: true, size: 6, fill: look.water } };
    }
    if (line === "expected")
      return { stroke: look.feeds, width: 1.5, dash: DASHES, spanGaps: true, points: { show: false } };
    return { stroke: look.warn, width: 1.5, dash: DOTS, spanGaps: true, points: { show: false } };
  };
  return {
    something: lines.some(({ look, values }) => look === "read" && values.some((value) => value !== null)),
    data: [days, ...lines.map(({ values }) => values)],
    options: (look) => ({
      scales: { x: { time: false } },
      series: [{}, ...lines.map((line) => stroke(line.look, look))],
      axes: [
        plotAxis(look, {
          incrs: STEPS,
          space: TICK_SPACE,
          values: (_, ticks) => ticks.map((day) => tickWords(day, spanDays)),
          size: 26,
        }),
        plotAxis(look, { size: 36, space: 26 }),
      ],
      padding: [4, 24, 0, 0],
      hooks: { draw: [drawMarks(marks, look)] },
    }),
  };
}

export function ecDrawing(history: History): Drawing {
  const { batches, band, marks } = history;
  const expected = batches.map(({ predictedEcMsCm }) => predictedEcMsCm);
  const times = (factor: number) => expected.map((ec) => (ec === null ? null : ec * factor));
  const limits: Line[] =
    band === null
      ? []
      : [
          { values: times(band.low), look: "limit" },
          { values: times(band.high), look: "limit" },
        ];
  const lines: Line[] = [
    { values: batches.map(({ measuredEcMsCm }) => measuredEcMsCm), look: "read" },
    { values: expected, look: "expected" },
    ...limits,
  ];
  return drawing(
    history,
    lines,
    marks.filter(({ kind }) => kind !== "pH"),
  );
}

export function pHDrawing(history: History): Drawing {
  const { batches, range, chart, marks } = history;
  const level = (pH: number): (number | null)[] => batches.map(() => pH);
  const lines: Line[] = [
    { values: batches.map(({ measuredPH }) => measuredPH), look: "read" },
    { values: level(range.low), look: "limit" },
    { values: level(range.high), look: "limit" },
    ...(chart === null
      ? []
      : [
          { values: level(chart.low), look: "expected" as const },
          { values: level(chart.high), look: "expected" as const },
        ]),
  ];
  return drawing(
    history,
    lines,
    marks.filter(({ kind }) => kind !== "EC"),
  );
}
