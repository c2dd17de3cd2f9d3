/** Data validation rules between the stand-in's plain form and Univer's. */

import { DataValidationErrorStyle, DataValidationType } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { deserializeListOptions } from "@univerjs/preset-sheets-core";
import { areaOf, splitReference } from "../standin/a1.ts";
import type { Validation } from "../standin/grid.ts";

type FWorkbook = ReturnType<FUniver["createWorkbook"]>;
type FRange = ReturnType<ReturnType<FWorkbook["getActiveSheet"]>["getRange"]>;

export function readRule(range: FRange): Validation | null {
  const found = range.getDataValidation();
  if (!found) return null;
  const { type, formula1, error } = found.rule;
  const allowInvalid = found.getAllowInvalid();
  const help = error ?? "";
  if (type === DataValidationType.CHECKBOX) return { kind: "checkbox", values: [], allowInvalid, help };
  if (formula1?.startsWith("=")) return { kind: "range", values: [formula1.slice(1)], allowInvalid, help };
  return { kind: "list", values: deserializeListOptions(formula1 ?? ""), allowInvalid, help };
}

export function writeRule(api: FUniver, workbook: FWorkbook, rule: Validation) {
  let builder = api.newDataValidation();
  if (rule.kind === "checkbox") builder = builder.requireCheckbox();
  else if (rule.kind === "list") builder = builder.requireValueInList([...rule.values], false, true);
  else {
    const { tab, a1 } = splitReference(rule.values[0] ?? "");
    const sheet = tab === null ? workbook.getActiveSheet() : workbook.getSheetByName(tab);
    const area = sheet && areaOf(a1, { rows: sheet.getMaxRows(), columns: sheet.getMaxColumns() });
    if (!sheet || !area) throw new Error(`Range not found: "${rule.values[0] ?? ""}".`);
    const range = sheet.getRange(area.row - 1, area.column - 1, area.rows, area.columns);
    builder = builder.requireValueInRange(range, false, true);
  }
  return builder
    .setAllowInvalid(rule.allowInvalid)
    .setAllowBlank(true)
    .setOptions({
      error: rule.help,
      showErrorMessage: rule.help !== "",
      errorStyle: rule.allowInvalid ? DataValidationErrorStyle.WARNING : DataValidationErrorStyle.STOP,
    })
    .build();
}
