/** Rows that only some sections of the panel need, asked for when one of them opens. */

import { openBook } from "../sheet/find.ts";
import { CLAIMS, TRIALS } from "../sheet/list-tabs.ts";
import { METER_LOG, PURCHASES } from "../sheet/log-tabs.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import { readRows } from "../sheet/rows.ts";
import { gatherSentences } from "../sheet/sentences.ts";
import type { TabSpec } from "../sheet/spec.ts";
import type { FieldRow, Records } from "./contract.ts";
import { type Loading, missingTabs, openTab, part } from "./loading.ts";
import { takesBackOnly, voidPlaces } from "./standing.ts";

/** Standing rows in the tab's order; a cell that cannot be read is told and stands as its raw text. */
function standingRows(loading: Loading, spec: TabSpec): FieldRow[] {
  return part(loading, spec.name, [], () => {
    const open = openTab(loading, spec, [spec.key, ...(spec.alsoKeys ?? [])]);
    if (!open) return [];
    const gone = voidPlaces(open.values, open.columns);
    const rows = readRows(open.values, spec, open.columns, loading.book.workbook.dayOf);
    return rows.flatMap(({ row, fields, problems }) => {
      if (gone.has(row - 1) || takesBackOnly(spec, fields)) return [];
      for (const { sentence } of problems) loading.say.add(spec.name, sentence);
      return [{ row, fields: { ...fields } }];
    });
  });
}

/** At most six calls: tabs, marks, four tabs. */
export function readRecords(workbook: WorkbookPort): Records {
  const names = [PURCHASES.name, METER_LOG.name, CLAIMS.name, TRIALS.name] as const;
  const loading: Loading = { book: openBook(workbook, names), say: gatherSentences(), missing: [] };
  const records = {
    purchases: standingRows(loading, PURCHASES),
    meterLog: standingRows(loading, METER_LOG),
    claims: standingRows(loading, CLAIMS),
    trials: standingRows(loading, TRIALS),
  };
  return {
    ...records,
    problems: [...missingTabs(names.filter((name) => loading.missing.includes(name))), ...loading.say.all()],
  };
}
