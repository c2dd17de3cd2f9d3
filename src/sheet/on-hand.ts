/** The column On hand of Feeds as one formula in its heading, so that no number there can disagree with the log. */

import { BadInput } from "../core/errors.ts";
import { sayList } from "../core/saying.ts";
import { requiredRange, settingCell } from "./boards.ts";
import { columnAt, columnLetters, findTab, noTab, openBook } from "./find.ts";
import { BATCH_LOG, PURCHASES } from "./log-tabs.ts";
import { openRange } from "./made-tabs.ts";
import { readTab } from "./open.ts";
import type { WorkbookPort } from "./port.ts";
import { requireSettings, TODAY } from "./settings.ts";
import { FEEDS } from "./shelf-tabs.ts";
import { isBlank } from "./stored.ts";

const ON_HAND = "On hand";
/** Enough to find the numbers by. */
const ROWS_NAMED = 5;

function refuse(sentence: string): never {
  throw new BadInput("on-hand-taken", `${sentence} So it was left as it is.`);
}

/**
 * Writes the formula and says what it did. A formula of ours stays, unless it lost a range; numbers typed below the
 * heading and formulas of somebody else's are refused, for nothing of theirs may be lost.
 */
export function showOnHand(workbook: WorkbookPort): string {
  return workbook.locked(() => {
    const book = openBook(workbook, [FEEDS.name, PURCHASES.name, BATCH_LOG.name, "Settings"]);
    const tab = findTab(book, FEEDS);
    if (!tab) throw noTab(FEEDS);
    const { values, columns } = readTab(book, FEEDS, tab);
    const at = columnAt(columns, ON_HAND);
    const place = `Column ${columnLetters(at)} (“${ON_HAND}”) of “${tab.name}”`;
    const [[there = ""] = []] = tab.readFormulas({ row: 1, column: at, rows: 1, columns: 1 });
    const ours = /\bFEED_LEFT\s*\(/i.test(there);
    if (ours && !there.includes("#REF!")) return `${place} counts what is on hand already.`;
    if (there !== "" && !ours) refuse(`${place} has a formula of its own in its heading.`);
    const typed = values.flatMap((cells, index) => (index > 0 && !isBlank(cells[at - 1]) ? [index + 1] : []));
    if (!ours && typed.length > 0) {
      const rows = typed.slice(0, ROWS_NAMED).map(String);
      const more = typed.length > ROWS_NAMED ? [`${typed.length - ROWS_NAMED} more`] : [];
      refuse(
        `${place} holds something in ${typed.length === 1 ? "row" : "rows"} ${sayList([...rows, ...more], "and")}. Log those amounts as purchases, clear these cells, then try again.`,
      );
    }
    const own = (heading: string): string => {
      const column = columns.at.get(heading);
      return column === undefined ? "" : openRange(tab.name, [column], 1);
    };
    const args = [
      openRange(tab.name, [columnAt(columns, FEEDS.key)], 1),
      requiredRange(book, PURCHASES),
      requiredRange(book, BATCH_LOG),
      settingCell(requireSettings(book), TODAY),
      own("Unit"),
      own("Density"),
      `"${ON_HAND}"`,
    ];
    tab.writeFormula(1, at, `=FEED_LEFT(${args.join(", ")})`);
    return `${place} now counts what was bought less what batches used.`;
  });
}
