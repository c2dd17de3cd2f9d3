/** The shipped Code.js, loaded the way the host loads it: what is public, what it uses, what its formulas answer. */

import vm from "node:vm";
import * as esbuild from "esbuild";
import { describe, expect, it } from "vitest";
import { ENTRY_POINTS } from "../../src/build/stubs.ts";
import { REFERENCE } from "../../src/functions/reference.ts";
import { call, expectCells, hostCells, plain } from "../functions/cells.ts";
import { CODE, shippedRealm } from "./realm.ts";

describe("what is public", () => {
  it("is the custom functions, the entry points and nothing else that can be called", () => {
    const context = vm.createContext({});
    vm.runInContext(CODE, context);
    const functions = Object.keys(context).filter((name) => typeof context[name] === "function");
    expect(functions.sort()).toEqual([...REFERENCE.map((one) => one.name), ...ENTRY_POINTS].sort());
    // Objects cannot be called from a cell or from the panel; the second is where zod keeps its settings.
    const others = Object.keys(context).filter((name) => typeof context[name] !== "function");
    expect(others.sort()).toEqual(["Stillroot", "__zod_globalConfig"]);
  });

  it("answers every entry point in the bundle", () => {
    const names = vm.runInNewContext(`${CODE}; Object.keys(Stillroot)`) as string[];
    expect(Array.from(names).sort()).toEqual(["call", ...ENTRY_POINTS].sort());
  });
});

describe("the words of the functions", () => {
  const bundle = CODE.slice(0, CODE.indexOf("\n/**\n"));
  const stubs = CODE.slice(bundle.length);

  it("stand in the comments of the stubs only, which a call has nothing to do with", () => {
    expect(bundle).toContain("METER_AT25");
    const words = REFERENCE.flatMap(({ summary, result, args, examples, sources }) => ({
      printed: [summary, ...args.map(({ help }) => help)],
      kept: [result, ...examples.map(({ formula }) => formula), ...sources],
    }));
    for (const text of words.flatMap(({ printed }) => printed)) expect(stubs).toContain(text);
    for (const text of words.flatMap(({ printed, kept }) => [...printed, ...kept])) expect(bundle).not.toContain(text);
  });
});

describe("loading", () => {
  it("calls no service: opening a sheet loads the script without authorisation", () => {
    const touched: string[] = [];
    const poison = (name: string) => ({
      configurable: true,
      get() {
        touched.push(name);
        throw new Error(`${name} is not there while loading`);
      },
    });
    const services = [
      "SpreadsheetApp",
      "PropertiesService",
      "LockService",
      "HtmlService",
      "Session",
      "Utilities",
      "ScriptApp",
      "CacheService",
      "UrlFetchApp",
      "DriveApp",
      "console",
      "Logger",
    ];
    const global = Object.defineProperties({}, Object.fromEntries(services.map((name) => [name, poison(name)])));
    vm.runInContext(CODE, vm.createContext(global));
    expect(touched).toEqual([]);
  });

  it("uses nothing that the host's runtime lacks", async () => {
    const lacking = [
      ...["URL", "URLSearchParams", "TextEncoder", "TextDecoder", "atob", "btoa", "crypto", "structuredClone"],
      ...["performance", "setTimeout", "clearTimeout", "setInterval", "setImmediate", "queueMicrotask", "fetch"],
      ...["AbortController", "Blob", "process", "Buffer", "require", "module", "window", "document", "navigator"],
    ];
    // Only a free name is replaced, not a property, a local name or a word in a text.
    const define = Object.fromEntries(lacking.map((name) => [name, `lacking_${name}`]));
    const { code } = await esbuild.transform(CODE, { define });
    expect([...new Set(code.match(/\blacking_\w+/g) ?? [])]).toEqual([]);
    const planted = await esbuild.transform("const set = () => setTimeout(() => {}, 1); set();", { define });
    expect(planted.code).toContain("lacking_setTimeout");
  });

  it("is ES2019: nothing in it would have to be lowered, so no private and no static fields", async () => {
    const printed = await esbuild.transform(CODE, { target: "esnext" });
    const lowered = await esbuild.transform(CODE, { target: "es2019" });
    expect(lowered.code === printed.code).toBe(true);
    const newer = "class A { static b = 1; #c = 2; d() { return this.#c ?? 1; } } new A();";
    const differs = await Promise.all(["esnext", "es2019"].map((target) => esbuild.transform(newer, { target })));
    expect(differs[0]?.code === differs[1]?.code).toBe(false);
  });
});

describe.each(REFERENCE.map((record) => [record.name, record] as const))("the stub %s", (name, record) => {
  const found = new RegExp(`/\\*\\*\\n((?: \\*(?:[ ][^\\n]*)?\\n)+) \\*/\\nfunction ${name}\\(([^)]*)\\) \\{`).exec(
    CODE,
  );

  it("stands at the top level with its help directly above, each tag on one line", () => {
    expect(found).not.toBeNull();
    const [, comment = "", parameters = ""] = found as RegExpExecArray;
    const lines = comment
      .trimEnd()
      .split("\n")
      .map((line) => line.replace(/^ \* ?/, ""));
    expect(parameters).toBe(record.args.map((argument) => argument.name).join(", "));
    expect(lines[0]).toBe(record.summary);
    expect(lines[1]).toBe("");
    record.args.forEach((argument, at) => {
      const [, type, word, help] = /^@param \{(\w+)\} (\w+) (.+)$/.exec(lines[at + 2] ?? "") ?? [];
      expect(["number", "string", "date", "range", "boolean"]).toContain(type);
      expect(word).toBe(argument.name);
      expect(help).toBe(argument.help);
      expect(/optional/i.test(help ?? "")).toBe(argument.optional === true);
      if (argument.kind === "number" && argument.unit !== undefined) {
        expect(help).toContain(argument.unit === "L" ? "Litres" : argument.unit);
      }
    });
    expect(lines.slice(record.args.length + 2)).toEqual(["@customfunction"]);
  });
});

describe("examples through the stubs, with dates of the realm", () => {
  const utc = shippedRealm("Etc/UTC");
  const early = shippedRealm("Pacific/Kiritimati", 14);
  const examples = REFERENCE.flatMap(({ name, examples }) =>
    examples.map((example) => [example.formula, name, example] as const),
  );

  it.each(examples)("%s", (_, name, example) => {
    const answer = plain(utc.call(name, ...example.args.map((value) => hostCells(value, utc.date))));
    expectCells(answer, example.gives, example.within ?? 1e-6);
    expect(answer).toEqual(
      plain(
        call(
          name,
          example.args.map((value) => hostCells(value)),
        ),
      ),
    );
  });

  it.each(examples)("%s in a zone 14 hours ahead", (_, name, example) => {
    const answer = early.call(name, ...example.args.map((value) => hostCells(value, early.date)));
    const inZone = (value: unknown): unknown => {
      if (Array.isArray(value)) return Array.from(value, inZone);
      if (Object.prototype.toString.call(value) !== "[object Date]") return value;
      return { day: new Date((value as Date).getTime() + 14 * 3_600_000).toISOString().slice(0, 10) };
    };
    expectCells(inZone(answer), example.gives, example.within ?? 1e-6);
  });

  it("gives Dates of the realm itself, at the first instant of the day", () => {
    const log = [
      ["Date", "Plant", "Event"],
      [early.date("2026-03-01"), "Fern", "Repot"],
    ];
    const answer = early.call("ROOT_LAST", "Fern", log) as Date;
    expect(vm.runInContext("(value) => value instanceof Date", early.context)(answer)).toBe(true);
    expect(answer.toISOString()).toBe("2026-02-28T10:00:00.000Z");
  });

  it("tells what a grade that became a date was, also for a Date of the realm", () => {
    expect(() => utc.call("FEED_PPM", utc.date("2010-05-05"), 1)).toThrow(/is the date 2010-05-05/);
  });
});

describe("the spreadsheet's zone", () => {
  it("is asked for only when a date comes in or goes out, and once a call", () => {
    const realm = shippedRealm("Europe/Zurich", 1);
    realm.call("FEED_PPM", "10-5-5", [[1], [2]]);
    realm.call("WATER_CLASS", 100);
    expect(() => realm.call("WATER_CLASS", new Error("#N/A"))).toThrow(/error cell/);
    expect(realm.zoneCalls()).toBe(0);
    const log = [
      ["Date", "Plant", "Event"],
      ...Array.from({ length: 50 }, () => [realm.date("2026-01-10"), "Fern", "Repot"]),
    ];
    expect(realm.call("ROOT_REST", "Fern", log, realm.date("2026-01-20"))).toBe(10);
    expect(realm.zoneCalls()).toBe(1);
  });

  it("counts days across a change of the clock", () => {
    // Zurich: summer time began on 2026-03-29. Instants written out, as the host hands them over.
    const realm = shippedRealm("Europe/Zurich");
    const instant = vm.runInContext("(text) => new Date(text)", realm.context) as (text: string) => unknown;
    const log = [
      ["Date", "Plant", "Event"],
      [instant("2026-03-28T23:00:00Z"), "Fern", "Repot"],
    ];
    expect(realm.call("ROOT_REST", "Fern", log, instant("2026-03-29T22:00:00Z"))).toBe(1);
    expect(realm.call("ROOT_REST", "Fern", log, instant("2026-03-28T23:00:00Z"))).toBe(0);
  });
});
