/**
 * The same question asked with native formulas in the workbench's own engine, without its screen:
 * one MAXIFS per plant over the whole log. Run by bench.ts as `node native.cjs PLANTS ROWS`; prints JSON.
 */

import { ICommandService, type IWorkbookData, LocaleType, LogLevel, Univer, UniverInstanceType } from "@univerjs/core";
import {
  SetFormulaCalculationResultMutation,
  SetFormulaCalculationStartMutation,
  UniverFormulaEnginePlugin,
} from "@univerjs/engine-formula";
import { UniverSheetsPlugin } from "@univerjs/sheets";
import { UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
import { madeLog } from "./log.ts";

const [plantCount, rowCount] = process.argv.slice(2).map(Number) as [number, number];
const { plants, rows } = madeLog(plantCount, rowCount);

/** Cell types of the engine: 1 text, 2 number. */
const text = (v: string) => ({ v, t: 1 });
const number = (v: number) => ({ v, t: 2 });

const log = rows.map(({ day, plant, event }) => [number(day), text(plant), text(event)]);
const list = plants.map((plant, at) => [
  text(plant),
  { f: `=MAXIFS(Log!$A$1:$A$${rowCount},Log!$B$1:$B$${rowCount},A${at + 1},Log!$C$1:$C$${rowCount},"Repot")` },
]);

const univer = new Univer({ locale: LocaleType.EN_US, locales: { [LocaleType.EN_US]: {} }, logLevel: LogLevel.SILENT });
univer.registerPlugin(UniverFormulaEnginePlugin);
univer.registerPlugin(UniverSheetsPlugin);
univer.registerPlugin(UniverSheetsFormulaPlugin);
const book: Partial<IWorkbookData> = {
  id: "book",
  sheetOrder: ["Log", "List"],
  sheets: {
    Log: { id: "Log", name: "Log", rowCount: rowCount + 1, columnCount: 4, cellData: { ...log } as never },
    List: { id: "List", name: "List", rowCount: plantCount + 1, columnCount: 3, cellData: { ...list } as never },
  },
};
const workbook = univer.createUnit(UniverInstanceType.UNIVER_SHEET, book);
const commands = univer.__getInjector().get(ICommandService);

const started = performance.now();
commands.onCommandExecuted((command) => {
  if (command.id !== SetFormulaCalculationResultMutation.id) return;
  const ms = performance.now() - started;
  const sheet = (
    workbook as unknown as { getSheetBySheetId(id: string): { getCellRaw(r: number, c: number): { v?: unknown } } }
  ).getSheetBySheetId("List");
  console.log(JSON.stringify({ ms, answers: plants.map((_, at) => sheet.getCellRaw(at, 1)?.v) }));
  process.exit(0);
});
commands.executeCommand(
  SetFormulaCalculationStartMutation.id,
  { commands: [], forceCalculation: true },
  { onlyLocal: true },
);
