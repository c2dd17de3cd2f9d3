/** The whole sample sheet as tabs of cells: those of the add-on, and two of its own with formulas to look at. */

import type { TabName } from "../sheet/spec.ts";
import { TABS, tabSpec } from "../sheet/tabs.ts";
import { batchRows } from "./sample-batches.ts";
import { day, rowsByHeading, type SampleCell, type SampleRow, type SampleTab } from "./sample-cell.ts";
import { CLAIM_ROWS, trialRows } from "./sample-claims.ts";
import { FEED_ROWS } from "./sample-feeds.ts";
import { dueBoardTab, onHandHeading, plantCells, plantHeadings, rootBoardTab } from "./sample-formulas.ts";
import { noteFor, PLANTS } from "./sample-household.ts";
import { EVENT_ROWS, SETTING_ROWS } from "./sample-lists.ts";
import { careLog, careRow } from "./sample-log.ts";
import { meterRows } from "./sample-meter-log.ts";
import { PURCHASE_ROWS } from "./sample-purchases.ts";
import { columnLetters } from "./sample-ranges.ts";
import { TARGET_ROWS } from "./sample-targets.ts";
import { tryItTab } from "./sample-try-it.ts";
import { WATER_ROWS } from "./sample-waters.ts";

/** The workbook's own file; the zone is a real one so that days change where a household's would. */
export const WORKBOOK = { name: "The mill house at Quillwater", timeZone: "Europe/Zurich", locale: "en_GB" } as const;

type Row = Readonly<Record<string, SampleCell>>;

function headingsOf(tab: TabName): string[] {
  return tabSpec(tab).columns.map(({ heading }) => heading);
}

function plantRows(): SampleRow[] {
  const headings = headingsOf("Plants");
  const records = PLANTS.map(
    ({ plant, kind, place, potMl, since }): Row => ({
      Plant: plant,
      Kind: kind,
      Place: place,
      "Pot mL": potMl,
      Medium: "Clay",
      Since: { day: day(since) },
      Note: noteFor(kind) || null,
    }),
  );
  // The last disturbance spills into the second column of those added.
  const last = columnLetters(headings.length + 1);
  return [
    [...headings, ...plantHeadings()],
    ...rowsByHeading(headings, records).map((row, index) => [...row, ...plantCells(index + 2, last)]),
  ];
}

/** Where the further tabs stand: each after the tab it is read with. */
const BESIDE: Readonly<Record<string, () => SampleTab[]>> = {
  Plants: () => [rootBoardTab(), dueBoardTab()],
  "Batch log": () => [tryItTab()],
};

/** Every tab, rows filled to one width. */
export function sampleTabs(): SampleTab[] {
  const log = careLog();
  const records: Readonly<Record<Exclude<TabName, "Plants">, readonly Row[]>> = {
    "Care log": log.map(careRow),
    Events: EVENT_ROWS,
    Feeds: FEED_ROWS,
    Waters: WATER_ROWS,
    Targets: TARGET_ROWS,
    "Batch log": batchRows(),
    Purchases: PURCHASE_ROWS,
    "Meter log": meterRows(),
    Claims: CLAIM_ROWS,
    Trials: trialRows(log),
    Settings: SETTING_ROWS,
  };
  const own = TABS.map(({ name }): SampleTab => {
    if (name === "Plants") return { name, rows: plantRows() };
    const headings = headingsOf(name);
    const shown = headings.map((heading) => (heading === "On hand" ? onHandHeading() : heading));
    return { name, rows: [shown, ...rowsByHeading(headings, records[name])] };
  });
  return own.flatMap((tab) => [tab, ...(BESIDE[tab.name]?.() ?? [])]).map(filled);
}

function filled(tab: SampleTab): SampleTab {
  const width = Math.max(...tab.rows.map((row) => row.length));
  return {
    name: tab.name,
    rows: tab.rows.map((row) => [...row, ...Array.from({ length: width - row.length }, () => null)]),
  };
}
