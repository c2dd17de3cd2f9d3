/** The menu and what its items do. Opening the spreadsheet does nothing but make the menu. */

import { archiveCare, archiveWords, NOTHING_OLD } from "../sheet/archive.ts";
import { boardsWords, makeBoards } from "../sheet/boards.ts";
import { openBook } from "../sheet/find.ts";
import type { WorkbookPort } from "../sheet/port.ts";
import { asFailure } from "../sheet/refusals.ts";
import { planSetUp, planWords } from "../sheet/schema.ts";
import { refreshToday as refresh, requireSettings } from "../sheet/settings.ts";
import { hasOwnList, setUp, setupWords } from "../sheet/setup.ts";
import { activeWorkbook } from "./workbook.ts";

/** Runs without any authorisation, so it may touch nothing but the menu. */
export function onOpen(): void {
  SpreadsheetApp.getUi()
    .createAddonMenu()
    .addItem("Open the panel", "openPanel")
    .addSeparator()
    .addItem("Set up tabs", "setUpTabs")
    .addItem("Make the boards", "makeBoardTabs")
    .addItem("Refresh today’s date", "refreshToday")
    .addItem("Archive old care", "archiveOldCare")
    .addToUi();
}

export function onInstall(): void {
  onOpen();
}

export function openPanel(): void {
  const panel = HtmlService.createHtmlOutputFromFile("Sidebar").setTitle("Stillroot");
  SpreadsheetApp.getUi().showSidebar(panel);
}

/** Shows what `work` has to say, or the sentence of what it threw and whether anything was written by then. */
function tell(work: (workbook: WorkbookPort) => string): void {
  let words: string;
  let workbook: WorkbookPort | null = null;
  try {
    workbook = activeWorkbook();
    words = work(workbook);
  } catch (error) {
    words = asFailure(error, workbook?.begun() ?? false).sentence;
  }
  SpreadsheetApp.getUi().alert(words);
}

/** True when the person agreed to what `words` say; without words there is nothing to agree to. */
function agreed(words: string): boolean {
  if (words === "") return true;
  const ui = SpreadsheetApp.getUi();
  return ui.alert("Stillroot", words, ui.ButtonSet.OK_CANCEL) === ui.Button.OK;
}

export function setUpTabs(): void {
  tell((workbook) => {
    const plan = planSetUp(workbook, new Set(hasOwnList(workbook) ? (["Plants"] as const) : []));
    return agreed(planWords(plan)) ? setupWords(setUp(workbook)) : "Nothing was changed.";
  });
}

export function makeBoardTabs(): void {
  tell((workbook) => boardsWords(makeBoards(workbook)));
}

export function archiveOldCare(): void {
  tell((workbook) => {
    const words = archiveWords(workbook);
    if (words === null) return NOTHING_OLD;
    return agreed(words) ? archiveCare(workbook) : "Nothing was changed.";
  });
}

export function refreshToday(): void {
  tell((workbook) => {
    const wrote = workbook.locked(() => refresh(requireSettings(openBook(workbook, ["Settings"])), workbook.today()));
    return wrote ? "Today’s date in Settings is refreshed." : "Today’s date in Settings is right already.";
  });
}
