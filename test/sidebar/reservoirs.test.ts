/** "Reservoirs" without a page: what is due by place, the way to the log, and the salt of a pot worked by hand. */

import { describe, expect, test } from "vitest";
import { freshReservoir, readReservoir, withPlant } from "../../sidebar/reservoir-draft.ts";
import { figuresOf, plainWater } from "../../sidebar/reservoir-figures.ts";
import { dueByPlace, dueNow, openClaims, reservoirLog } from "../../sidebar/reservoir-log.ts";
import { drinkRows, potOf, sayDrinking, sayRecoveries } from "../../sidebar/reservoir-pot.ts";
import { pouredBy } from "../../sidebar/reservoir-poured.ts";
import { saltAnswer, saltLog } from "../../sidebar/reservoir-salt.ts";
import { sayCeiling, sayPlan, saySalt } from "../../sidebar/reservoir-words.ts";
import type { CareRow, Loaded } from "../../src/app/contract.ts";
import { dayFromIso } from "../../src/core/calendar.ts";
import { sheet } from "./sheet.ts";
import { openTestPanel } from "./world.ts";

let made = 0;
function row(day: string, event: string, more: Partial<CareRow> = {}): CareRow {
  made += 1;
  const blank = { amountMl: null, solution: "", ecMsCm: null, pH: null, who: "Ama", reason: "", note: "" };
  return { id: `care-${made}`, day, plant: "Fern 1", event, ...blank, ...more };
}

/** A fern of 2,000 mL: 560 mL of reservoir, filled with batch 1 (1.1 mS/cm read), 140 mL a week with batch 2 (0.62 expected). */
const CARE = [
  row("2026-02-15", "Solution change", { amountMl: 560, solution: "batch-0000-0001" }),
  ...["2026-02-22", "2026-03-01", "2026-03-08"].map((day) =>
    row(day, "Top up", { amountMl: 140, solution: "batch-0000-0002" }),
  ),
];

function loadedWith(care: readonly CareRow[], change: Partial<Loaded> = {}): Loaded {
  const base = sheet();
  return sheet({
    plants: base.plants.map((plant) => (plant.plant === "Fern 1" ? { ...plant, potMl: 2000 } : plant)),
    waters: [
      { row: 2, fields: { Water: "Tap", Na: 14, Cl: 22, EC: 0.45 } },
      { row: 3, fields: { Water: "Rain barrel", Na: 1, Cl: 1, EC: 0.04 } },
    ],
    care: { rows: [...care], from: "2026-01-01", all: true },
    ...change,
  });
}
const day = (iso: string) => dayFromIso(iso) ?? Number.NaN;

describe("what is due", () => {
  test("stands under the plant's place, thirsty by its own rate", () => {
    // 20 mL a day, filled on 8 March with 140 mL as usual: thirsty from 15 March on.
    const loaded = loadedWith(CARE, { today: "2026-03-16" });
    const log = reservoirLog(loaded);
    const places = dueByPlace(dueNow(log, loaded.plants), loaded.plants);
    expect(places).toEqual([
      {
        place: "Kitchen sill",
        due: [expect.objectContaining({ plant: "Fern 1", due: "Top up", sinceDay: day("2026-03-15") })],
      },
    ]);
  });

  test("goes by the household's own rules; one that cannot be read is told and its default counts", () => {
    const told = (settings: Record<string, string>) => {
      const log = reservoirLog(loadedWith(CARE, { settings }));
      return { due: dueNow(log, loadedWith(CARE).plants).map(({ due }) => due), problems: log.problems };
    };
    expect(told({})).toEqual({ due: [], problems: [] });
    expect(told({ "Flush days": "20" }).due).toEqual(["Flush"]);
    expect(told({ "flush  days": "off", "Change days": "27" }).due).toEqual(["Change"]);
    const broken = told({ "Flush days": "every month" });
    expect(broken.due).toEqual([]);
    expect(broken.problems).toEqual([expect.stringMatching(/^Flush days in Settings is "every month"/)]);
  });

  test("claims to look at again are those still open", () => {
    const fields = { Claim: "Rain water keeps tips green", "Look again": "2026-03-01" };
    expect(openClaims([{ row: 2, fields }])).toEqual([
      { claim: "Rain water keeps tips green", lookAgainDay: day("2026-03-01") },
    ]);
    for (const change of [{ Status: "Dropped" }, { "Look again": "some day" }, { Claim: "" }]) {
      expect(openClaims([{ row: 2, fields: { ...fields, ...change } }])).toEqual([]);
    }
  });

  test("a press opens the log with the plants and the event chosen, and sends nothing", async () => {
    const { panel, host } = await openTestPanel();
    const asked = host.calls.length;
    panel.care.choose(["Arum 2"], true);
    panel.reservoir.log("Top up", ["Fern 1", "Hoya 3"]);
    expect(panel.section.get()).toBe("care");
    const draft = panel.care.draft.get();
    expect(Object.keys(draft.chosen)).toEqual(["Fern 1", "Hoya 3"]);
    expect(draft.event).toBe("Top up");
    panel.reservoir.log("Flush", ["Fern 1"]);
    // The household's list of events has no flush: choose.
    expect(panel.care.draft.get().event).toBe("");
    expect(host.calls.length).toBe(asked);
  });
});

describe("one plant", () => {
  const loaded = loadedWith([
    ...CARE,
    row("2025-11-01", "Repot"),
    row("2025-12-01", "New leaf"),
    row("2026-03-10", "Root trim", { plant: "Arum 2" }),
  ]);
  const log = reservoirLog(loaded);

  test("its drinking is said with its numbers", () => {
    const pot = potOf(log, "Fern 1");
    expect(sayDrinking(pot, log.today)).toEqual([
      "It drinks 20 mL a day, over the last four weeks as far as they are known.",
      "Over eight weeks it drinks neither more nor less.",
      "Last filled on 8 Mar 2026, 6 days ago.",
      "The next top-up, about 140 mL, is due on 15 Mar 2026.",
    ]);
    expect(drinkRows(pot.drunk, log.today)).toEqual(
      ["8 Mar 2026", "1 Mar 2026", "22 Feb 2026"].map((on) => ({ day: on, days: 7, amountMl: 140, mlDay: 20 })),
    );
    expect(sayRecoveries(pot)).toEqual(["Repot on 1 Nov 2025: first new leaf or root in the log after 30 days."]);
  });

  test("what is not known is said to be so", () => {
    expect(sayDrinking(potOf(log, "Hoya 3"), log.today)).toEqual([
      "No top-up, change or repot of this plant is in the log yet.",
    ]);
    const arum = potOf(log, "Arum 2");
    expect(sayDrinking(arum, log.today)).toEqual([
      "Last filled on 10 Mar 2026, 4 days ago.",
      "How fast it drinks is told by its next top-up with an amount.",
    ]);
    expect(sayRecoveries(arum)).toEqual(["Root trim on 10 Mar 2026: no new leaf or root in 4 days yet."]);
  });
});

describe("the salt of a pot", () => {
  function worked(care: readonly CareRow[], figures: Readonly<Record<string, string>> = {}) {
    const loaded = loadedWith(care);
    const log = reservoirLog(loaded);
    const pot = potOf(log, "Fern 1");
    const [plant] = loaded.plants;
    const salt = plant === undefined ? null : saltLog(log, pot, plant, pouredBy(loaded));
    if (salt === null) throw new Error("The fern was filled.");
    const fresh = withPlant(freshReservoir(), "Fern 1");
    const draft = { ...fresh, figures: { ...fresh.figures, ...figures } };
    const read = figuresOf({ draft, loaded, log, pot, salt, plain: plainWater(loaded) });
    const answer = read.figures === null ? null : saltAnswer(salt, read.figures, log.today);
    return { log, salt, read, answer };
  }

  test("takes its figures from the log: 28 % of the pot, what was read or expected of each batch, the weakest water", () => {
    expect(worked(CARE).read.figures).toEqual({
      volumeMl: 560,
      fillEc: 1.1,
      topUpEc: 0.62,
      plainEc: 0.04,
      ceiling: 2,
      everyDays: 7,
      useMlDay: 20,
      measured: null,
    });
  });

  test("knows a batch by its Id, a water by its name, and a target by the newest batch made for it by that day", () => {
    const levels = pouredBy(loadedWith([]));
    expect(levels(" BATCH-0000-0001", day("2026-03-01")).ecMsCm).toBe(1.1);
    expect(levels("rain barrel", day("2026-03-01"))).toEqual({ ecMsCm: 0.04, Na: 1, Cl: 1 });
    expect(levels("Foliage, half strength", day("2026-02-15"))).toEqual({ ecMsCm: 1.1, Na: 14, Cl: 22 });
    expect(levels("Rooting, weak", day("2026-03-02")).ecMsCm).toBe(0.62);
    // Its batch was mixed on 1 March.
    const unknown = { ecMsCm: null, Na: null, Cl: null };
    for (const name of ["Rooting, weak", "Something else", ""])
      expect(levels(name, day("2026-02-28"))).toEqual(unknown);
  });

  test("worked by hand: 1.1 + 0.62 × 420 / 560 = 1.565 if all stays; sodium 14 + 14 × 0.75 = 24.5", () => {
    const { answer, read, log } = worked(CARE);
    if (answer === null || read.figures === null) throw new Error("All figures are known.");
    expect(answer.usedMl).toBe(420);
    expect(answer.allStay).toBeCloseTo(1.565, 12);
    expect(answer.uptake).toBeNull();
    expect(answer.ions).toEqual([
      { ion: "Na", fill: 14, now: expect.closeTo(24.5, 10) },
      { ion: "Cl", fill: 22, now: expect.closeTo(38.5, 10) },
    ]);
    // 0.62 × 20 / 560 a day: (2 − 1.565) / 0.02214 = 19.6 days from 8 March.
    expect(answer.ceilingDay).toBe(day("2026-03-27"));
    // From 2 back to 1.1 with water of 0.04: 560 ln(1.96 / 1.06) = 344.2 mL.
    expect(answer.flushMl).toBeCloseTo(560 * Math.log(1.96 / 1.06), 9);
    expect(saySalt(answer, read.figures, log.today)).toEqual([
      "Drunk and replaced since: 420 mL, 0.75 times what it holds.",
      "If the plant took up water alone, it would read 1.56 mS/cm when full.",
      "Measure the EC, and it can be told what the plant takes up.",
    ]);
    expect(sayCeiling(answer, read.figures, log.today)).toBe(
      "It reaches the ceiling of 2.00 mS/cm on 27 Mar 2026, at the earliest. Flush with 350 mL of plain water then, or change the solution.",
    );
    // 140 mL of 0.62 add 0.155 each: 1.72, 1.875, then plain 0.01 each: 1.885 …
    expect(answer.plan.map(({ kind }) => kind).join(" ")).toBe("fed fed plain plain plain plain plain plain");
    expect(answer.plan[0]).toMatchObject({ day: day("2026-03-15"), amountMl: 140 });
    expect(sayPlan(answer, read.figures)).toBe(
      "To stay at or below 2.00 mS/cm, one every 7 days: 2 with feed and 6 with plain water. Without a reading this is the careful side.",
    );
  });

  test("a reading tells what the plant takes up: 1.205 instead of 1.565 after 420 mL is 0.48", () => {
    const read = [...CARE, row("2026-03-08", "Reading", { ecMsCm: 1.205 })];
    const { answer, read: found, log } = worked(read);
    if (answer === null || found.figures === null) throw new Error("All figures are known.");
    expect(answer.uptake).toBeCloseTo(0.48, 9);
    expect(answer.expected).toBeCloseTo(1.205, 9);
    expect(saySalt(answer, found.figures, log.today).slice(2)).toEqual([
      "Measured 1.21 mS/cm on 8 Mar 2026: with the water the plant takes up about 0.48 mS/cm, 77.4 % of what a top-up brings.",
      "So it should read 1.21 mS/cm when full now.",
    ]);
    // (0.62 − 0.48) × 20 / 560 a day: 159 days from 8 March.
    expect(answer.ceilingDay).toBe(day("2026-03-08") + 159);
    const strong = worked(read, { measuredEc: "2,4" });
    expect(
      strong.answer !== null &&
        strong.read.figures !== null &&
        saySalt(strong.answer, strong.read.figures, strong.log.today)[2],
    ).toBe(
      "It reads 2.40 mS/cm, more than could stay behind. Was it full and stirred, and are all top-ups in the log?",
    );
  });

  test("says whether the ceiling is reached, may be, or never will", () => {
    const say = (figures: Readonly<Record<string, string>>): string => {
      const { answer, read, log } = worked(CARE, figures);
      if (answer === null || read.figures === null) throw new Error("All figures are known.");
      return sayCeiling(answer, read.figures, log.today);
    };
    // 1.565 if all stays; 560 ln(1.525 / 1.06) = 203.7 mL bring it back to 1.1.
    expect(say({ ceiling: "1,5" })).toBe(
      "It may have reached the ceiling of 1.50 mS/cm, if the plant took up water alone. Measure it. Flush with 210 mL of plain water if so, or change the solution.",
    );
    expect(say({ ceiling: "1,5", measuredEc: "1.565" })).toBe(
      "It has reached the ceiling of 1.50 mS/cm. Flush with 210 mL of plain water now, or change the solution.",
    );
    // 1.1 read after 420 of 560 mL: 0.62 taken up, as much as a top-up brings.
    expect(say({ measuredEc: "1,0" })).toBe("Topped up like this it never reaches the ceiling of 2.00 mS/cm.");
    expect(say({ ceiling: "1,5", plainEc: "1,2" })).toMatch(/Measure it\. Change the solution if so: this plain water/);
  });

  test("a flush leaves exp(−F/V): 840 mL through 560 mL with rain of 0.04", () => {
    const flushed = [...CARE, row("2026-03-10", "Flush in place", { amountMl: 840, solution: "Rain barrel" })];
    const { answer } = worked(flushed);
    expect(answer?.allStay).toBeCloseTo(0.04 + (1.565 - 0.04) * Math.exp(-1.5), 9);
    expect(
      worked(flushed.map((one) => ({ ...one, solution: one.event === "Flush in place" ? "" : one.solution }))).answer
        ?.allStay,
    ).toBeCloseTo(0.04 + (1.565 - 0.04) * Math.exp(-1.5), 9);
  });

  test("what is typed goes before the log, and what is missing or wrong is said", () => {
    expect(worked(CARE, { volumeMl: "700 mL", ceiling: "1,8" }).read.figures).toMatchObject({
      volumeMl: 700,
      ceiling: 1.8,
    });
    expect(worked(CARE, { volumeMl: "a jug" }).read.missing).toMatch(/^Reservoir is "a jug"/);
    const unknown = worked(CARE.map((one) => ({ ...one, solution: "" })));
    expect(unknown.read.missing).toBe("Type the EC it was filled with.");
    expect(
      worked(
        CARE.map((one) => ({ ...one, solution: "" })),
        { fillEc: "1", topUpEc: "1" },
      ).read.missing,
    ).toBeNull();
    expect(worked(CARE.slice(0, 1)).read.missing).toBe("How fast it drinks is told by its next top-up with an amount.");
    expect(worked(CARE, { topUpEc: "2,2" }).answer?.problem).toBe(
      "The fed solution reads 2.2, above the ceiling of 2. Take a weaker one or a higher ceiling.",
    );
  });
});

test("a draft that was kept comes back, anything else does not", () => {
  const draft = { ...withPlant(freshReservoir(), "Fern 1"), place: "Stairwell", ecUnit: "ppm" as const };
  expect(readReservoir(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
  expect(readReservoir("Fern")).toBeNull();
  expect(readReservoir({ plant: 3, figures: [] })).toEqual(freshReservoir());
});
