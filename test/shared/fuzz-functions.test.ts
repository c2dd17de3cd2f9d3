/** 5,000 random calls of every custom function: a cell or cells come back, or a sentence; soon, and never a throw without words. */

import { expect, test } from "vitest";
import { REFERENCE } from "../../src/functions/reference.ts";
import type { FunctionReference } from "../../src/functions/words.ts";
import { call, date, hostCells } from "../functions/cells.ts";
import { drawsFor } from "./draws.ts";

const CALLS = 5_000;
/** The host gives a formula 30 s; ten times the slowest honest one on a busy machine is far below. */
const MOST_MS = 3_000;

const WORDS = [
  ...["", " ", "Fern", "Repot", "Top up", "Taken back", "yes", "no", "EC", "pH", "Tap", "g", "mL", "L", "w/v", "w/w"],
  ...["10-5-5", "1,2", "1,234", "1.234,5", "1.2 g/L", "N P K", "N: 5; K: 3", "=1+1", "+1", "-", "2026-03-01", "1/2/3"],
  ...["#N/A", "#REF!", "NaN", "Infinity", "1e400", "0x10", "٣", "🌱", "\u0000", "'", '"', "a".repeat(5_000)],
  ...["constructor", "__proto__", "toString", "mineral", "organic", "planned", "mixed", "balance", "nitric 67%", "dH"],
];
const NUMBERS = [0, -0, 1, -1, 0.5, 7, 25, 100, 500, 1e6, 1e15, 1e308, -1e308, 5e-324, 46_000, Number.NaN, Infinity];
const ODD: readonly (() => unknown)[] = [
  () => null,
  () => undefined,
  () => true,
  () => false,
  () => date("2026-03-01"),
  () => date("1899-12-30"),
  () => new Date(Number.NaN),
  () => new Error("#NUM!"),
  () => ({}),
  () => Object.create(null),
  () => 10n,
  () => Symbol("x"),
  () => () => 1,
  () => new Map(),
];
const HEADINGS = [
  ...["Id", "Date", "Plant", "Event", "Amount mL", "EC", "pH", "Who", "Corrects", "Disturbs roots", "Feed", "Dose"],
  ...["Unit", "Basis", "Density", "Target", "Water", "Litres", "Doses", "Ca", "Mg", "Na", "Cl", "SO4", "Alkalinity"],
  ...["N", "P", "K", "P2O5", "K2O", "NO3-N", "NH4-N", "Origin", "Meter", "Standard", "Reading", " date ", "", "Mine"],
];

function argumentsOf(random: ReturnType<typeof drawsFor>) {
  const cell = (): unknown => {
    const kind = random.next();
    if (kind < 0.4) return random.pick(WORDS);
    if (kind < 0.6) return random.pick(NUMBERS);
    if (kind < 0.8) return random.between(-10, 500);
    return random.pick(ODD)();
  };
  const many = <T>(least: number, most: number, make: () => T): T[] =>
    Array.from({ length: random.whole(least, most) }, make);
  const argument = (): unknown => {
    const kind = random.next();
    if (kind < 0.4) return cell();
    if (kind < 0.6) return many(0, 6, () => [cell()]);
    if (kind < 0.7) return many(0, 4, () => many(0, 3, cell));
    if (kind < 0.75) return many(0, 4, cell);
    const headings = many(1, 6, (): unknown => random.pick(HEADINGS));
    return [headings, ...many(0, 5, () => headings.map(cell))];
  };
  /** An example with a cell or an argument of it spoilt, or arguments out of nowhere. */
  return (record: FunctionReference): unknown[] => {
    if (random.chance(0.5)) return many(0, record.args.length + 1, argument);
    const args: unknown[] = Array.from(random.pick(record.examples).args, (value) => hostCells(value));
    const at = random.whole(0, Math.max(0, args.length - 1));
    const whole = args[at];
    if (Array.isArray(whole) && whole.length > 0 && random.chance(0.7)) {
      const line: unknown = random.pick(whole);
      if (Array.isArray(line) && line.length > 0) line[random.whole(0, line.length - 1)] = cell();
    } else args[at] = argument();
    return args;
  };
}

function isCell(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  if (value instanceof Date) return Number.isFinite(value.getTime());
  return typeof value === "string" || typeof value === "boolean";
}

/** What is wrong with the answer to a call, or null; counts what was answered. */
function wrongWith(name: string, args: readonly unknown[], answered: { count: number }): string | null {
  let answer: unknown;
  try {
    answer = call(name, args);
  } catch (error) {
    const { name: kind, message } = error as Error;
    if (kind !== "BadInput" && kind !== "NoConvergence") return `${kind}: ${message}`;
    return /^\S[\s\S]*[.?]$/.test(message) ? null : `no sentence: ${message}`;
  }
  answered.count++;
  const rows: unknown[] = Array.isArray(answer) ? answer : [[answer]];
  const width = (rows[0] as unknown[] | undefined)?.length ?? 0;
  if (width === 0) return "no cell";
  for (const row of rows) {
    if (!Array.isArray(row) || row.length !== width) return "rows of unequal length";
    const odd: unknown = row.find((one) => !isCell(one));
    if (odd !== undefined || row.includes(undefined)) return `not a cell: ${String(odd)}`;
  }
  return null;
}

test.each(REFERENCE.map((record) => [record.name, record] as const))("%s", (name, record) => {
  const draw = argumentsOf(drawsFor(name));
  const answered = { count: 0 };
  let slowest = 0;
  for (let count = 0; count < CALLS; count++) {
    const args = draw(record);
    const shown = () => {
      try {
        return JSON.stringify(args).slice(0, 400);
      } catch {
        return args.map(String).join(", ").slice(0, 400);
      }
    };
    const started = performance.now();
    const wrong = wrongWith(name, args, answered);
    slowest = Math.max(slowest, performance.now() - started);
    if (wrong !== null) expect.unreachable(`call ${count} with ${shown()}: ${wrong}`);
  }
  expect(slowest).toBeLessThan(MOST_MS);
  expect(answered.count).toBeGreaterThan(0);
  expect(answered.count).toBeLessThan(CALLS);
});
