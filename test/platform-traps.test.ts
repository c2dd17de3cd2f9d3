/**
 * The host's traps, one row each: imitated by the stand-in or in a bare realm, and survived. What the host does is
 * told in the facts about it that the project was begun with (DEVELOPERS.md says where); a row names its trap in short.
 */

import { readFileSync } from "node:fs";
import vm from "node:vm";
import { expect, test, vi } from "vitest";
import type { GridMark } from "../sample-sheet/workbench/standin/grid.ts";
import { answerThrough, makeRunner } from "../sample-sheet/workbench/standin/run.ts";
import { createAsk, SENTENCES } from "../sidebar/calls.ts";
import { REFERENCE } from "../src/functions/reference.ts";
import { daysIn } from "../src/host/days.ts";
import { panelRequest } from "../src/host/panel.ts";
import { shippedRealm } from "./build/realm.ts";
import { call, date, hostCells } from "./functions/cells.ts";
import { careEntry, readyBook, serialOf, type TestBook } from "./sheet/workbook.ts";

type Entry = Partial<ReturnType<typeof careEntry>>;
const care = (given: Entry = {}) => ({ ask: "log care" as const, who: "Ana", entries: [careEntry(given)] });
const columnOf = (book: TestBook, heading: string) => (book.values("Care log")[0] ?? []).indexOf(heading) + 1;
const note = (text: string) => {
  const book = readyBook();
  book.reply(care({ note: text }));
  const tab = book.grid.tab("Care log");
  return tab.read({ row: 2, column: columnOf(book, "Note"), rows: 1, columns: 1 })[0]?.[0];
};
const LOG = [
  ["Date", "Plant", "Event"],
  [date("2026-01-10"), "Fern", "Repot"],
];
const refusal = (name: string, ...args: unknown[]): string => {
  try {
    return `answered ${String(call(name, args))}`;
  } catch (error) {
    return (error as Error).message;
  }
};
const run = (returned: unknown) =>
  createAsk(
    () =>
      makeRunner({
        call: () => returned,
        isPublic: () => true,
        delayMs: 0,
        later: (act) => act(),
      }) as never,
  );

const TRAPS: readonly (readonly [trap: string, survived: () => unknown])[] = [
  [
    "an open range comes with every row to the bottom of the grid",
    () => {
      const blanks = Array.from({ length: 5_000 }, () => ["", "", ""]);
      const plants = [["Fern"], ...blanks.map(() => [""])];
      expect(call("ROOT_REST", [plants, [...LOG, ...blanks], date("2026-01-20")])).toEqual([[10]]);
    },
  ],
  [
    "a skipped argument arrives as undefined, null or a blank text",
    () => {
      for (const skipped of [undefined, null, ""]) {
        expect(call("ROOT_REST", ["Fern", LOG, date("2026-01-20"), skipped])).toBe(10);
      }
    },
  ],
  [
    "an error cell arrives as a text or as an Error",
    () => {
      for (const broken of ["#N/A", new Error("#N/A")]) expect(refusal("METER_AT25", broken, 20)).toMatch(/error cell/);
    },
  ],
  [
    "a Date comes from another realm, where instanceof fails",
    () => {
      const realm = shippedRealm("Etc/UTC");
      const log = [LOG[0], [realm.date("2026-01-10"), "Fern", "Repot"]];
      expect(realm.date("2026-01-10") instanceof Date).toBe(false);
      expect(realm.call("ROOT_REST", "Fern", log, realm.date("2026-01-20"))).toBe(10);
    },
  ],
  [
    "a date is midnight in the spreadsheet's zone, not in the script's",
    () => {
      const book = readyBook({ zone: "America/New_York", scriptZone: "Asia/Tokyo" });
      book.reply(care({ day: "2026-03-08" }));
      expect(book.cell("Care log", 2, "Date")).toBe(serialOf("2026-03-08"));
      expect(book.reply({ ask: "load" }).care.rows[0]?.day).toBe("2026-03-08");
    },
  ],
  [
    "a day may have no midnight",
    () => {
      const book = readyBook({ zone: "America/Sao_Paulo" });
      book.reply(care({ day: "2018-11-04" }));
      expect(book.reply({ ask: "load" }).care.rows[0]?.day).toBe("2018-11-04");
      expect(daysIn("America/Sao_Paulo").dateOf(17_839).toISOString()).toBe("2018-11-04T03:00:00.000Z");
    },
  ],
  [
    "a grade like 10-5-5 was taken for a date",
    () => expect(refusal("FEED_PPM", date("2010-05-05"), 1)).toMatch(/is the date 2010-05-05/),
  ],
  ["10 % arrives as 0.1", () => expect(typeof call("METER_AT25", [0.1, 20])).toBe("number")],
  [
    "NOW() is refused as an argument, and a default of now goes stale",
    () => {
      const answers = ["2026-03-10T12:00:00Z", "2031-07-01T12:00:00Z"].map((now) => {
        vi.useFakeTimers({ now: Date.parse(now), toFake: ["Date"] });
        return REFERENCE.flatMap(({ name, examples }) =>
          examples.map(({ args }) =>
            call(
              name,
              Array.from(args, (value) => hostCells(value)),
            ),
          ),
        );
      });
      expect(answers[1]).toEqual(answers[0]);
      expect(refusal("ROOT_REST", "Fern", LOG)).not.toMatch(/^answered/);
    },
  ],
  [
    "a name that ends with an underscore is private",
    () => {
      for (const { name } of REFERENCE) expect(name).toMatch(/^[A-Z][A-Z0-9_]*[A-Z0-9]$/);
    },
  ],
  [
    "sorting moves a formula that stands in the rows",
    () => {
      const board = call("ROOT_BOARD", [[["Fern"]], LOG, date("2026-01-20")]) as unknown[][];
      expect(board[0]?.[0]).toBe("Plant");
      expect(board).toHaveLength(2);
    },
  ],
  [
    "loading calls no service, and the runtime has no URL, TextEncoder, crypto, timers or fetch",
    () => {
      const context = vm.createContext({});
      vm.runInContext(readFileSync("dist/Code.js", "utf8"), context);
      expect(typeof (context as { onOpen?: unknown }).onOpen).toBe("function");
      for (const name of ["URL", "TextEncoder", "crypto", "setTimeout", "fetch"]) expect(name in context).toBe(false);
    },
  ],
  [
    "the e-mail of a household member is empty",
    () => {
      const book = readyBook();
      book.reply({ ask: "set name", who: "Ana" });
      book.reply({ ...care(), who: "" });
      expect(book.cell("Care log", 2, "Who")).toBe("Ana");
    },
  ],
  [
    "a property holds 9 kB",
    () => {
      const book = readyBook();
      expect(book.reply({ ask: "set name", who: "ä".repeat(2_000) }).who).toHaveLength(2_000);
      expect(book.refusal({ ask: "set name", who: "a".repeat(10_000) }).sentence).toMatch(/at most 2000 characters/);
    },
  ],
  [
    "a Date, a NaN or an undefined in an answer loses all of it",
    () => {
      readyBook();
      expect(answerThrough({ day: new Date(0) })).toBe(null);
      const answer = panelRequest('{"ask":"load"}');
      expect(answerThrough(answer)).toBe(answer);
      expect(JSON.stringify(JSON.parse(answer))).toBe(answer);
    },
  ],
  [
    "an answer that was lost arrives as null without an error",
    async () => {
      const answer = await run(undefined)<"load">({ ask: "load" });
      expect(answer).toMatchObject({ ok: false, sentence: SENTENCES.noAnswer });
      expect(SENTENCES.noAnswer).toMatch(/two accounts/);
    },
  ],
  ["a written = becomes a formula", () => expect(note("=1+1")).toMatchObject({ value: "=1+1", formula: "" })],
  ["a written 3/4 becomes a date", () => expect(note("3/4")?.value).toBe("3/4")],
  ["a written 012 becomes a number", () => expect(note("012")?.value).toBe("012")],
  ["a leading + becomes a formula or an error", () => expect(note("+1")).toMatchObject({ value: "+1", formula: "" })],
  ["a leading apostrophe is taken off", () => expect(note("'tis")?.value).toBe("'tis")],
  [
    "a comma or a day first means another number or day in another locale",
    () => {
      const book = readyBook({ locale: "de_CH" });
      book.reply(care({ note: "1,5", day: "2026-04-03", amountMl: 1.5 }));
      expect(["Note", "Date", "Amount mL"].map((heading) => book.cell("Care log", 2, heading))).toEqual([
        "1,5",
        serialOf("2026-04-03"),
        1.5,
      ]);
    },
  ],
  [
    "checkboxes and spilled formulas count as content below the last row",
    () => {
      const book = readyBook();
      const tab = book.grid.tab("Care log");
      const at = tab.extent().column + 1;
      tab.write(1, at, [[{ value: "Done" }]]);
      const box = { kind: "checkbox" as const, values: [], allowInvalid: true, help: "" };
      tab.setValidation({ row: 2, column: at, rows: 500, columns: 1 }, box);
      book.reply(care());
      expect(book.cell("Care log", 2, "Plant")).toBe("Monstera");
    },
  ],
  [
    "columns are inserted, moved and renamed",
    () => {
      const book = readyBook();
      const tab = book.grid.tab("Care log");
      tab.insertColumns(2, 1);
      tab.moveColumn(columnOf(book, "Plant"), 9);
      const plantAt = columnOf(book, "Plant");
      tab.write(1, plantAt, [[{ value: "Who is it" }]]);
      book.reply(care({ plant: "Hoya" }));
      expect(tab.read({ row: 2, column: plantAt, rows: 1, columns: 1 })[0]?.[0]?.value).toBe("Hoya");
    },
  ],
  [
    "rows are sorted at will",
    () => {
      const book = readyBook();
      const [first, second] = [care({ plant: "Zebra plant" }), care({ plant: "Aloe" })];
      book.reply(first);
      book.reply(second);
      book.grid.tab("Care log").sortRows({ row: 2, column: 1, rows: 2, columns: 20 }, columnOf(book, "Plant"), true);
      expect(book.reply(first)).toMatchObject({ written: 0, already: 1, differing: [] });
    },
  ],
  [
    "a copied tab carries its original's marks",
    () => {
      const book = readyBook();
      const copy = book.grid.addTab("Copy of Care log", { cells: book.values("Care log") });
      book.grid
        .tab("Care log")
        .marks()
        .forEach((mark: GridMark, at) => {
          copy.putMark({ ...mark, id: 50_000 + at });
        });
      book.reply(care());
      expect(book.values("Care log")).toHaveLength(2);
      expect(book.values("Copy of Care log")).toHaveLength(1);
    },
  ],
  [
    "merged cells swallow what is written to them",
    () => {
      const merges = [{ row: 2, column: 3, rows: 2, columns: 2 }];
      const book = readyBook({ tabs: { "Care log": { cells: [["Id", "Date", "Plant", "Event"]], merges } } });
      expect(book.refusal(care()).code).toBe("merged");
    },
  ],
  [
    "a rejecting rule makes a write throw",
    () => {
      const book = readyBook();
      const rule = { kind: "list" as const, values: ["Repot"], allowInvalid: false, help: "" };
      book.grid.tab("Care log").setValidation({ row: 2, column: columnOf(book, "Event"), rows: 9, columns: 1 }, rule);
      expect(book.refusal(care()).sentence).toMatch(/The spreadsheet did not let this be done/);
      expect(book.values("Care log")).toHaveLength(1);
    },
  ],
  [
    "setting conditional rules replaces those of other people",
    () => {
      const book = readyBook();
      const tab = book.grid.addTab("Mine", { cells: [["x"]] });
      const area = { row: 1, column: 1, rows: 5, columns: 1 };
      tab.setConditionalRules([{ formula: "=A1>1", areas: [area], background: "#ffffff", fontColor: null }]);
      const port = book.workbook();
      const mine = port.tabs().find(({ name }) => name === "Mine");
      if (mine) port.setup(mine).flagFormulas([1]);
      expect(tab.conditionalRules().map(({ formula }) => formula)).toEqual(["=A1>1", "=ISFORMULA(A2)"]);
    },
  ],
  [
    "a hard protection locks members out",
    () => {
      const book = readyBook();
      const protections = book.grid.tabs().flatMap((tab) => tab.protections());
      expect(protections.length).toBeGreaterThan(0);
      expect(protections.every(({ warningOnly }) => warningOnly)).toBe(true);
    },
  ],
  [
    "a lock that is released before the flush lets others read old rows",
    () => {
      const book = readyBook();
      book.reply(care());
      expect(book.host.warnings).toEqual([]);
      expect(book.calls[book.calls.length - 1]).toBe("SpreadsheetApp.flush");
    },
  ],
  [
    "somebody else holds the lock",
    () => {
      const book = readyBook();
      book.host.locks.elsewhere = true;
      expect(book.refusal(care()).code).toBe("busy");
    },
  ],
  [
    "every call is slow, whatever it brings",
    () => {
      const book = readyBook();
      book.reply({ ask: "log care", who: "Ana", entries: Array.from({ length: 30 }, () => careEntry()) });
      expect(book.calls.length).toBeLessThanOrEqual(13);
    },
  ],
  [
    "more scopes than two would ask for more than is needed",
    () => {
      const manifest = JSON.parse(readFileSync("appsscript.json", "utf8")) as { oauthScopes: string[] };
      expect(manifest.oauthScopes.map((scope) => scope.split("/").pop()).sort()).toEqual([
        "script.container.ui",
        "spreadsheets.currentonly",
      ]);
    },
  ],
];

test.each(TRAPS)("%s", async (_, survived) => {
  await survived();
});
