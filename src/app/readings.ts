/** Puts what the meters said beside a batch that is already in the log, and never over another reading. */

import { type Cell, readCell } from "../core/cell.ts";
import { BadInput, isBadInput } from "../core/errors.ts";
import { readNumber } from "../core/reading.ts";
import { type Log, openLog, placesById } from "../sheet/append.ts";
import { type Filling, fillRow } from "../sheet/fill-row.ts";
import { type Columns, columnAt, noColumns, openBook } from "../sheet/find.ts";
import { BATCH_LOG } from "../sheet/log-tabs.ts";
import type { TabPort, WorkbookPort } from "../sheet/port.ts";
import { isBlank } from "../sheet/stored.ts";
import type { ReplyFor, RequestFor } from "./contract.ts";
import { checkEc } from "./logging.ts";

/** The row of the batch, from 1; throws BadInput when the Id is not there or there twice. */
function rowOfBatch(log: Log, id: string): number {
  const { tab } = log;
  const rows = (placesById(log).get(id) ?? []).map((place) => place + 1);
  const [row, other] = rows;
  if (row === undefined) {
    throw new BadInput(
      "no-batch",
      `“${tab.name}” has no batch with the Id ${id}. Its row may have been deleted; bring it back with undo, or log the batch again.`,
    );
  }
  if (other !== undefined) {
    throw new BadInput(
      "batch-twice",
      `Rows ${rows.join(" and ")} of “${tab.name}” have the same Id ${id}. Clear the Id of the copy, then try again.`,
    );
  }
  return row;
}

/** The number that stands in a cell, however it was typed; a text that is no number as it is; null when blank. */
function standing(cell: Cell): number | string | null {
  try {
    return readNumber(cell, { what: "The reading" });
  } catch (error) {
    if (!isBadInput(error)) throw error;
    return cell.kind === "text" ? cell.value : cell.kind === "error" ? cell.text : "something else";
  }
}

/**
 * Writes the readings that are given into blank cells. The same reading again counts as already there; another
 * one than stands there is refused, and then nothing is written. Another verdict is left, and told.
 */
export function logReadings(workbook: WorkbookPort, request: RequestFor<"log readings">): ReplyFor<"log readings"> {
  checkEc(request.ecMsCm, "EC");
  return workbook.locked(() => {
    const log = openLog(openBook(workbook, [BATCH_LOG.name]), BATCH_LOG);
    const { tab, values, columns } = log;
    const row = rowOfBatch(log, request.batchId);
    const given: Filling[] = [];
    for (const [heading, value] of [
      ["Measured EC", request.ecMsCm],
      ["Measured pH", request.pH],
    ] as const) {
      if (value !== null) given.push({ heading, value, column: columnAt(columns, heading) });
    }
    if (given.length === 0) {
      throw new BadInput("no-reading", "There is no reading to write. Give the EC, the pH, or both.");
    }
    const missing = given.filter(({ heading, value, column }) => {
      const now = standing(readCell(values[row - 1]?.[column - 1], workbook.dayOf));
      if (now === null) return true;
      if (now === value) return false;
      throw new BadInput(
        "reading-there",
        `${heading} of this batch already stands as ${now} in row ${row} of “${tab.name}”, so ${value} was not written. If the new reading is right, type it there.`,
      );
    });
    const verdict = verdictOf({ tab, row, raws: values[row - 1] ?? [], columns, verdict: request.verdict });
    const differing = verdict.kept === null ? [] : [verdict.kept];
    const written = [...missing, ...verdict.write];
    if (written.length === 0) return { written: 0, already: 1, differing };
    fillRow(log, { row, id: request.batchId, fillings: written });
    return { written: 1, already: 0, differing };
  });
}

/** The verdict beside the readings: into a blank cell without a formula, else told, so that no reading is lost for it. */
function verdictOf(given: {
  readonly tab: TabPort;
  readonly row: number;
  readonly raws: readonly unknown[];
  readonly columns: Columns;
  readonly verdict: string;
}): { readonly write: readonly Filling[]; readonly kept: string | null } {
  const { tab, row, raws, columns, verdict } = given;
  if (verdict === "") return { write: [], kept: null };
  const column = columns.at.get("Verdict");
  if (column === undefined) {
    const why = columns.doubts.get("Verdict") ?? noColumns(columns.tabName, ["Verdict"]);
    return { write: [], kept: `The verdict was not kept. ${why}` };
  }
  const now = raws[column - 1];
  if (now === verdict) return { write: [], kept: null };
  if (!isBlank(now)) {
    return { write: [], kept: `The verdict in the log is another one and was left as it is: “${String(now)}”.` };
  }
  // A verdict of one's own may be worked out in its cell, or by a formula in the heading that fills the column.
  const computed = [1, row].some((at) => {
    const [[formula = ""] = []] = tab.readFormulas({ row: at, column, rows: 1, columns: 1 });
    return formula !== "";
  });
  if (computed) return { write: [], kept: "The verdict was not kept: a formula fills that cell." };
  return { write: [{ heading: "Verdict", column, value: verdict }], kept: null };
}
