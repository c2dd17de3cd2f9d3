/** EC and pH over time on a tab of their own: one formula that lays them out, and a chart of the spreadsheet's own over it. */

import { type MadeBoard, makeBoard, requiredRange, settingCell, tableRange } from "./boards.ts";
import { type Book, openBook } from "./find.ts";
import { BATCH_LOG, METER_LOG, PURCHASES } from "./log-tabs.ts";
import { isMadeMark } from "./made-tabs.ts";
import type { ChartLine, WorkbookPort } from "./port.ts";
import { requireSettings } from "./settings.ts";

const READINGS = {
  name: "Readings over time",
  functionName: "METER_HISTORY",
  dayColumns: [1],
  colours: [],
} as const;

export const READINGS_CHART_TITLE = "EC and pH of the batches";

/** Columns of the table that the formula gives, after its days. */
const LINES: readonly Omit<ChartLine, "column">[] = [
  { axis: "left", look: "readings" },
  { axis: "left", look: "limit" },
  { axis: "left", look: "limit" },
  { axis: "left", look: "limit" },
  { axis: "right", look: "readings" },
  { axis: "right", look: "limit" },
  { axis: "right", look: "limit" },
  { axis: "right", look: "marks" },
  { axis: "right", look: "marks" },
];

/** What is not there is left out: two commas with nothing between. */
function formulaFor(book: Book): string {
  const settings = requireSettings(book);
  const limit = (name: string): string => (settings.row(name) === null ? "" : settingCell(settings, name));
  const args = [
    requiredRange(book, BATCH_LOG),
    limit("pH low"),
    limit("pH high"),
    tableRange(book, METER_LOG) ?? "",
    tableRange(book, PURCHASES) ?? "",
  ];
  while (args[args.length - 1] === "") args.pop();
  return `=${READINGS.functionName}(${args.join(", ")})`;
}

function words({ done, tab }: MadeBoard, chart: "drawn" | "renewed"): string {
  if (done === "made") return `Drawn on a tab of its own, “${tab.name}”. It follows the log by itself.`;
  const mended = done === "mended" ? `“${tab.name}” has a formula with the right ranges again. ` : "";
  return chart === "drawn" ? `${mended}Drawn on “${tab.name}”.` : `${mended}The chart on “${tab.name}” is up to date.`;
}

/** Makes the tab and its chart, or brings them up to date; never a second one. Gives what it did, in words. */
export function drawReadings(workbook: WorkbookPort): string {
  return workbook.locked(() => {
    const book = openBook(workbook, [BATCH_LOG.name, METER_LOG.name, PURCHASES.name, "Settings"], isMadeMark);
    const board = makeBoard(book, READINGS, formulaFor(book));
    const { tab, column } = board;
    const setup = workbook.setup(tab);
    if (board.done === "made") {
      LINES.forEach(({ axis }, index) => {
        setup.format(column + 1 + index, axis === "left" ? "0.00" : "0.0#");
      });
    }
    const chart = setup.drawChart({
      title: READINGS_CHART_TITLE,
      dayColumn: column,
      lines: LINES.map((line, index) => ({ ...line, column: column + 1 + index })),
      leftTitle: "EC, mS/cm",
      rightTitle: "pH",
      beside: column + LINES.length + 2,
    });
    return words(board, chart);
  });
}
