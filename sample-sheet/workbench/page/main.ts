/**
 * The workbench page. Starts the grid with the kept sheet or the samples, loads dist/Code.js into a realm of
 * its own, and puts dist/Sidebar.html beside the grid. `window.workbench` (see hooks.ts) is for tests:
 * await workbench.ready, then setCell, getValues, getFormulas, sortRange, insertColumn, renameTab, activate,
 * tabs, marks, message, settled, kept, takeCalls, failNext,
 * services. `?delay=0` takes the round trip of the sidebar's calls away (400 ms).
 */

import type { Injector, IWorkbookData } from "@univerjs/core";
import {
  FormulaCalculationSessionService,
  FormulaDataModel,
  SheetInterceptorService,
} from "@univerjs/preset-sheets-core";
import type { StartData } from "../server.ts";
import { messageOf } from "../standin/book.ts";
import type { Grid } from "../standin/grid.ts";
import { createHost, type StandIn } from "../standin/host.ts";
import { type MessageParts, showCellMessage } from "./cell-message.ts";
import { CellReader } from "./cells.ts";
import { functionWords } from "./function-words.ts";
import { placeKey, registerFunctions } from "./functions.ts";
import { type Fault, makeHooks, type WorkbenchHooks } from "./hooks.ts";
import { Keeper, type KeptSheet } from "./keep.ts";
import { readOpenRangesToTheBottom } from "./open-ranges.ts";
import { openPanel, setUpPanel } from "./panel.ts";
import { Realm } from "./realm.ts";
import { byId, makeScreen, notice } from "./screen.ts";
import { snapshotOf } from "./snapshot.ts";
import { sortBySpilledValuesToo } from "./sorting.ts";
import { showSpilledFormats } from "./spill-formats.ts";
import { readTypedAsTheHost } from "./typing.ts";
import { startUniver } from "./univer.ts";
import { UniverGrid } from "./univer-grid.ts";

interface Stores {
  readonly user: Map<string, string>;
  readonly document: Map<string, string>;
  readonly script: Map<string, string>;
}

const WORKBOOK_ID = "stillroot";
const DELAY_MS = 400;

/** The grid as the stand-in knows it before the workbook is made: nothing asks it anything until then. */
class GridToCome implements Grid {
  grid: UniverGrid | null = null;

  private there(): UniverGrid {
    if (this.grid === null) throw new Error("The sheet is not there yet.");
    return this.grid;
  }
  get name(): string {
    return this.there().name;
  }
  tabs = () => this.there().tabs();
  addTab = (name: string) => this.there().addTab(name);
  removeTab = (id: number) => this.there().removeTab(id);
  activeTabId = () => this.there().activeTabId();
  activate = (id: number) => this.there().activate(id);
}

interface Script {
  readonly host: StandIn;
  readonly realm: Realm;
  readonly calls: string[];
  readonly faults: Fault[];
}

/** dist/Code.js in its realm, with the stand-in over a grid that is still to come. */
async function loadScript(data: StartData, timeZone: string, grid: Grid, stores: Stores): Promise<Script> {
  const realm = new Realm();
  const calls: string[] = [];
  const faults: Fault[] = [];
  const failIfAsked = (name: string, when: Fault["when"]): void => {
    const at = faults.findIndex((fault) => fault.name === name && fault.when === when);
    if (at < 0) return;
    faults.splice(at, 1);
    throw new Error("Service Spreadsheets failed while accessing the document.");
  };
  const run = (name: string): void => {
    try {
      realm.run(name, [], "full");
    } catch (error) {
      notice(`The script stopped: ${messageOf(error)}`);
    }
  };
  const host = createHost({
    grid,
    spreadsheetTimeZone: timeZone,
    scriptTimeZone: data.scriptTimeZone,
    locale: data.samples.locale,
    userProperties: stores.user,
    documentProperties: stores.document,
    scriptProperties: stores.script,
    htmlFiles: { Sidebar: data.sidebar },
    makeDate: realm.makeDate,
    onCall(name, permission) {
      if (permission !== "full") return;
      failIfAsked(name, "before");
      calls.push(name);
    },
    afterCall(name) {
      // No grid at hand draws charts, so the page says what is not to be seen.
      if (name === "Sheet.insertChart")
        notice("The workbench draws no charts. In the spreadsheet, one stands here now.");
      failIfAsked(name, "after");
    },
    screen: makeScreen({
      run,
      openSidebar(title, html) {
        if (html !== data.sidebar) throw new Error("not imitated: a sidebar of anything but the file Sidebar");
        openPanel(title);
      },
    }),
  });
  await realm.load(host, "/dist/Code.js");
  return { host, realm, calls, faults };
}

/** Formulas start by themselves once the grid is drawn; a sheet without any does not keep us waiting for ever. */
async function firstFormulas(injector: Injector): Promise<void> {
  const session = injector.get(FormulaCalculationSessionService);
  await session.waitForLatestApplied(60_000, session.state.id > 0 ? 100 : 5000);
}

async function start(): Promise<void> {
  const data = (await (await fetch("/start")).json()) as StartData;
  const kept = data.kept === null ? null : (JSON.parse(data.kept) as KeptSheet);
  if (data.notice !== null) notice(data.notice);
  const timeZone = kept?.timeZone ?? data.samples.timeZone;
  const stores: Stores = {
    user: new Map(Object.entries(kept?.user ?? {})),
    document: new Map(Object.entries(kept?.document ?? {})),
    script: new Map(Object.entries(kept?.script ?? {})),
  };
  const toCome = new GridToCome();
  const { host, realm, calls, faults } = await loadScript(data, timeZone, toCome, stores);

  readOpenRangesToTheBottom();
  let reader: CellReader | null = null;
  sortBySpilledValuesToo(() => {
    if (reader === null) throw new Error("The sheet is not there yet.");
    return reader;
  });
  const started = startUniver("grid");
  const { univer, api } = started;
  const workbook = api.createWorkbook(
    (kept?.workbook as IWorkbookData | undefined) ?? snapshotOf(data.samples, WORKBOOK_ID),
  );
  byId("workbook-name").textContent = workbook.getName();
  const injector = univer.__getInjector();
  const failures = new Map<string, string>();
  registerFunctions(injector, functionWords(data.code), { realm, timeZone, failures });
  readTypedAsTheHost(started, { locale: data.samples.locale, timeZone });

  reader = new CellReader(workbook.getWorkbook(), injector.get(FormulaDataModel));
  showSpilledFormats(injector.get(SheetInterceptorService), reader);
  const keeper = new Keeper(api, () => ({
    workbook: workbook.save(),
    timeZone,
    user: Object.fromEntries(stores.user),
    document: Object.fromEntries(stores.document),
    script: Object.fromEntries(stores.script),
  }));
  const grid = new UniverGrid(api, workbook, reader, () => keeper.changed());
  toCome.grid = grid;

  const messages: MessageParts = {
    grid,
    failure(tab, row, column) {
      const sheet = workbook.getSheetByName(tab.name());
      return sheet ? failures.get(placeKey(sheet.getSheetId(), row - 1, column - 1)) : undefined;
    },
  };
  const showSelected = (): void => {
    const range = workbook.getActiveRange();
    if (range) showCellMessage(messages, range.getRow() + 1, range.getColumn() + 1);
  };
  workbook.onSelectionChange(showSelected);
  api.getFormula().calculationResultApplied(showSelected);

  const delay = new URLSearchParams(location.search).get("delay");
  setUpPanel({
    call(name, args) {
      try {
        return realm.run(name, args, "full");
      } finally {
        keeper.changed();
      }
    },
    isPublic: (name) => realm.publicNames().includes(name),
    delayMs: delay === null ? DELAY_MS : Number(delay),
    later: (act, delayMs) => void setTimeout(act, delayMs),
  });
  Object.assign(
    window.workbench,
    makeHooks({ ready, univer, api, grid, keeper, messages, calls, services: host.services, faults }),
  );
  realm.run("onOpen", [{ authMode: host.ScriptApp.AuthMode.NONE }], "none");
  await firstFormulas(injector);
  // The host opens nothing by itself; here the first thing seen is to be the sheet with its panel.
  realm.run("openPanel", [], "full");
  byId("saved").textContent = "All changes kept";
}

const ready: Promise<void> = start();
window.workbench = { ready } as WorkbenchHooks;
ready.catch((error: unknown) => {
  notice(`The workbench could not start: ${messageOf(error)}`);
});
