/** The sample workbook read back with another library: every cell of the CSVs, formulas with answers, formats, panes. */

import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import ExcelJS from "exceljs";
import Papa from "papaparse";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import * as XLSX from "xlsx";
import { SAMPLE_DIR } from "../../src/build/sample.ts";
import { sampleTabs } from "../../src/build/sample-tabs.ts";
import { closedFormula, writeSampleWorkbook } from "../../src/build/sample-xlsx.ts";
import { dayFromIso } from "../../src/core/calendar.ts";

const TAB_NAMES = sampleTabs().map(({ name }) => name);
/** Serial number of 1970-01-01 in this file format (ECMA-376 part 1, 18.17.4.1, 1900 base). */
const SERIAL_1970 = 25_569;

let directory = "";
let file = "";
let book: XLSX.WorkBook;
const csv = new Map<string, string[][]>();

beforeAll(async () => {
  directory = await mkdtemp(path.join(tmpdir(), "sample-xlsx-"));
  file = path.join(directory, "sample.xlsx");
  await writeSampleWorkbook(file);
  book = XLSX.read(await readFile(file), { cellFormula: true, cellNF: true });
  for (const name of TAB_NAMES) {
    const text = await readFile(path.join(SAMPLE_DIR, `${name}.csv`), "utf8");
    csv.set(name, Papa.parse<string[]>(text.replace(/\n$/, "")).data);
  }
});

afterAll(async () => {
  await rm(directory, { recursive: true });
});

function sheet(name: string): XLSX.WorkSheet {
  const found = book.Sheets[name];
  if (found === undefined) throw new Error(`No tab ${name}.`);
  return found;
}

function cellAt(name: string, row: number, column: number): XLSX.CellObject | undefined {
  return sheet(name)[XLSX.utils.encode_cell({ r: row, c: column })] as XLSX.CellObject | undefined;
}

test("has the tabs of the CSVs in their order", () => {
  expect(book.SheetNames).toEqual(TAB_NAMES);
});

describe("Every cell of a CSV", () => {
  test.each(TAB_NAMES)("of %s is there, as what it is", (name) => {
    let compared = 0;
    csv.get(name)?.forEach((cells, row) => {
      cells.forEach((text, column) => {
        const cell = cellAt(name, row, column);
        const where = `${name}, row ${row + 1}, column ${column + 1}`;
        if (text.startsWith("=")) {
          expect(cell?.f, where).toBe(closedFormula(text));
          expect(cell?.v, where).toBeDefined();
          expect(cell?.t, where).not.toBe("e");
        } else if (text !== "") {
          expect(cell?.f, where).toBeUndefined();
          const day = dayFromIso(text);
          if (day !== null) {
            expect(cell?.v, where).toBe(day + SERIAL_1970);
            expect(cell?.z, where).toBe("yyyy-mm-dd");
          } else if (/^-?\d+(\.\d+)?$/.test(text)) {
            expect(cell?.t, where).toBe("n");
            expect(cell?.v, where).toBe(Number(text));
          } else {
            expect(cell?.t, where).toBe("s");
            expect(cell?.v, where).toBe(text);
          }
        }
        if (text !== "") compared += 1;
      });
    });
    expect(compared).toBeGreaterThan(0);
  });

  test.each(TAB_NAMES)("of %s: nothing else is filled but where formulas spill", (name) => {
    const rows = csv.get(name) ?? [];
    const formulas = rows.flatMap((cells, row) =>
      cells.flatMap((text, column) => (text.startsWith("=") ? [{ row, column }] : [])),
    );
    for (const [address, cell] of Object.entries(sheet(name))) {
      if (address.startsWith("!") || (cell as XLSX.CellObject).v === "") continue;
      const { r, c } = XLSX.utils.decode_cell(address);
      if ((rows[r]?.[c] ?? "") !== "") continue;
      const below = formulas.some(({ row, column }) => row <= r && column <= c);
      expect(below, `${name} ${address}`).toBe(true);
    }
  });
});

describe("Answers kept with the formulas", () => {
  function answers(tab: string, start: string): unknown[] {
    const rows = csv.get(tab) ?? [];
    const row = rows.findIndex((cells) => cells.some((text) => text.startsWith(start)));
    const column = rows[row]?.findIndex((text) => text.startsWith(start)) ?? -1;
    return [0, 1, 2].map((right) => cellAt(tab, row, column + right)?.v);
  }

  test("10-5-5 at 1 g/L brings N 100.0, P 21.82, K 41.51 mg/L (oxide factors, Penn State Extension)", () => {
    const [n, p, k] = answers("Try it", '=FEED_PPM("10-5-5", 1)');
    expect(n).toBeCloseTo(100, 6);
    expect(p).toBeCloseTo(21.82, 2);
    expect(k).toBeCloseTo(41.51, 2);
  });

  test("200 mg/L CaCO3 is 11.206 °dH and 20.00 °fH (definitions of the degrees)", () => {
    const [german, french] = answers("Try it", "=WATER_CONVERT");
    expect(german).toBeCloseTo(11.206, 3);
    expect(french).toBeCloseTo(20, 2);
  });

  test("1305 µS/cm at 21 °C is 1413 at 25 °C (EPA method 120.1, 0.01 M KCl)", () => {
    const [ec] = answers("Try it", "=METER_AT25");
    expect(ec).toBeCloseTo(1.413, 3);
  });

  test("the tap water is as hard as its report says: 3.1 mmol/L, 17.40 °dH", () => {
    const rows = csv.get("Try it") ?? [];
    const tap = rows.findIndex(([first]) => first === "Town tap");
    const hardness = cellAt("Try it", tap, 1)?.v as number;
    expect(hardness / 100.086).toBeCloseTo(3.1, 1);
    // The report rounds Ca and Mg after working out the hardness; 0.1 °dH is its own last step.
    expect(Math.abs(hardness / 17.848 - 17.4)).toBeLessThan(0.1);
    expect(cellAt("Try it", tap, 2)?.v).toBe("very hard");
  });

  test("days at rest agree with a plain look through the log", () => {
    const disturbing = new Set((csv.get("Events") ?? []).filter(([, yes]) => yes === "yes").map(([event]) => event));
    const asOf = dayFromIso("2026-11-24") ?? 0;
    const plants = (csv.get("Plants") ?? []).slice(1);
    let withNone = 0;
    plants.forEach(([plant], index) => {
      const days = (csv.get("Care log") ?? [])
        .filter(([, , name, event]) => name === plant && disturbing.has(event ?? ""))
        .map(([, date]) => dayFromIso(date ?? "") ?? 0);
      const rest = cellAt("Plants", index + 1, 7)?.v;
      const last = cellAt("Plants", index + 1, 8);
      const byRow = cellAt("Plants", index + 1, 9)?.v;
      if (days.length === 0) {
        withNone += 1;
        expect([rest, last?.v, byRow], plant).toEqual([undefined, undefined, ""]);
        return;
      }
      const latest = Math.max(...days);
      expect([rest, byRow], plant).toEqual([asOf - latest, asOf - latest]);
      expect(last?.v, plant).toBe(latest + SERIAL_1970);
      expect(last?.z).toBe("yyyy-mm-dd");
    });
    expect(withNone).toBeGreaterThan(0);
    expect(withNone).toBeLessThan(5);
  });

  test("the board has every plant once, longest rest first", () => {
    const rows = XLSX.utils.sheet_to_json<unknown[]>(sheet("Root board"), { header: 1, blankrows: false });
    expect(rows[0]).toEqual(["Plant", "Days at rest", "Last event", "Date", "Roots"]);
    const plants = (csv.get("Plants") ?? []).slice(1).map(([plant]) => plant);
    expect(rows.slice(1).map(([plant]) => plant)).toHaveLength(plants.length);
    expect(new Set(rows.slice(1).map(([plant]) => plant))).toEqual(new Set(plants));
    const rests = rows.slice(1).flatMap(([, rest]) => (typeof rest === "number" ? [rest] : []));
    expect(rests).toEqual([...rests].sort((a, b) => b - a));
  });
});

describe("References", () => {
  test("an open range becomes whole columns, or ends at the last row there is", () => {
    expect(closedFormula("=ROOT_REST(A1:A, 'Care log'!B1:D, Settings!$B$2)")).toBe(
      "ROOT_REST(A:A,'Care log'!B:D,Settings!$B$2)",
    );
    expect(closedFormula("=ROOT_BOARD(Plants!A2:A, Log!$B$1:$D)")).toBe("ROOT_BOARD(Plants!A2:A1048576,Log!$B:$D)");
  });

  test("closed ranges, cells and texts that look like ranges stay", () => {
    expect(closedFormula('=FEED_PPM("A1:A, B2", A9:A11)')).toBe('FEED_PPM("A1:A, B2",A9:A11)');
  });
});

test("headings are frozen and columns are wide enough to read", async () => {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.readFile(file);
  for (const { name, views, columns } of workbook.worksheets) {
    expect(views[0], name).toMatchObject({ state: "frozen", ySplit: 1 });
    // A column of the usual width, 9, is not written down.
    for (const { width = 9 } of columns) expect(width, name).toBeGreaterThanOrEqual(8);
  }
});
