/** Cells for tests: examples turned into what a host hands over, and answers compared with what is expected. */

import { expect } from "vitest";
import { createRunner } from "../../src/functions/runner.ts";
import type { ExampleValue } from "../../src/functions/words.ts";

const DAY_MS = 86_400_000;

/** A date cell of a host whose spreadsheet keeps UTC. */
export function date(iso: string): Date {
  return new Date(`${iso}T00:00:00Z`);
}

/** The runner on a host that keeps UTC. */
export const call = createRunner({
  dayOf: (value) =>
    value instanceof Date && !Number.isNaN(value.getTime()) ? Math.floor(value.getTime() / DAY_MS) : null,
  dateOf: (day) => new Date(day * DAY_MS),
});

/** A formula's outcome: its value, or the message it throws with. */
export function outcome(name: string, ...args: unknown[]): unknown {
  try {
    return call(name, args);
  } catch (error) {
    return `throws: ${(error as Error).message}`;
  }
}

/** An example's value as cells; `makeDate` gives the host's own dates. */
export function hostCells(value: ExampleValue, makeDate: (iso: string) => unknown = date): unknown {
  if (Array.isArray(value))
    return value.map((row: readonly ExampleValue[]) => row.map((cell) => hostCells(cell, makeDate)));
  return typeof value === "object" ? makeDate((value as { readonly day: string }).day) : value;
}

/** Dates, also of another realm, as ISO days, so that they can be compared. */
export function plain(value: unknown): unknown {
  if (Array.isArray(value)) return Array.from(value, plain);
  if (Object.prototype.toString.call(value) === "[object Date]")
    return { day: (value as Date).toISOString().slice(0, 10) };
  return value;
}

/** Numbers within a relative distance, everything else exactly. */
export function expectCells(actual: unknown, expected: ExampleValue, within: number): void {
  if (Array.isArray(expected)) {
    expect(Array.isArray(actual), `rows, not ${String(actual)}`).toBe(true);
    const rows = actual as unknown[];
    expect(rows.length).toBe(expected.length);
    expected.forEach((one: ExampleValue, at: number) => {
      expectCells(rows[at], one, within);
    });
  } else if (typeof expected === "number") {
    expect(typeof actual, `a number, not ${String(actual)}`).toBe("number");
    const scale = Math.max(Math.abs(expected), Number.MIN_VALUE);
    expect(
      Math.abs((actual as number) - expected) / scale,
      `${String(actual)} against ${expected}`,
    ).toBeLessThanOrEqual(within);
  } else {
    expect(actual).toEqual(expected);
  }
}
