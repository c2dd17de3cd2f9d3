/** google.script.run of the host: how a panel's call reaches a function of the script, and what gets lost on the way. */

import { isDate, messageOf } from "./book.ts";

/** google.script.run as the panel sees it: handlers chained, then any public function. */
export interface Runner {
  withSuccessHandler(handler: (answer: unknown, mine?: unknown) => void): Runner;
  withFailureHandler(handler: (error: Error, mine?: unknown) => void): Runner;
  withUserObject(mine: unknown): Runner;
  readonly [name: string]: (...args: never[]) => unknown;
}

export interface RunOptions {
  /** Runs a public function of the script; throws what the script throws. */
  readonly call: (name: string, args: readonly unknown[]) => unknown;
  readonly isPublic: (name: string) => boolean;
  /** One round trip, ms. */
  readonly delayMs: number;
  readonly later: (act: () => void, delayMs: number) => void;
}

const PLAIN = new Set(["[object Object]", "[object Array]"]);

/** True when a value survives the way: texts, finite numbers, booleans, null, and plain objects of these. */
export function survives(value: unknown): boolean {
  if (value === null || typeof value === "string" || typeof value === "boolean") return true;
  if (typeof value === "number") return Number.isFinite(value);
  if (typeof value !== "object" || isDate(value)) return false;
  if (!PLAIN.has(Object.prototype.toString.call(value))) return false;
  return Object.values(value).every(survives);
}

/** What the panel gets for what the script returned: a copy, or null for the whole when any part is lost. */
export function answerThrough(value: unknown): unknown {
  if (value === undefined || !survives(value)) return null;
  return JSON.parse(JSON.stringify(value)) as unknown;
}

/** Arguments are checked when the call is made: the panel's own code sees the error. */
function argumentsThrough(args: readonly unknown[]): unknown[] {
  return args.map((arg, index) => {
    if (arg === undefined) return null;
    if (!survives(arg)) throw new TypeError(`Failed due to illegal value in property: ${index}`);
    return JSON.parse(JSON.stringify(arg)) as unknown;
  });
}

/** Only the message of an error comes through, under a name of the host's. */
function errorThrough(thrown: unknown): Error {
  const error = new Error(messageOf(thrown));
  error.name = "ScriptError";
  return error;
}

interface Handlers {
  success: (answer: unknown, mine?: unknown) => void;
  failure: (error: Error, mine?: unknown) => void;
  mine: unknown;
}

export function makeRunner(options: RunOptions, given: Partial<Handlers> = {}): Runner {
  const handlers: Handlers = { success: () => {}, failure: () => {}, mine: undefined, ...given };
  const start = (name: string, args: readonly unknown[]): void => {
    const sent = argumentsThrough(args);
    options.later(() => {
      let answer: unknown;
      try {
        if (name.endsWith("_") || !options.isPublic(name)) throw new Error(`Script function not found: ${name}`);
        answer = answerThrough(options.call(name, sent));
      } catch (thrown) {
        handlers.failure(errorThrough(thrown), handlers.mine);
        return;
      }
      handlers.success(answer, handlers.mine);
    }, options.delayMs);
  };
  return new Proxy({} as Runner, {
    get(_target, key) {
      if (typeof key === "symbol" || key === "then") return undefined;
      if (key === "withSuccessHandler")
        return (success: Handlers["success"]) => makeRunner(options, { ...handlers, success });
      if (key === "withFailureHandler")
        return (failure: Handlers["failure"]) => makeRunner(options, { ...handlers, failure });
      if (key === "withUserObject") return (mine: unknown) => makeRunner(options, { ...handlers, mine });
      return (...args: unknown[]) => start(key, args);
    },
  });
}
