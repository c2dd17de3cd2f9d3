/** Locks, properties, HTML files, time zones and ids: the host's services beside the spreadsheet. */

import { type Gate, imitate } from "./gate.ts";

type LockService = GoogleAppsScript.Lock.LockService;
type Lock = GoogleAppsScript.Lock.Lock;
type PropertiesService = GoogleAppsScript.Properties.PropertiesService;
type Properties = GoogleAppsScript.Properties.Properties;
type HtmlService = GoogleAppsScript.HTML.HtmlService;
type HtmlOutput = GoogleAppsScript.HTML.HtmlOutput;
type Utilities = GoogleAppsScript.Utilities.Utilities;
type Session = GoogleAppsScript.Base.Session;
type User = GoogleAppsScript.Base.User;
type ScriptApp = GoogleAppsScript.Script.ScriptApp;

/** Host limits: 9 kB a value, 500 kB a store. */
const VALUE_BYTES = 9 * 1024;
const STORE_BYTES = 500 * 1024;

/** Which locks someone else holds right now; set by a test to see what a busy sheet does. */
export interface Locks {
  elsewhere: boolean;
}

export function makeLockService(gate: Gate, locks: Locks): LockService {
  const make = (): Lock => {
    let held = false;
    const take = (): boolean => {
      if (locks.elsewhere) return false;
      held = true;
      return true;
    };
    return imitate<Lock>()("Lock", {
      hasLock: () => held,
      tryLock: () => gate.reach("Lock.tryLock", "service", take),
      waitLock: () =>
        gate.reach("Lock.waitLock", "service", () => {
          if (!take()) throw new Error("Lock timeout: another process was holding the lock for too long.");
        }),
      releaseLock: () =>
        gate.reach("Lock.releaseLock", "service", () => {
          if (held) gate.lockReleased();
          held = false;
        }),
    });
  };
  return imitate<LockService>()("LockService", {
    getDocumentLock: () => gate.reach("LockService.getDocumentLock", "service", () => make()),
    getScriptLock: () => gate.reach("LockService.getScriptLock", "service", () => make()),
    getUserLock: () => gate.reach("LockService.getUserLock", "service", () => make()),
  });
}

function makeProperties(gate: Gate, store: Map<string, string>): Properties {
  const reach = <T>(name: string, act: () => T): T => gate.reach(`Properties.${name}`, "service", act);
  const put = (key: string, value: string): void => {
    const text = String(value);
    if (text.length > VALUE_BYTES) throw new Error("Argument too large: value");
    let bytes = key.length + text.length;
    for (const [name, kept] of store) if (name !== key) bytes += name.length + kept.length;
    if (bytes > STORE_BYTES) {
      throw new Error("You have exceeded the property storage quota. Please remove some properties and try again.");
    }
    store.set(key, text);
  };
  const properties: Properties = imitate<Properties>()("Properties", {
    getKeys: () => reach("getKeys", () => [...store.keys()]),
    getProperty: (key: string) => reach("getProperty", () => store.get(key) ?? null),
    getProperties: () => reach("getProperties", () => Object.fromEntries(store)),
    setProperty: (key: string, value: string) =>
      reach("setProperty", () => {
        put(key, value);
        return properties;
      }),
    deleteProperty: (key: string) =>
      reach("deleteProperty", () => {
        store.delete(key);
        return properties;
      }),
  });
  return properties;
}

export interface Stores {
  readonly user: Map<string, string>;
  readonly document: Map<string, string>;
  readonly script: Map<string, string>;
}

export function makePropertiesService(gate: Gate, stores: Stores): PropertiesService {
  const reach = (name: string, store: Map<string, string>): Properties =>
    gate.reach(`PropertiesService.${name}`, "service", () => makeProperties(gate, store));
  return imitate<PropertiesService>()("PropertiesService", {
    getUserProperties: () => reach("getUserProperties", stores.user),
    getDocumentProperties: () => reach("getDocumentProperties", stores.document),
    getScriptProperties: () => reach("getScriptProperties", stores.script),
  });
}

/** `files`: the HTML files of the project by name, without ".html". */
export function makeHtmlService(gate: Gate, files: Readonly<Record<string, string>>): HtmlService {
  const makeOutput = (html: string): HtmlOutput => {
    let title = "";
    const output: HtmlOutput = imitate<HtmlOutput>()("HtmlOutput", {
      getContent: () => html,
      getTitle: () => title,
      setTitle: (text: string) => {
        title = text;
        return output;
      },
      /** A sidebar is 300 px wide whatever is asked for. */
      setWidth: () => output,
    });
    return output;
  };
  return imitate<HtmlService>()("HtmlService", {
    createHtmlOutputFromFile: (name: string) =>
      gate.reach("HtmlService.createHtmlOutputFromFile", "service", () => {
        const html = files[name.replace(/\.html$/, "")];
        if (html === undefined) throw new Error(`No HTML file named ${name} was found.`);
        return makeOutput(html);
      }),
  });
}

/** No Utilities.sleep, no formatDate: add them when a script uses them. */
export function makeUtilities(newUuid: () => string): Utilities {
  return imitate<Utilities>()("Utilities", { getUuid: newUuid });
}

/** On a consumer account the other members' addresses are empty. */
export function makeSession(gate: Gate, scriptTimeZone: string): Session {
  const user = (): User =>
    gate.reach("Session.getActiveUser", "service", () => imitate<User>()("User", { getEmail: () => "" }));
  return imitate<Session>()("Session", {
    getScriptTimeZone: () => scriptTimeZone,
    getActiveUser: user,
    getEffectiveUser: user,
  });
}

export const AUTH_MODE = { NONE: "NONE", CUSTOM_FUNCTION: "CUSTOM_FUNCTION", LIMITED: "LIMITED", FULL: "FULL" };

export function makeScriptApp(): ScriptApp {
  return imitate<ScriptApp>()("ScriptApp", { AuthMode: AUTH_MODE as unknown as ScriptApp["AuthMode"] });
}
