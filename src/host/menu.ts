/** The menu and what its items do. Opening the spreadsheet does nothing but make the menu. */

import { boardsWords, makeBoards } from "../sheet/boards.ts";
import { openBook } from "../sheet/find.ts";
import { asFailure } from "../sheet/refusals.ts";
import { refreshToday as refresh, requireSettings } from "../sheet/settings.ts";
import { setUp, setupWords } from "../sheet/setup.ts";
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
    .addToUi();
}

export function onInstall(): void {
  onOpen();
}

export function openPanel(): void {
  const panel = HtmlService.createHtmlOutputFromFile("Sidebar").setTitle("Stillroot");
  SpreadsheetApp.getUi().showSidebar(panel);
}

/** Shows what `work` has to say, or the sentence of what it threw. */
function tell(work: () => string): void {
  let words: string;
  try {
    words = work();
  } catch (error) {
    words = asFailure(error).sentence;
  }
  SpreadsheetApp.getUi().alert(words);
}

export function setUpTabs(): void {
  tell(() => setupWords(setUp(activeWorkbook())));
}

export function makeBoardTabs(): void {
  tell(() => boardsWords(makeBoards(activeWorkbook())));
}

export function refreshToday(): void {
  tell(() => {
    const workbook = activeWorkbook();
    const wrote = workbook.locked(() => refresh(requireSettings(openBook(workbook, ["Settings"])), workbook.today()));
    return wrote ? "Today’s date in Settings is refreshed." : "Today’s date in Settings is right already.";
  });
}
