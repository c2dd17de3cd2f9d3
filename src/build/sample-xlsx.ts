/** The sample sheet as one .xlsx file, formulas with the answers they had at build time. */

import ExcelJS from "exceljs";
import { DAY_FORMAT, formatOf } from "../sheet/spec.ts";
import { TABS } from "../sheet/tabs.ts";
import { type Answered, type AnsweredTab, answerTabs, type Spill } from "./sample-answers.ts";
import { day } from "./sample-cell.ts";
import { formulaTokens, readRange } from "./sample-formula.ts";
import { BY_ROW_HEADING, LAST_HEADING, REST_HEADING } from "./sample-formulas.ts";
import { TODAY } from "./sample-household.ts";
import { sampleTabs, WORKBOOK } from "./sample-tabs.ts";

/** Last row of a sheet in this file format (ECMA-376). */
const LAST_ROW = 1_048_576;
const MS_A_DAY = 86_400_000;
const WIDEST = 60;
/** Behind every formula, so that a reader sees where to click. */
const TINT: ExcelJS.Fill = { type: "pattern", pattern: "solid", fgColor: { argb: "FFE3EFE6" } };

/**
 * An open range is unknown to the file format. From the first row down it is the same as whole columns, "A1:A" as "A:A",
 * which every spreadsheet program knows and the online host keeps open; from a later row down it ends at the last row.
 */
export function closedFormula(formula: string): string {
  return formulaTokens(formula)
    .map(({ kind, text }) => (kind === "range" && readRange(text).lastRow === null ? closed(text) : text))
    .join("");
}

function closed(range: string): string {
  const { firstRow } = readRange(range);
  if (firstRow > 0) return `${range}${LAST_ROW}`;
  return range.replace(/(\$?[A-Z]+)\$?1:(\$?[A-Z]+)$/, "$1:$2");
}

function plain(value: Answered | undefined): string | number | boolean | Date | null {
  if (value === undefined || value === "") return null;
  return typeof value === "object" ? new Date(value.day * MS_A_DAY) : value;
}

/** exceljs takes an answer beside its formula; an empty text is an answer too. */
function answer(value: Answered | undefined): string | number | boolean | Date {
  return plain(value) ?? "";
}

/**
 * The formula stands in the first cell, the rest of its answer as plain values. Written as an array formula it would
 * be worked out anew on opening, and a program without the functions would show #NAME? in the whole block [1].
 */
function writeSpill(sheet: ExcelJS.Worksheet, { row, column, formula, values }: Spill): void {
  const head = sheet.getCell(row + 1, column + 1);
  head.value = { formula: closedFormula(formula), result: answer(values[0]?.[0]), date1904: false };
  head.fill = TINT;
}

function textWidth(value: Answered | undefined): number {
  if (value === undefined) return 0;
  return typeof value === "object" ? DAY_FORMAT.length : String(value).length;
}

/** Formats by column from the tab's own description; days and answers of the further tabs by what they are. */
function format(sheet: ExcelJS.Worksheet, { tab, shown }: AnsweredTab): void {
  const columns = TABS.find(({ name }) => name === tab.name)?.columns;
  const headings = shown[0] ?? [];
  shown.forEach((cells, row) => {
    cells.forEach((value, column) => {
      if (row === 0 && !tab.name.endsWith(" board")) return;
      const cell = sheet.getCell(row + 1, column + 1);
      const heading = headings[column];
      const spec = columns?.[column];
      const own = spec === undefined ? null : formatOf(spec);
      if (typeof value === "object") cell.numFmt = DAY_FORMAT;
      else if (own !== null) cell.numFmt = own;
      else if (heading === REST_HEADING || heading === BY_ROW_HEADING) cell.numFmt = "0";
      else if (tab.name === "Try it" && typeof value === "number") cell.numFmt = "0.0##";
    });
  });
  headings.forEach((heading, column) => {
    const widest = Math.max(...shown.map((cells) => textWidth(cells[column])));
    const wide = tab.name === "Try it" && column > 1 ? 20 : Math.min(WIDEST, Math.max(8, widest + 2));
    sheet.getColumn(column + 1).width = heading === LAST_HEADING ? 15 : wide;
  });
  sheet.getRow(1).font = { bold: true };
  sheet.views = [{ state: "frozen", ySplit: 1 }];
  sheet.pageSetup = { orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0, printTitlesRow: "1:1" };
}

export function sampleWorkbook(): ExcelJS.Workbook {
  const workbook = new ExcelJS.Workbook();
  workbook.title = WORKBOOK.name;
  workbook.created = new Date(day(TODAY) * MS_A_DAY);
  workbook.modified = workbook.created;
  // Kept as they are on opening: a program that lacks the functions still shows the answers.
  workbook.calcProperties.fullCalcOnLoad = false;
  for (const answered of answerTabs(sampleTabs())) {
    const sheet = workbook.addWorksheet(answered.tab.name);
    answered.shown.forEach((cells, row) => {
      cells.forEach((value, column) => {
        const content = plain(value);
        if (content !== null) sheet.getCell(row + 1, column + 1).value = content;
      });
    });
    for (const spilled of answered.spills) writeSpill(sheet, spilled);
    format(sheet, answered);
  }
  return workbook;
}

/** Writes the workbook to `outFile`. */
export async function writeSampleWorkbook(outFile: string): Promise<void> {
  await sampleWorkbook().xlsx.writeFile(outFile);
}

// [1] Seen with LibreOffice 7.4: plain formulas kept the answers in the file, array formulas did not.
