/** Meters in the panel: readings in a standard, their drift in words, and taking one back. */

import { describe, expect, test } from "vitest";
import { metersNumbers, uncorrected } from "../../sidebar/meters-draft.ts";
import { sayReading, standardRows, tryState } from "../../sidebar/meters-log.ts";
import type { FieldRow } from "../../src/app/contract.ts";
import { sheet } from "./sheet.ts";
import { openTestPanel, said } from "./world.ts";

const row = (at: number, fields: FieldRow["fields"]): FieldRow => ({ row: at, fields });
const ec = (at: number, date: string, reading: number, calibrated = false): FieldRow =>
  row(at, {
    Id: `meter-000${at}`,
    Date: date,
    Meter: "EC",
    Standard: 1.413,
    Reading: reading,
    Calibrated: calibrated,
    Who: "Ama",
  });
const records = (meterLog: FieldRow[]) => ({ purchases: [], meterLog, claims: [], trials: [], problems: [] });

/** A panel on the section, with what the Meter log holds. */
async function open(meterLog: FieldRow[] = []) {
  const opened = await openTestPanel();
  opened.panel.recordsLoading.press();
  await opened.host.last().reply(records(meterLog));
  return opened;
}

describe("the Meter log", () => {
  test("is read row by row; a row that says too little is told", () => {
    const { rows, problems } = standardRows([
      ec(2, "2026-03-01", 1.38),
      row(3, { Date: "2026-03-02", Meter: "ph", Standard: 7.01, Reading: 7.1 }),
      row(4, { Date: "2026-03-02", Meter: "pH", Standard: 7.01 }),
      row(5, { Date: "2026-03-02", Meter: "EC", Standard: 0, Reading: 1 }),
    ]);
    expect(rows.map(({ kind, reading }) => [kind, reading])).toEqual([
      ["EC", 1.38],
      ["pH", 7.1],
    ]);
    expect(problems).toEqual([
      "Row 4 of Meter log lacks a date, a meter (EC or pH), a standard or a reading, so it is left out.",
      "Row 5 of Meter log has a standard or a reading that no meter shows, so it is left out.",
    ]);
  });

  test("says of each reading how far off it was", () => {
    const [low, exact, high] = standardRows([
      ec(2, "2026-03-01", 1.413 * 0.98, true),
      ec(3, "2026-03-01", 1.413),
      row(4, { Date: "2026-03-02", Meter: "pH", Standard: 7.01, Reading: 7.1 }),
    ]).rows;
    expect(low && sayReading(low)).toBe("1.38 in 1.413 mS/cm, 2 % low, then set to it");
    expect(exact && sayReading(exact)).toBe("1.41 in 1.413 mS/cm, exact");
    expect(high && sayReading(high)).toBe("7.1 in pH 7.01, 0.09 high");
  });

  test("shows drift, and when to calibrate again, by the days in Settings", () => {
    const log = standardRows([ec(2, "2026-02-02", 1.413, true), ec(3, "2026-03-04", 1.413 * 0.99)]).rows;
    const state = tryState("EC", log, sheet({ today: "2026-03-14" }));
    // 1 % in 30 days; the other 4 % take 120, but no longer than 90 days after the last look.
    expect(state).toMatchObject({
      drift: {
        sentence:
          "At its last check the meter was 1 % off in the standard. It drifts 1 % in 30 days. Calibrate again in 80 days.",
      },
    });
    const sooner = tryState("EC", log, sheet({ today: "2026-03-14", settings: { "EC calibration days": "10" } }));
    expect(sooner).toMatchObject({ drift: { verdict: "calibrate now" } });
  });
});

describe("a reading in a standard", () => {
  test("is sent once, stands in the list, and leaves the form for the next buffer", async () => {
    const { panel, host } = await open();
    panel.meters.draft.change((now) => ({ ...now, meter: "pH", standard: "4.01", reading: "4,2", calibrated: true }));
    panel.meters.sender.press();
    panel.meters.sender.press();
    expect(host.calls).toHaveLength(3);
    expect(host.last().request).toEqual({
      ask: "log meter",
      who: "Ama",
      entry: {
        id: expect.stringMatching(/^made-id-/),
        day: "2026-03-14",
        meter: "pH",
        standard: 4.01,
        reading: 4.2,
        tempC: null,
        calibrated: true,
        note: "",
      },
    });
    await host.last().reply({ written: 1, already: 0, differing: [] });
    expect(said(panel.meters.sender)).toBe("done: Logged the pH meter in pH 4.01.");
    expect(standardRows(panel.records.get()?.meterLog ?? []).rows).toMatchObject([
      { kind: "pH", reading: 4.2, adjusted: true },
    ]);
    expect(panel.meters.draft.get()).toMatchObject({ meter: "pH", reading: "", calibrated: false });
  });

  test("that lacks something, or cannot be, is not sent", async () => {
    const { panel, host } = await open();
    const press = (change: object): string => {
      panel.meters.draft.change((now) => ({ ...now, ...change }));
      panel.meters.sender.press();
      return said(panel.meters.sender);
    };
    expect(press({})).toBe("blocked: Type what the meter showed in the standard.");
    expect(press({ standard: "other", reading: "1.4" })).toBe(
      "blocked: Type the value that is printed on the standard.",
    );
    expect(press({ other: "1413" })).toBe("blocked: The standard is 1413 mS/cm. Give a number from 0.001 to 20 mS/cm.");
    expect(host.calls).toHaveLength(2);
  });

  test("on a meter that does not correct for temperature is told what to expect", async () => {
    const { panel } = await open();
    const draft = { ...panel.meters.draft.get(), temp: "21" };
    // EPA Method 120.1: 0.01 M KCl reads 1305 µS/cm at 21 °C.
    expect(uncorrected(draft, metersNumbers(draft, sheet()))).toMatch(/should show 1\.3[01] mS\/cm in it at 21 °C/);
    const warm = { ...draft, temp: "25" };
    expect(uncorrected(warm, metersNumbers(warm, sheet()))).toBeNull();
  });
});

test("taking the last one back sends one row, and a try after a failure the same", async () => {
  const { panel, host } = await open([ec(2, "2026-03-01", 1.38)]);
  panel.meters.takeBackRow("meter-0002");
  const { request } = host.last();
  expect(request).toMatchObject({ ask: "take back", who: "Ama", log: "Meter log", takes: "meter-0002" });
  await host.last().fail("Busy.");
  panel.meters.takeBackRow("meter-0002");
  expect(host.last().request).toEqual(request);
  await host.last().reply({ written: 1, already: 0 });
  expect(panel.records.get()?.meterLog).toEqual([]);
});
