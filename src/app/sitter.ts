/** The sitter's page: puts it on its tab, and gives it back as it stands. */

import { BadInput } from "../core/errors.ts";
import { readSittersPage, writeSittersPage } from "../sheet/page-tab.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import type { ReplyFor, RequestFor } from "./contract.ts";

export function putSittersPage(
  workbook: WorkbookPort,
  { cells, widths, boldRows, wrapped }: RequestFor<"write sitter page">,
): ReplyFor<"write sitter page"> {
  if (wrapped !== null && (wrapped.from > wrapped.to || wrapped.to > cells.length)) {
    throw new BadInput(
      "page-rows",
      `Rows ${wrapped.from} to ${wrapped.to} of the page are to be wrapped, but it has rows 1 to ${cells.length}. Nothing was written.`,
    );
  }
  const beyond = boldRows.find((row) => row > cells.length);
  if (beyond !== undefined) {
    throw new BadInput(
      "page-rows",
      `Row ${beyond} of the page is to be bold, but it has rows 1 to ${cells.length}. Nothing was written.`,
    );
  }
  return writeSittersPage(workbook, { cells, widths, boldRows, wrapped });
}

export function getSittersPage(workbook: WorkbookPort): ReplyFor<"read sitter page"> {
  const page = readSittersPage(workbook);
  const text = (raw: unknown): string | number =>
    typeof raw === "number" ? raw : raw === null || raw === undefined || typeof raw === "object" ? "" : String(raw);
  return { tab: page?.tab ?? null, rows: (page?.rows ?? []).map((row) => row.map(text)) };
}
