/** The sitter's page: puts it on its tab, and gives it back as it stands. */

import { readSittersPage, writeSittersPage } from "../sheet/page-tab.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import type { ReplyFor, RequestFor } from "./contract.ts";

export function putSittersPage(
  workbook: WorkbookPort,
  { cells, widths, boldRows, wrapped }: RequestFor<"write sitter page">,
): ReplyFor<"write sitter page"> {
  return writeSittersPage(workbook, { cells, widths, boldRows, wrapped });
}

export function getSittersPage(workbook: WorkbookPort): ReplyFor<"read sitter page"> {
  const page = readSittersPage(workbook);
  const text = (raw: unknown): string | number =>
    typeof raw === "number" ? raw : raw === null || raw === undefined || typeof raw === "object" ? "" : String(raw);
  return { tab: page?.tab ?? null, rows: (page?.rows ?? []).map((row) => row.map(text)) };
}
