/** "Know a water" without a page: how lines are understood, what is said of the water, blends, and what is saved. */

import { describe, expect, test } from "vitest";
import { besides, blendOf, linesOfRow, PURE, THIS_REPORT, waterChoices } from "../../sidebar/water-blend.ts";
import {
  correctLine,
  freshWater,
  makeWater,
  readWaterDraft,
  takeOutLine,
  type WaterDraft,
} from "../../sidebar/water-draft.ts";
import { alkalinityWords, balanceWords, ecWords, hardnessWords } from "../../sidebar/water-judged.ts";
import { readTyped } from "../../sidebar/water-report.ts";
import { checkWater } from "../../src/core/water-check.ts";
import { sheet } from "./sheet.ts";
import { openTestPanel, said } from "./world.ts";

const fresh = (change: Partial<WaterDraft> = {}): WaterDraft => ({ ...freshWater(), id: "made-id-1", ...change });
const read = (text: string, change: Partial<WaterDraft> = {}) => readTyped(fresh({ text, ...change }));

/**
 * Standard Methods 1030 E, worked water: Ca 85, Mg 43, K 2.9, Na 92, HCO3 362, Cl 131, SO4 89, NO3 20 mg/L, ion sums
 * 11.856 and 11.804 meq/L, difference +0.22 %.
 */
const WORKED = [
  "Calcium 85 mg/L",
  "Magnesium 43 mg/L",
  "Potassium 2,9 mg/L",
  "Sodium 92 ppm",
  "Bicarbonate 362 mg/L",
  "Chloride 131 mg/L",
  "Sulfate 89 mg/L",
  "Nitrate 20 mg/L as NO3",
].join("\n");

describe("a report", () => {
  test("keeps every line at its place, blank ones counted", () => {
    const { lines } = read("Calcium 62 mg/L\n\nTurbidity 0.2 NTU\nIron about a bit\n");
    expect(lines.map(({ at, status }) => [at, status])).toEqual([
      [0, "read"],
      [2, "passed over"],
      [3, "unclear"],
    ]);
  });

  test("counts a line that can be read in two ways only once it was answered", () => {
    const asked = read("Nitrate 20 mg/L");
    expect(asked).toMatchObject({ asks: true, water: {} });
    const words = asked.lines[0]?.readings.map((reading) => reading.words) ?? [];
    expect(words).toHaveLength(2);
    const answered = words.map((one) => read("Nitrate 20 mg/L", { answers: { "Nitrate 20 mg/L": one } }));
    expect(answered.map(({ asks }) => asks)).toEqual([false, false]);
    // 62.004 g of NO3 hold 14.007 g of N (CIAAW 2021).
    const values = answered.map(({ water }) => water["NO3-N"] ?? 0).sort((a, b) => a - b);
    expect(values[0]).toBeCloseTo((20 * 14.007) / 62.004, 3);
    expect(values[1]).toBe(20);
  });

  test("tells of a thing that two lines say differently, and is silent where they agree", () => {
    expect(read("Alkalinity 148 mg/L as CaCO3\nBicarbonate 180 mg/L").twice).toEqual([]);
    expect(read("Calcium 62 mg/L\nCa 80 mg/L")).toMatchObject({
      water: { Ca: 80 },
      twice: ["Ca stands there twice, as 62 and 80 mg/L. The later one counts; take out the wrong one."],
    });
  });

  test("keeps a line open that is emptied while it is corrected, and its spaces as they are typed", () => {
    const { lines } = read("Calcium 62 mg/L\n\nSodium \n", { open: [1, 2] });
    expect(lines.map(({ at, typed, status }) => [at, typed, status])).toEqual([
      [0, "Calcium 62 mg/L", "read"],
      [1, "", "passed over"],
      [2, "Sodium ", "unclear"],
    ]);
  });

  test("is corrected line by line: the other lines and what is open stay", () => {
    const draft = fresh({ text: "Calcium 62 mg/L\r\nIron a bit\nSodium 9 mg/L", open: [2] });
    const corrected = correctLine(draft, 1, "Iron 0.1\nmg/L");
    expect(corrected).toMatchObject({ text: "Calcium 62 mg/L\nIron 0.1 mg/L\nSodium 9 mg/L", open: [2, 1] });
    expect(takeOutLine(corrected, 0)).toMatchObject({ text: "Iron 0.1 mg/L\nSodium 9 mg/L", open: [1, 0] });
  });
});

describe("what is said of a water", () => {
  const { water } = read(WORKED);
  const check = checkWater(water);

  test("the worked water adds up as published", () => {
    expect(balanceWords(water, check)).toBe(
      "It adds up: cations 11.9, anions 11.8 meq/L, +0.22 %. Accepted up to 5 % apart (Standard Methods 1030 E).",
    );
  });

  test("a water of few ions is judged by 0.2 meq/L, a partial report not at all", () => {
    const small = read("Ca 20 mg/L\nMg 5 mg/L\nNa 5 mg/L\nHCO3 80 mg/L\nSO4 10 mg/L\nChloride 5 mg/L").water;
    expect(balanceWords(small, checkWater(small))).toContain("up to 0.2 meq/L apart");
    const part = read("Ca 20 mg/L\nMg 5 mg/L").water;
    expect(balanceWords(part, checkWater(part))).toBe("Cannot be said: the report has no Na, Alkalinity, SO4 or Cl.");
  });

  test("hardness and alkalinity name their scale", () => {
    // 2.497 Ca + 4.118 Mg (Standard Methods 2340 B) = 389; USGS: over 180 is very hard. 362 mg/L HCO3 / 61.016 =
    // 5.93 meq/L, between the 1.5 and 8.5 of FAO 29.
    expect(hardnessWords(check)).toBe("389 mg/L CaCO3, 21.8 °dH: very hard (USGS scale).");
    expect(alkalinityWords(water, check)).toBe(
      "297 mg/L CaCO3, 5.93 meq/L: slight to moderate restriction (FAO 29 scale).",
    );
  });

  test("the EC from the ions is set against the one that was reported", () => {
    expect(ecWords(water, check)).toMatch(/^1\.\d+ mS\/cm from the ions; none was reported\.$/);
    expect(ecWords({ ...water, EC: 10 }, check)).toMatch(/\d\d\.\d % less than reported \(10 mS\/cm\)\.$/);
    expect(ecWords({ Ca: 20 }, checkWater({ Ca: 20 }))).toContain("Mg, Na, Alkalinity, SO4 and Cl missing");
  });
});

describe("a blend", () => {
  const water = { ...read(WORKED).water, pH: 7.6, EC: 1.286 };

  test("of a water with itself is itself, its pH too", () => {
    const { lines, unknown } = blendOf(water, water, 0.3);
    for (const [line, value] of Object.entries(water)) expect(lines[line as "Ca"]).toBeCloseTo(value, 6);
    expect(unknown).toEqual([]);
  });

  test("has no line that only one of the two states", () => {
    const { lines, unknown } = blendOf(water, { Ca: 5, Fe: 1 }, 0.5);
    expect(lines).toEqual({ Ca: 45 });
    expect(unknown).toContain("Fe");
    expect(unknown).toContain("pH");
  });

  test("with pure water is the share of each line, and no line that nobody stated", () => {
    const choices = waterChoices(sheet().waters, water);
    expect(choices.map(({ key }) => key)).toEqual([THIS_REPORT, "tap", "rain barrel", PURE]);
    const [report, , , pure] = choices;
    if (report === undefined || pure === undefined) throw new Error("There should be four waters.");
    const nothing = besides(pure, report);
    expect(Object.keys(nothing).sort()).toEqual(Object.keys(water).sort());
    const { lines } = blendOf(water, nothing, 0.25);
    expect(lines.Ca).toBeCloseTo(21.25, 9);
    // Diluted with water that holds no CO2, a bicarbonate water goes up a little, never below the pure water's 7.
    expect(lines.pH).toBeGreaterThan(7);
    expect(lines.pH).toBeLessThan(8.5);
  });

  test("reads the tab's own numbers, decimal commas too, and leaves out a row it cannot read", () => {
    expect(linesOfRow({ Water: "Rain", Ca: 3, Mg: "0,4", Note: "x" }, "row 3")).toEqual({ Ca: 3, Mg: 0.4 });
    const rows = [{ row: 2, fields: { Water: "Odd", Ca: "a lot" } }];
    expect(waterChoices(rows, {}).map(({ key }) => key)).toEqual([PURE]);
  });
});

describe("saving", () => {
  const named = (text: string, change: Partial<WaterDraft> = {}) => {
    const draft = fresh({ text, name: " Spring ", ...change });
    return makeWater(draft, readTyped(draft), { today: "2026-03-14" });
  };

  test.each<[string, Partial<WaterDraft>, string]>([
    ["", {}, "Type or paste at least one line of a report."],
    ["Nitrate 20 mg/L", {}, "Choose what “Nitrate 20 mg/L” means first."],
    ["Ca 6 mg/L\nIron a bit", {}, "“Iron a bit” is not understood. Correct that line or take it out."],
    ["Ca 6 mg/L", { name: " " }, "Type a name for this water."],
    ["Ca 6 mg/L", { day: "none" }, "Choose the date."],
  ])("%j %o waits: %s", (text, change, sentence) => {
    expect(named(text, change)).toBe(sentence);
  });

  test("puts what has no column into the note, and names the disinfectant", () => {
    expect(named("Calcium 62 mg/L\nManganese 0.1 mg/L\nFree chlorine 0.5 mg/L", { note: "after rain" })).toEqual({
      ask: "log water",
      entry: {
        id: "made-id-1",
        water: "Spring",
        day: "2026-03-14",
        source: "",
        numbers: { Ca: 62 },
        disinfectant: "chlorine",
        note: "after rain (also reported: Mn 0.1 mg/L and Free chlorine 0.5 mg/L)",
      },
    });
  });

  test("keeps the id through a retry, offers the water for mixing, and takes another id for another report", async () => {
    const { panel, host } = await openTestPanel();
    panel.water.edit((now) => ({ ...now, text: "Calcium 62 mg/L", name: "Spring" }));
    panel.water.sender.press();
    await host.last().lose();
    const first = host.last().request;
    panel.water.sender.press();
    expect(host.last().request).toEqual(first);
    await host.last().reply({ written: 0, already: 1, differing: [] });
    expect(said(panel.water.sender)).toBe("done: “Spring” was there already, just so.");
    expect(panel.water.draft.get().saved).toBe(true);
    expect(panel.loaded.get()?.waters.map(({ fields }) => fields.Water)).toEqual(["Tap", "Rain barrel", "Spring"]);
    expect(panel.batch.shelf.get().waters.find(({ key }) => key === "spring")?.amounts).toEqual({ Ca: 62 });
    const before = panel.water.draft.get().id;
    panel.water.edit((now) => ({ ...now, name: "Spring, June" }));
    expect(panel.water.draft.get()).toMatchObject({ saved: false });
    expect(panel.water.draft.get().id).not.toBe(before);
  });

  test("a refusal is shown and leaves the report as it was", async () => {
    const { panel, host } = await openTestPanel();
    panel.water.edit((now) => ({ ...now, text: "Calcium 62 mg/L", name: "Tap" }));
    panel.water.sender.press();
    await host.last().fail("“Tap” already stands in row 2.");
    expect(said(panel.water.sender)).toBe("failed: “Tap” already stands in row 2.");
    expect(panel.water.draft.get()).toMatchObject({ text: "Calcium 62 mg/L", saved: false });
  });

  test("a draft that was kept is read back; what is spoilt is dropped", () => {
    const draft = fresh({ text: "Ca 1 mg/L", unit: "mmol/L", open: [0], sharePercent: 35, answers: { a: "b" } });
    expect(readWaterDraft(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
    expect(readWaterDraft({ ...draft, id: 7 })).toBeNull();
    const spoilt = readWaterDraft({ ...draft, unit: "stone", open: "x", sharePercent: 400 });
    expect(spoilt).toMatchObject({ unit: "", open: [], sharePercent: 50 });
  });
});

test("a long report is understood and judged within 10 ms a key", () => {
  const text = Array.from({ length: 10 }, () => WORKED).join("\n");
  const draft = fresh({ text });
  const times = Array.from({ length: 30 }, (_, index) => {
    const started = performance.now();
    const { water } = readTyped({ ...draft, text: `${text}\nBoron 0.${index} mg/L` });
    checkWater(water);
    blendOf(water, { ...water, Ca: index }, 0.5);
    return performance.now() - started;
  });
  expect(times.sort((a, b) => a - b)[15]).toBeLessThan(10);
});
