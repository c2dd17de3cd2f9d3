/** Formulas in place beside the plant list and on the boards. */

import type { SampleCell, SampleTab } from "./sample-cell.ts";
import { rangeOn, wholeTab } from "./sample-ranges.ts";

/** With Id and Corrects, so that rows taken back do not count. */
export const LOG = wholeTab("Care log");
const EVENTS = wholeTab("Events");
/** Settings has "Today" in its first row. */
export const AS_OF = "Settings!$B$2";

/** Headings of the columns the sample adds to the right of Plants. The first two are formulas that bring their own. */
export const REST_HEADING = "Days at rest";
export const LAST_HEADING = "Last disturbed";
export const BY_ROW_HEADING = "Rest by row";

const PLANT_NAMES = rangeOn("Plants", { from: "Plant", to: "Plant" }).replace("Plants!", "");

/** Cells to the right of the heading row: one formula fills its whole column. It reads column A only, so it is not circular. */
export function plantHeadings(): SampleCell[] {
  return [
    { formula: `=ROOT_REST(${PLANT_NAMES}, ${LOG}, ${AS_OF}, "${REST_HEADING}", ${EVENTS})` },
    { formula: `=ROOT_LAST(${PLANT_NAMES}, ${LOG}, "${LAST_HEADING}", ${EVENTS})` },
    BY_ROW_HEADING,
  ];
}

/** Cells to the right of a plant's row: the spilled answers take the first two, the third is the sheet's own arithmetic. */
export function plantCells(row: number, lastColumn: string): SampleCell[] {
  return [null, null, { formula: `=IF(${lastColumn}${row}="","",${AS_OF}-${lastColumn}${row})` }];
}

/** The heading On hand of Feeds as a formula: names, units and densities from its own tab, so that all three may be sorted. */
export function onHandHeading(): SampleCell {
  const own = (heading: string) => rangeOn("Feeds", { from: heading, to: heading }).replace("Feeds!", "");
  const args = [own("Feed"), wholeTab("Purchases"), wholeTab("Batch log"), AS_OF, own("Unit"), own("Density")];
  return { formula: `=FEED_LEFT(${args.join(", ")}, "On hand")` };
}

/** Settings as a table of rules. */
const RULES = rangeOn("Settings", { from: "Setting", to: "Value" });

/** As the add-on makes them in a sheet of one's own. */
export function rootBoardTab(): SampleTab {
  const plants = rangeOn("Plants", { from: "Plant", to: "Plant", firstRow: 2 });
  const formula = `=ROOT_BOARD(${plants}, ${LOG}, ${AS_OF}, ${EVENTS}, ${RULES})`;
  return { name: "Root board", rows: [[{ formula }]] };
}

export function dueBoardTab(): SampleTab {
  const plants = rangeOn("Plants", { from: "Plant", to: "Plant", firstRow: 2 });
  const formula = `=POT_DUE(${plants}, ${LOG}, ${AS_OF}, ${EVENTS}, ${RULES}, ${wholeTab("Claims")})`;
  return { name: "Due board", rows: [[{ formula }]] };
}
