/** Sheets that write 1,5 and put the day first, in zones of their own: the same records and the same counts of days. */

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { withDecimalCommas } from "../../src/build/separators.ts";
import { REFERENCE } from "../../src/functions/reference.ts";
import { careEntry, type Options, readyBook, serialOf } from "../sheet/workbook.ts";

const LOCALES = ["en_US", "en_GB", "de_CH", "fr_FR", "de_DE", "es_ES", "pt_BR", "pl_PL"];
/** Spreadsheet, script; the browser's own zone plays no part, since days travel as ISO texts. */
const ZONES: readonly (readonly [sheet: string, script: string])[] = [
  ["Europe/Zurich", "Europe/Zurich"],
  ["America/Los_Angeles", "Asia/Tokyo"],
  ["Pacific/Kiritimati", "America/New_York"],
  ["Asia/Kathmandu", "Etc/UTC"],
  ["America/Sao_Paulo", "Europe/Berlin"],
];
/** Clocks change on the first four in one zone or another (tz database); a leap day; the ends of a year. */
const DAYS = ["2026-03-08", "2026-03-29", "2026-10-25", "2018-11-04", "2024-02-29", "2025-12-31", "2026-01-01"];

describe.each(LOCALES)("in a sheet of %s", (locale) => {
  test.each(ZONES)("kept in %s by a script in %s", (zone, scriptZone) => {
    const options: Options = { locale, zone, scriptZone, now: "2026-11-25T23:30:00Z" };
    const book = readyBook(options);
    book.grid.tab("Plants").write(2, 1, [[{ value: "Fern" }]]);
    for (const day of DAYS) {
      const entry = careEntry({ day, plant: "Fern", event: "Repot", amountMl: 1.5, reason: "rot", note: "1,5" });
      book.reply({ ask: "log care", who: "Ana", entries: [entry] });
      const row = DAYS.indexOf(day) + 2;
      // A day without a midnight begins at 1:00.
      expect(Math.floor(Number(book.cell("Care log", row, "Date")))).toBe(serialOf(day));
      expect(book.cell("Care log", row, "Amount mL")).toBe(1.5);
      expect(book.cell("Care log", row, "Note")).toBe("1,5");
    }
    const loaded = book.reply({ ask: "load" });
    expect(loaded.care.rows.map(({ day }) => day)).toEqual([...DAYS].sort().reverse());
    const days = (iso: string) => Date.parse(`${iso}T00:00:00Z`) / 86_400_000;
    // The newest repot is of 2026-10-25; whole calendar days, whatever the clocks did.
    expect(loaded.plants[0]?.restDays).toBe(days(loaded.today) - days("2026-10-25"));
    expect(book.cell("Settings", 2, "Value")).toBe(serialOf(loaded.today));
  });
});

test("today is the spreadsheet's day, not the script's", () => {
  const at = (zone: string) => readyBook({ zone, scriptZone: "Etc/UTC", now: "2026-11-25T23:30:00Z" });
  expect(at("Pacific/Kiritimati").reply({ ask: "load" }).today).toBe("2026-11-26");
  expect(at("America/Los_Angeles").reply({ ask: "load" }).today).toBe("2026-11-25");
});

test("a number typed with a comma in a text column is read as that number, and an ambiguous one is refused", () => {
  const book = readyBook({ locale: "de_DE" });
  const columns = book.values("Plants")[0] ?? [];
  book.grid
    .tab("Plants")
    .write(2, 1, [
      columns.map((heading) => ({ value: heading === "Plant" ? "Fern" : heading === "Pot mL" ? "1,234" : null })),
    ]);
  const { problems } = book.reply({ ask: "load" });
  expect(problems.join(" ")).toMatch(/1,234/);
});

describe("formulas", () => {
  test.each([
    ['=FEED_PPM("10-5-5", 1.5)', '=FEED_PPM("10-5-5"; 1,5)'],
    ["=SUM({1.5, 2; 3, 4})", "=SUM({1,5\\2; 3\\4})"],
    ["=ROOT_REST(A2:A, 'Care log, old'!A1:K, TODAY())", "=ROOT_REST(A2:A; 'Care log, old'!A1:K; TODAY())"],
    ["={A1:B2; C1:D2}", "={A1:B2; C1:D2}"],
  ])("%s is typed %s where decimals have a comma", (formula, typed) => {
    expect(withDecimalCommas(formula)).toBe(typed);
  });

  test("stand in the README with both separators", () => {
    const readme = readFileSync("README.md", "utf8");
    for (const { examples } of REFERENCE) {
      const [first] = examples;
      if (!first) continue;
      expect(readme).toContain(`\`${first.formula}\``);
      expect(readme).toContain(`\`${withDecimalCommas(first.formula)}\``);
    }
  });
});
