/** Charts of the host, as far as a script sees them: kept for each tab while the stand-in runs, not drawn. */

import { type Book, type Range, tabById } from "./book.ts";
import { imitate } from "./gate.ts";
import type { Area } from "./grid.ts";

type Chart = GoogleAppsScript.Spreadsheet.EmbeddedChart;
type Builder = GoogleAppsScript.Spreadsheet.EmbeddedChartBuilder;
type LineBuilder = GoogleAppsScript.Spreadsheet.EmbeddedLineChartBuilder;
type Options = GoogleAppsScript.Charts.ChartOptions;
type Place = GoogleAppsScript.Spreadsheet.ContainerInfo;

/** What a chart is made of. */
export interface KeptChart {
  /** 0 until it is on a tab. */
  readonly id: number;
  readonly areas: readonly Area[];
  readonly options: Readonly<Record<string, unknown>>;
  readonly headers: number;
  readonly row: number;
  readonly column: number;
}

const BLANK: KeptChart = { id: 0, areas: [], options: {}, headers: 0, row: 1, column: 1 };

export interface ChartParts {
  readonly book: Book;
  readonly tabId: number;
  readonly rangeAt: (area: Area) => Range;
}

const meanings = new WeakMap<object, KeptChart>();

/** A chart that was fetched or built is a copy: it changes nothing on the tab until it is handed back. */
function chartOf(parts: ChartParts, kept: KeptChart): Chart {
  const chart = imitate<Chart>()("EmbeddedChart", {
    getChartId: () => (kept.id === 0 ? null : kept.id),
    getRanges: () => kept.areas.map(parts.rangeAt),
    getOptions: () =>
      imitate<Options>()("ChartOptions", { get: (option: string): unknown => kept.options[option] ?? null }),
    getContainerInfo: () =>
      imitate<Place>()("ContainerInfo", { getAnchorRow: () => kept.row, getAnchorColumn: () => kept.column }),
    modify: () => newBuilder(parts, kept),
  });
  meanings.set(chart, kept);
  return chart;
}

function newBuilder(parts: ChartParts, from: KeptChart): Builder {
  return imitate<Builder>()("EmbeddedChartBuilder", { asLineChart: () => lineBuilder(parts, from) });
}

export function newChart(parts: ChartParts): Builder {
  return newBuilder(parts, BLANK);
}

function lineBuilder(parts: ChartParts, from: KeptChart): LineBuilder {
  let kept = from;
  const become = (patch: Partial<KeptChart>): LineBuilder => {
    kept = { ...kept, ...patch };
    return builder;
  };
  const builder: LineBuilder = imitate<LineBuilder>()("EmbeddedLineChartBuilder", {
    addRange: (range: Range) => {
      const area = {
        row: range.getRow(),
        column: range.getColumn(),
        rows: range.getNumRows(),
        columns: range.getNumColumns(),
      };
      return become({ areas: [...kept.areas, area] });
    },
    clearRanges: () => become({ areas: [] }),
    setNumHeaders: (headers: number) => become({ headers }),
    setOption: (option: string, value: unknown) => become({ options: { ...kept.options, [option]: value } }),
    setPosition: (row: number, column: number) => {
      const tab = tabById(parts.book, parts.tabId);
      if (row < 1 || column < 1 || row > tab.rows() || column > tab.columns()) {
        throw new Error("The chart's anchor is outside the bounds of the sheet.");
      }
      return become({ row, column });
    },
    build: () => chartOf(parts, kept),
  });
  return builder;
}

function meaningOf(chart: Chart, call: string): KeptChart {
  const kept = meanings.get(chart);
  if (!kept) throw new Error(`The parameters don't match the method signature for Sheet.${call}.`);
  if (kept.areas.length === 0) throw new Error("A chart needs at least one range.");
  return kept;
}

const onTab = ({ book, tabId }: ChartParts): readonly KeptChart[] => book.charts.get(tabId) ?? [];

export function chartsOn(parts: ChartParts): Chart[] {
  return onTab(parts).map((kept) => chartOf(parts, kept));
}

/** Always adds one, as the host does: the same chart twice are two. */
export function insertChart(parts: ChartParts, chart: Chart): void {
  const kept = meaningOf(chart, "insertChart");
  const id = 1 + Math.max(0, ...[...parts.book.charts.values()].flat().map((one) => one.id));
  parts.book.charts.set(parts.tabId, [...onTab(parts), { ...kept, id }]);
}

export function updateChart(parts: ChartParts, chart: Chart): void {
  const kept = meaningOf(chart, "updateChart");
  const all = onTab(parts);
  if (!all.some(({ id }) => id === kept.id)) throw new Error("The chart is not on this sheet.");
  parts.book.charts.set(
    parts.tabId,
    all.map((one) => (one.id === kept.id ? kept : one)),
  );
}
