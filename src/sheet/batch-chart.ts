/** EC and pH of the batches as a chart of the spreadsheet's own, on the tab of the Batch log. */

import { columnAt, findTab, noTab, openBook } from "./find.ts";
import { BATCH_LOG } from "./log-tabs.ts";
import { readTab } from "./open.ts";
import type { WorkbookPort } from "./port.ts";
import { readSettings } from "./settings.ts";

export const BATCH_CHART_TITLE = "EC and pH of the batches";

/** "pH (fine: 5.5 to 6.5)": a chart over columns has no room for limits but in the words beside its axis. */
function pHTitle(low: string, high: string): string {
  return low === "" || high === "" ? "pH" : `pH (fine: ${low} to ${high})`;
}

/** Draws it, or brings the one that is there up to date; gives what it did, in words. */
export function drawBatchChart(workbook: WorkbookPort): string {
  return workbook.locked(() => {
    const book = openBook(workbook, [BATCH_LOG.name, "Settings"]);
    const tab = findTab(book, BATCH_LOG);
    if (!tab) throw noTab(BATCH_LOG);
    const { values, columns } = readTab(book, BATCH_LOG, tab);
    const settings = readSettings(book);
    const done = workbook.setup(tab).drawChart({
      title: BATCH_CHART_TITLE,
      dayColumn: columnAt(columns, "Date"),
      lines: [
        { column: columnAt(columns, "Measured EC"), axis: "left", dashed: false },
        { column: columnAt(columns, "Predicted EC"), axis: "left", dashed: true },
        { column: columnAt(columns, "Measured pH"), axis: "right", dashed: false },
      ],
      leftTitle: "EC, mS/cm",
      rightTitle: pHTitle(settings?.text("pH low") ?? "", settings?.text("pH high") ?? ""),
      beside: (values[0]?.length ?? 0) + 2,
    });
    return done === "drawn"
      ? `Drawn on “${tab.name}”, to the right of its columns. Move it where you like.`
      : `The chart on “${tab.name}” is up to date.`;
  });
}
