/** A workbook in memory under the real host adapter, for tests of sheet, app and host. */

import { vi } from "vitest";
import type { CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import { createHost, type StandIn } from "../../sample-sheet/workbench/standin/host.ts";
import { MemoryGrid, type MemoryTabOptions } from "../../sample-sheet/workbench/standin/memory.ts";
import type { Answered, Ask, ReplyFor, RequestFor } from "../../src/app/contract.ts";
import { panelRequest } from "../../src/host/panel.ts";
import { activeWorkbook } from "../../src/host/workbook.ts";
import type { WorkbookPort } from "../../src/sheet/port.ts";
import { type SetupReport, setUp } from "../../src/sheet/setup.ts";
import { drawn } from "../drawn.ts";

export const ZONE = "Europe/Zurich";

/** Serial of 1970-01-01 in a spreadsheet that counts from 1899-12-30 (ISO/IEC 29500-1, 18.17.4.1). */
const SERIAL_OF_EPOCH = 25_569;

export interface Options {
  readonly tabs?: Readonly<Record<string, MemoryTabOptions>>;
  readonly zone?: string;
  readonly scriptZone?: string;
  /** ISO instant that the clock stands at. */
  readonly now?: string;
  readonly onCall?: (name: string) => void;
  readonly afterCall?: (name: string) => void;
  /** The same for the lock, properties and messages. */
  readonly onService?: (name: string) => void;
  readonly afterService?: (name: string) => void;
  /** As the host names it, "de_CH". */
  readonly locale?: string;
  /** A workbook that is there already, in place of `tabs`. */
  readonly grid?: MemoryGrid;
}

export interface TestBook {
  readonly grid: MemoryGrid;
  readonly host: StandIn;
  /** Names of the calls that reached the spreadsheet since the last reset. */
  readonly calls: string[];
  readonly userProperties: Map<string, string>;
  workbook(): WorkbookPort;
  setUp(): SetupReport;
  /** As the panel does: JSON in, JSON out. */
  ask<A extends Ask>(request: RequestFor<A>): Answered<A>;
  /** The reply; fails the test with the sentence of a failure. */
  reply<A extends Ask>(request: RequestFor<A>): ReplyFor<A>;
  /** Code and sentence of a failure; fails the test when there is none, or no code of small letters. */
  refusal(request: unknown): { code: string; sentence: string };
  /** All cells of a tab from A1, null for blank ones. */
  values(tab: string): CellValue[][];
  /** A cell by the heading of its column. */
  cell(tab: string, row: number, heading: string): CellValue;
}

/** A date cell as the grid keeps it. */
export function dateCell(iso: string): { value: number; format: string } {
  return { value: serialOf(iso), format: "yyyy-mm-dd" };
}

export function serialOf(iso: string): number {
  return Date.parse(`${iso}T00:00:00Z`) / 86_400_000 + SERIAL_OF_EPOCH;
}

export function openTestBook(options: Options = {}): TestBook {
  const calls: string[] = [];
  const grid = options.grid ?? new MemoryGrid({ tabs: options.tabs ?? { Sheet1: {} }, newTabRows: drawn(1000) });
  const userProperties = new Map<string, string>();
  const zone = options.zone ?? ZONE;
  const now = Date.parse(options.now ?? "2026-03-10T12:00:00Z");
  if (vi.isFakeTimers()) vi.setSystemTime(now);
  else vi.useFakeTimers({ now, toFake: ["Date"] });
  const host = createHost({
    grid,
    spreadsheetTimeZone: zone,
    scriptTimeZone: options.scriptZone ?? zone,
    userProperties,
    now: () => now,
    onCall: (name) => {
      calls.push(name);
      options.onCall?.(name);
    },
    ...(options.afterCall ? { afterCall: options.afterCall } : {}),
    ...(options.onService ? { onService: options.onService } : {}),
    ...(options.afterService ? { afterService: options.afterService } : {}),
    ...(options.locale ? { locale: options.locale } : {}),
  });
  for (const [name, service] of Object.entries(host.services)) vi.stubGlobal(name, service);

  const values = (name: string): CellValue[][] => {
    const tab = grid.tab(name);
    const { row, column } = tab.extent();
    if (row === 0) return [];
    return tab.read({ row: 1, column: 1, rows: row, columns: column }).map((cells) => cells.map(({ value }) => value));
  };
  const ask = (request: unknown): unknown => JSON.parse(panelRequest(JSON.stringify(request)));
  return {
    grid,
    host,
    calls,
    userProperties,
    workbook: activeWorkbook,
    setUp: () => setUp(activeWorkbook()),
    ask: (request) => ask(request) as never,
    reply: (request) => {
      const answer = ask(request) as { ok: boolean; reply: never; sentence?: string };
      if (!answer.ok) throw new Error(answer.sentence);
      return answer.reply;
    },
    refusal: (request) => {
      const answer = ask(request) as { ok: boolean; code: string; sentence: string };
      if (answer.ok) throw new Error(`Not refused: ${JSON.stringify(answer)}`);
      if (!/^[a-z]+(-[a-z]+)*$/.test(answer.code)) throw new Error(`"${answer.code}" is no code: ${answer.sentence}`);
      return { code: answer.code, sentence: answer.sentence };
    },
    values,
    cell: (tab, row, heading) => {
      const all = values(tab);
      const at = all[0]?.indexOf(heading) ?? -1;
      if (at === -1) throw new Error(`No heading ${heading} on ${tab}: ${all[0]?.join(", ")}`);
      return all[row - 1]?.[at] ?? null;
    },
  };
}

/** A workbook on which the tabs were set up. */
export function readyBook(options: Options = {}): TestBook {
  const book = openTestBook(options);
  const { problems } = book.setUp();
  if (problems.length > 0 && !options.tabs) throw new Error(problems.join("\n"));
  book.calls.length = 0;
  return book;
}

let ids = 0;
export const newId = (): string => `test-id-${String(++ids).padStart(6, "0")}`;

type CareEntry = RequestFor<"log care">["entries"][number];
type Batch = RequestFor<"log batch">["batch"];

export function careEntry(given: Partial<CareEntry> = {}): CareEntry {
  return {
    id: newId(),
    day: "2026-03-10",
    plant: "Monstera",
    event: "Top up",
    amountMl: 250,
    solution: "",
    ecMsCm: null,
    pH: null,
    reason: "",
    note: "",
    ...given,
  };
}

export function batch(given: Partial<Batch> = {}): Batch {
  return {
    id: newId(),
    day: "2026-03-10",
    litres: 10,
    water: "Tap",
    target: "Half strength",
    doses: [
      { feed: "Calcium nitrate", perLitre: 1.25, unit: "g", perBatch: 12.5 },
      { feed: "Green 10-5-5; old", perLitre: 0.5, unit: "mL", perBatch: 5 },
    ],
    reached: { N: 105.5, P: 15, K: 117, Ca: 80, Mg: 24 },
    predictedEcMsCm: 1.05,
    acid: "",
    note: "",
    ...given,
  };
}
