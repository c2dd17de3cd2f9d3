/** The stand-in for the host's services: what a script finds as its globals, over any grid of cells. */

import type { Book } from "./book.ts";
import { Gate, type Permission } from "./gate.ts";
import type { Grid } from "./grid.ts";
import {
  type Locks,
  makeHtmlService,
  makeLockService,
  makePropertiesService,
  makeScriptApp,
  makeSession,
  makeUtilities,
} from "./services.ts";
import { makeSpreadsheetApp } from "./spreadsheet.ts";
import { PaperScreen, type Screen } from "./ui.ts";

export interface HostOptions {
  readonly grid: Grid;
  /** IANA name; date cells are midnight in it. */
  readonly spreadsheetTimeZone: string;
  /** The script's own, from the manifest; may differ. Default: the spreadsheet's. */
  readonly scriptTimeZone?: string;
  /** As the host names it, "en_GB": decides how a written text is read. */
  readonly locale?: string;
  readonly userProperties?: Map<string, string>;
  readonly documentProperties?: Map<string, string>;
  readonly scriptProperties?: Map<string, string>;
  /** HTML files of the project by name: { Sidebar: "<!doctype html>…" }. */
  readonly htmlFiles?: Readonly<Record<string, string>>;
  readonly screen?: Screen;
  /** Sees every call that reaches the spreadsheet; throws to make it fail before it is done. */
  readonly onCall?: (name: string, permission: Permission) => void;
  /** Throws to imitate a call that was done and whose answer was lost. */
  readonly afterCall?: (name: string) => void;
  /** The same for the services beside the spreadsheet. */
  readonly onService?: (name: string) => void;
  readonly afterService?: (name: string) => void;
  /** Makes a Date of the script's realm from ms since 1970; default: this realm's. */
  readonly makeDate?: (instantMs: number) => Date;
  readonly now?: () => number;
}

/** What a script finds as globals. */
export interface Services {
  readonly SpreadsheetApp: GoogleAppsScript.Spreadsheet.SpreadsheetApp;
  readonly LockService: GoogleAppsScript.Lock.LockService;
  readonly PropertiesService: GoogleAppsScript.Properties.PropertiesService;
  readonly HtmlService: GoogleAppsScript.HTML.HtmlService;
  readonly Utilities: GoogleAppsScript.Utilities.Utilities;
  readonly Session: GoogleAppsScript.Base.Session;
  readonly ScriptApp: GoogleAppsScript.Script.ScriptApp;
}

export interface StandIn extends Services {
  readonly services: Services;
  readonly screen: Screen;
  /** Things the host forgives in silence, as sentences. */
  readonly warnings: readonly string[];
  /** Set `locks.elsewhere` to let someone else hold the lock. */
  readonly locks: Locks;
  /** Runs `work` with what a script may do in that place: "none" in onOpen of an add-on, "formula" in a cell. */
  as<T>(permission: Permission, work: () => T): T;
  /** The same until the answer is called, for what takes its time: loading a script. */
  hold(permission: Permission): () => void;
}

export function createHost(options: HostOptions): StandIn {
  const gate = new Gate({
    ...(options.onCall ? { onCall: options.onCall } : {}),
    ...(options.afterCall ? { afterCall: options.afterCall } : {}),
    ...(options.onService ? { onService: options.onService } : {}),
    ...(options.afterService ? { afterService: options.afterService } : {}),
  });
  const clock = options.now ?? (() => Date.now());
  let timeZone = options.spreadsheetTimeZone;
  const book: Book = {
    grid: options.grid,
    gate,
    get timeZone() {
      return timeZone;
    },
    locale: options.locale ?? "en_GB",
    makeDate: options.makeDate ?? ((instantMs) => new Date(instantMs)),
    now: clock,
    charts: new Map(),
    newId: () => {
      const used = options.grid.tabs().flatMap((tab) => [...tab.marks(), ...tab.protections()].map(({ id }) => id));
      return 1 + Math.max(0, ...used);
    },
  };
  const screen = options.screen ?? new PaperScreen();
  const locks: Locks = { elsewhere: false };
  const stores = {
    user: options.userProperties ?? new Map<string, string>(),
    document: options.documentProperties ?? new Map<string, string>(),
    script: options.scriptProperties ?? new Map<string, string>(),
  };
  const services: Services = {
    SpreadsheetApp: makeSpreadsheetApp(book, screen, {
      setTimeZone: (zone) => {
        timeZone = zone;
      },
    }),
    LockService: makeLockService(gate, locks),
    PropertiesService: makePropertiesService(gate, stores),
    HtmlService: makeHtmlService(gate, options.htmlFiles ?? {}),
    Utilities: makeUtilities(() => crypto.randomUUID()),
    Session: makeSession(gate, options.scriptTimeZone ?? options.spreadsheetTimeZone),
    ScriptApp: makeScriptApp(),
  };
  const hold = (permission: Permission): (() => void) => {
    const before = gate.permission;
    gate.permission = permission;
    return () => {
      gate.permission = before;
    };
  };
  return {
    ...services,
    services,
    screen,
    warnings: gate.warnings,
    locks,
    as(permission, work) {
      const release = hold(permission);
      try {
        return work();
      } finally {
        release();
      }
    },
    hold,
  };
}
