/** A line chart over columns of a tab: drawn once, brought up to date where it stands ever after. */

import { columnLetters } from "../sheet/find.ts";
import type { ChartLine, ColumnChart } from "../sheet/port.ts";

type Sheet = GoogleAppsScript.Spreadsheet.Sheet;
/** Told apart by shape, not by colour alone. */
const LOOKS: Readonly<Record<ChartLine["look"], object>> = {
  readings: { pointSize: 5 },
  limit: { lineDashStyle: [4, 4], pointSize: 0 },
  marks: { lineWidth: 0, pointSize: 9, pointShape: "diamond" },
};

type Chart = GoogleAppsScript.Spreadsheet.EmbeddedChart;

/** The columns that a chart reads, in its order. */
function columnsOf(chart: Chart): string {
  return chart
    .getRanges()
    .map((range) => range.getColumn())
    .join();
}

/** Known by its title; by its columns where a person gave it another title. */
function find(charts: readonly Chart[], { title }: ColumnChart, columns: readonly number[]): Chart | undefined {
  return (
    charts.find((chart) => chart.getOptions().get("title") === title) ??
    charts.find((chart) => columnsOf(chart) === columns.join())
  );
}

/** One call to find it, and one to draw. A chart that is there keeps its place and its title. */
export function drawChart(sheet: Sheet, chart: ColumnChart): "drawn" | "renewed" {
  const { lines } = chart;
  const columns = [chart.dayColumn, ...lines.map(({ column }) => column)];
  const there = find(sheet.getCharts(), chart, columns);
  const builder = (there ? there.modify() : sheet.newChart()).asLineChart().clearRanges();
  for (const column of columns) {
    const letters = columnLetters(column);
    // The whole column, so that rows to come are drawn too.
    builder.addRange(sheet.getRange(`${letters}:${letters}`));
  }
  builder.setNumHeaders(1);
  if (!there) {
    builder.setOption("title", chart.title);
    builder.setPosition(2, Math.min(chart.beside, sheet.getMaxColumns()), 0, 0);
  }
  const series: Record<number, object> = {};
  lines.forEach(({ axis, look }, index) => {
    series[index] = { targetAxisIndex: axis === "left" ? 0 : 1, ...LOOKS[look] };
  });
  builder
    .setOption("series", series)
    .setOption("vAxes", { 0: { title: chart.leftTitle }, 1: { title: chart.rightTitle } })
    .setOption("interpolateNulls", true)
    .setOption("useFirstColumnAsDomain", true);
  const built = builder.build();
  if (there) sheet.updateChart(built);
  else sheet.insertChart(built);
  return there ? "renewed" : "drawn";
}
