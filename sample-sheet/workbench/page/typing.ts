/** What a person types, read as the host reads it in the sheet's locale; formulas closed going in, opened in the editor. */

import { CellValueType, type ICellData } from "@univerjs/core";
import {
  AFTER_CELL_EDIT,
  BEFORE_CELL_EDIT,
  SetRangeValuesMutation,
  SheetInterceptorService,
} from "@univerjs/preset-sheets-core";
import { typedAs } from "../standin/typed.ts";
import { serialOfInstant } from "../standin/zone.ts";
import { cellDataFor } from "./cells.ts";
import { closeRanges, openRanges } from "./open-ranges.ts";
import type { Started } from "./univer.ts";

/** Before the grid's own reading, which knows American dates only. */
const FIRST = 1000;

type Written = Record<number, Record<number, { f?: string | null } | null> | undefined>;

type Interceptors = SheetInterceptorService["writeCellInterceptor"];

/**
 * The engine's own interceptor ends the chain for every cell with a formula, so none of ours would come after
 * it: what the chain as a whole hands to the editor and the formula bar is changed instead.
 */
function openInEditor(interceptors: Interceptors): void {
  const fetch = interceptors.fetchThroughInterceptors.bind(interceptors) as (...given: unknown[]) => Chain;
  interceptors.fetchThroughInterceptors = ((...given: unknown[]) => {
    const chain = fetch(...given);
    if (given[0] !== BEFORE_CELL_EDIT) return chain;
    return (value: unknown, context: unknown) => {
      const cell = chain(value, context);
      return cell?.f ? { ...cell, f: openRanges(cell.f) } : cell;
    };
  }) as Interceptors["fetchThroughInterceptors"];
}

type Chain = (value: unknown, context: unknown) => ICellData | null | undefined;

export function readTypedAsTheHost({ univer, api }: Started, sheet: { locale: string; timeZone: string }): void {
  api.onBeforeCommandExecute((command) => {
    if (command.id !== SetRangeValuesMutation.id) return;
    const { cellValue } = command.params as { cellValue?: Written };
    for (const row of Object.values(cellValue ?? {})) {
      for (const cell of Object.values(row ?? {})) if (cell?.f) cell.f = closeRanges(cell.f);
    }
  });

  const { writeCellInterceptor } = univer.__getInjector().get(SheetInterceptorService);
  openInEditor(writeCellInterceptor);
  writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: FIRST,
    handler(value, { workbook, worksheet, row, col }, next) {
      const plain = value && !value.f && !value.si && !value.p && value.t !== CellValueType.FORCE_STRING;
      if (!plain || typeof value.v !== "string" || value.v === "") return next(value);
      const own = worksheet.getCellRaw(row, col);
      const pattern = (own && workbook.getStyles().getStyleByCell(own)?.n?.pattern) || "";
      const today = Math.floor(serialOfInstant(Date.now(), sheet.timeZone));
      const { format, ...change } = typedAs(value.v, pattern, { locale: sheet.locale, today });
      return { ...value, ...cellDataFor(format === undefined || pattern !== "" ? change : { ...change, format }) };
    },
  });
}
