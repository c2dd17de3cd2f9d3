/** Recovery after a disturbance, worked by hand: what counts, what cuts short, and who is still waited for. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { eventRule } from "../../src/core/events.ts";
import { recoveries } from "../../src/core/recovery.ts";
import type { LogEntry } from "../../src/core/roots.ts";

const row = (day: number, event: string, plant = "Fern"): LogEntry => ({ day, plant, event });
const of = (rows: readonly LogEntry[], asOfDay: number, plant = "fern") =>
  recoveries(rows, eventRule(), asOfDay).get(plant) ?? [];

describe("worked by hand", () => {
  it("counts the days to the first new leaf or root on a later day", () => {
    const log = [row(10, "Repot"), row(31, "New root"), row(24, "New leaf"), row(12, "Top up")];
    expect(of(log, 100)).toEqual([{ day: 10, event: "Repot", recoveredDay: 24, days: 14, cutShort: false }]);
  });

  it("keeps a plant that has not recovered yet, with the days watched so far", () => {
    expect(of([row(10, "Repot"), row(24, "New leaf")], 20)).toEqual([
      { day: 10, event: "Repot", recoveredDay: null, days: 10, cutShort: false },
    ]);
  });

  it("keeps one that was disturbed again before it recovered, watched up to then", () => {
    const log = [row(10, "Repot"), row(40, "Root trim"), row(40, "Division"), row(70, "New root")];
    expect(of(log, 100)).toEqual([
      { day: 10, event: "Repot", recoveredDay: null, days: 30, cutShort: true },
      { day: 40, event: "Division, Root trim", recoveredDay: 70, days: 30, cutShort: false },
    ]);
  });

  it("growth seen on the day of a disturbance was there before it", () => {
    expect(of([row(10, "Repot"), row(40, "Root trim"), row(40, "New leaf")], 50)).toEqual([
      { day: 10, event: "Repot", recoveredDay: 40, days: 30, cutShort: false },
      { day: 40, event: "Root trim", recoveredDay: null, days: 10, cutShort: false },
    ]);
  });

  it("takes the first growth after each, whatever grew before, and passes over events that nobody knows", () => {
    const log = [row(1, "New leaf"), row(9, "New leaf"), row(10, "Repot"), row(12, "Haircut"), row(24, "New root")];
    expect(of([...log, row(40, "Repot"), row(40, "New leaf"), row(55, "New leaf")], 60)).toEqual([
      { day: 10, event: "Repot", recoveredDay: 24, days: 14, cutShort: false },
      { day: 40, event: "Repot", recoveredDay: 55, days: 15, cutShort: false },
    ]);
  });

  it("growth before any disturbance and plants never disturbed say nothing", () => {
    expect(of([row(1, "New leaf"), row(10, "Pot up")], 12)).toEqual([
      { day: 10, event: "Pot up", recoveredDay: null, days: 2, cutShort: false },
    ]);
    expect(recoveries([row(1, "New leaf"), row(2, "Top up"), row(2, "Repot", " ")], eventRule(), 50).size).toBe(0);
  });
});

it("each disturbance comes out once, and every day adds up, in whatever order the rows stand", () => {
  const rows = fc.array(
    fc.record({
      day: fc.integer({ min: 0, max: 60 }),
      plant: fc.constantFrom("Fern", "fern "),
      event: fc.constantFrom("Repot", "Root trim", "New leaf", "New root", "Top up"),
    }),
    { maxLength: 30 },
  );
  fc.assert(
    fc.property(rows, (log) => {
      const found = of(log, 60);
      expect(of(log.slice().reverse(), 60)).toEqual(found);
      const days = new Set(log.filter(({ event }) => event === "Repot" || event === "Root trim").map(({ day }) => day));
      expect(found.map(({ day }) => day)).toEqual([...days].sort((a, b) => a - b));
      for (const { day, days: passed, recoveredDay, cutShort } of found) {
        expect(passed).toBeGreaterThanOrEqual(0);
        const grown = log.some((one) => one.day === recoveredDay && one.event.startsWith("New"));
        expect(recoveredDay === null || grown).toBe(true);
        if (recoveredDay === null && !cutShort) expect(day + passed).toBe(60);
      }
    }),
  );
});
