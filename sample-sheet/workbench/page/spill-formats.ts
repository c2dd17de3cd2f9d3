/** Dates that spill show as dates: the number format of a spilled value holds where the cell has none of its own. */

import { InterceptorEffectEnum } from "@univerjs/core";
import { INTERCEPTOR_POINT, type SheetInterceptorService } from "@univerjs/preset-sheets-core";
import type { CellReader } from "./cells.ts";

/** After the engine has put the spilled value into the cell (100), before number formats are applied (10). */
const AFTER_SPILL = 50;

export function showSpilledFormats(interceptors: SheetInterceptorService, reader: CellReader): void {
  interceptors.intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    priority: AFTER_SPILL,
    effect: InterceptorEffectEnum.Value | InterceptorEffectEnum.Style,
    handler(cell, location, next) {
      const spilled = reader.spilled(location.subUnitId)[location.row]?.[location.col];
      if (!cell || !spilled?.s) return next(cell);
      const styles = location.workbook.getStyles();
      const pattern = styles.get(spilled.s)?.n?.pattern;
      const own = styles.get(cell.s);
      if (!pattern || own?.n) return next(cell);
      return next({ ...cell, s: { ...own, n: { pattern } } });
    },
  });
}
