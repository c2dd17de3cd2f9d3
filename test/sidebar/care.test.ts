/** "Log care": which plants are shown and chosen, the rows of one press, and what stays for the next. */

import { describe, expect, test } from "vitest";
import { careNumbers, freshCare, plantsOnce, readCare, restWords, shownPlants } from "../../sidebar/care.ts";
import { plantsAfter } from "../../sidebar/care-after.ts";
import { sheet } from "./sheet.ts";
import { openTestPanel, said } from "./world.ts";

const { plants } = sheet();
const names = (find: string, place = ""): string[] => shownPlants({ find, place }, plants).map(({ plant }) => plant);

describe("the list of plants", () => {
  test("is narrowed by place, name and kind, whatever the case and spaces", () => {
    expect(names("", "Stairwell")).toEqual(["Arum 2", "Fern 5", "Peperomia 8", "Hoya 11"]);
    expect(names("  HOYA ")).toEqual(["Hoya 3", "Hoya 7", "Hoya 11"]);
    expect(names("1 hoya")).toEqual(["Hoya 11"]);
    expect(names("cactus")).toEqual([]);
  });

  test("has each name once", () => {
    const [first] = plants;
    if (first === undefined) throw new Error("There should be plants.");
    expect(plantsOnce([first, { ...first, plant: " FERN  1 " }, { ...first, plant: "" }])).toEqual([first]);
  });

  test("says how long roots were left alone", () => {
    expect([null, 0, 1, 200].map(restWords)).toEqual([
      "no root disturbance on record",
      "roots disturbed today",
      "1 day at rest",
      "200 days at rest",
    ]);
  });
});

describe("one press", () => {
  test("logs one row a plant in one request, and counts rest anew", async () => {
    const { panel, host } = await openTestPanel();
    panel.care.choose(["Fern 1", "Hoya 3", "Fern 5"], true);
    panel.care.draft.change((now) => ({
      ...now,
      event: "Repot",
      day: "2026-03-10",
      amountMl: "0,25",
      pH: "5,8",
      reason: " too small ",
      note: "=1+1",
    }));
    const before = host.calls.length;
    panel.care.sender.press();
    panel.care.sender.press();
    expect(host.calls.length).toBe(before + 1);
    const { request } = host.last();
    if (request.ask !== "log care") throw new Error("It should log care.");
    expect(request.who).toBe("Ama");
    expect(request.entries.map(({ plant }) => plant)).toEqual(["Fern 1", "Hoya 3", "Fern 5"]);
    expect(new Set(request.entries.map(({ id }) => id)).size).toBe(3);
    expect(request.entries[0]).toMatchObject({
      day: "2026-03-10",
      event: "Repot",
      amountMl: 0.25,
      pH: 5.8,
      ecMsCm: null,
      reason: "too small",
      note: "=1+1",
    });
    await host.last().reply({ written: 3, already: 0, differing: [] });
    expect(said(panel.care.sender)).toBe("done: Logged Repot for 3 plants on 10 Mar 2026.");
    const rest = panel.loaded
      .get()
      ?.plants.slice(0, 5)
      .map(({ restDays }) => restDays);
    expect(rest).toEqual([0, 17, 4, 51, 4]);
    expect(panel.care.draft.get()).toMatchObject({
      chosen: {},
      event: "Repot",
      day: "2026-03-10",
      amountMl: "",
      reason: "",
      note: "",
    });
  });

  test("that failed keeps all, and tries again with the same ids", async () => {
    const { panel, host } = await openTestPanel();
    panel.care.choose(["Fern 1", "Arum 2"], true);
    panel.care.draft.change((now) => ({ ...now, event: "Top up", amountMl: "200" }));
    const typed = panel.care.draft.get();
    panel.care.sender.press();
    const first = host.last().request;
    await host.last().lose();
    expect(panel.care.draft.get()).toEqual(typed);
    panel.care.sender.press();
    expect(host.last().request).toEqual(first);
  });

  test("leaves what was typed while it was under way", async () => {
    const { panel, host } = await openTestPanel();
    panel.care.choose(["Fern 1"], true);
    panel.care.draft.change((now) => ({ ...now, event: "Top up", amountMl: "200", note: "first" }));
    panel.care.sender.press();
    panel.care.choose(["Arum 2"], true);
    const id = panel.care.draft.get().chosen["Arum 2"];
    panel.care.draft.change((now) => ({ ...now, note: "second" }));
    await host.last().reply({ written: 1, already: 0, differing: [] });
    expect(panel.care.draft.get()).toMatchObject({ chosen: { "Arum 2": id }, amountMl: "", note: "second" });
  });

  test("whose rows hold something else keeps the fields and shows the sheet's sentences", async () => {
    const { panel, host } = await openTestPanel();
    panel.care.choose(["Fern 1"], true);
    panel.care.draft.change((now) => ({ ...now, event: "Top up", amountMl: "200" }));
    panel.care.sender.press();
    await host.last().reply({ written: 0, already: 1, differing: ["Already in row 4, with another Amount mL."] });
    expect(panel.care.draft.get()).toMatchObject({ chosen: {}, amountMl: "200" });
    expect(panel.care.sender.now.get()).toMatchObject({ notes: ["Already in row 4, with another Amount mL."] });
  });

  test.each([
    [{}, [], "Choose at least one plant."],
    [{ event: "" }, ["Fern 1"], "Choose what happened."],
    [{ event: "Top up", day: "none" }, ["Fern 1"], "Choose the date."],
    [{ event: "Top up", amountMl: "a cup" }, ["Fern 1"], 'Amount is "a cup". Give a plain number in mL, like 1.2.'],
    [{ event: "Top up", ec: "1400" }, ["Fern 1"], "EC is 1400 mS/cm. Give a number from 0 to 20 mS/cm."],
    [{ event: "Top up", pH: "57" }, ["Fern 1"], "pH is 57. Give a number from 0 to 14."],
  ])("%o for %o is not sent: %s", async (change, chosen, sentence) => {
    const { panel, host } = await openTestPanel();
    panel.care.choose(chosen, true);
    panel.care.draft.change((now) => ({ ...now, ...change }));
    panel.care.sender.press();
    expect(said(panel.care.sender)).toBe(`blocked: ${sentence}`);
    expect(host.calls).toHaveLength(1);
  });

  test("does not log a plant that has left the list", async () => {
    const { panel, host } = await openTestPanel();
    panel.care.choose(["Fern 1", "Arum 2"], true);
    panel.care.draft.change((now) => ({ ...now, event: "Note" }));
    panel.loaded.change((now) => (now === null ? null : { ...now, plants: now.plants.slice(1) }));
    panel.care.sender.press();
    expect(host.last().request).toMatchObject({ entries: [{ plant: "Arum 2" }] });
  });
});

describe("a meter in ppm", () => {
  // 700 ppm for each mS/cm on the "700" scale: 980 ppm is 1.4 mS/cm (common practice, no source).
  test("is read on the scale of the settings, and in mS/cm when that is chosen", () => {
    const draft = { ...freshCare(), ec: "980 ppm" };
    expect(careNumbers(draft, { meterScale: 700 }).ec.value).toBeCloseTo(1.4, 12);
    expect(careNumbers({ ...draft, ec: "1,4", ecUnit: "mS/cm" }, { meterScale: 700 }).ec.value).toBe(1.4);
    expect(careNumbers({ ...draft, ec: "1.234" }, { meterScale: null }).ec.value).toBe(1.234);
    expect(careNumbers(draft, { meterScale: null }).ec.problem).toContain("980 ppm");
  });
});

describe("rest after logging", () => {
  const entry = {
    id: "x",
    plant: "fern 1",
    event: "repot",
    amountMl: null,
    solution: "",
    ecMsCm: null,
    pH: null,
    reason: "",
    note: "",
  };
  test("is not counted anew by an older disturbance or one in the future", () => {
    const now = sheet();
    for (const day of ["2025-01-01", "2026-03-15"]) {
      expect(plantsAfter(now, [{ ...entry, day, plant: "Arum 2" }])).toEqual(now.plants);
    }
  });
});

test("a draft comes back as it was kept", () => {
  const draft = { ...freshCare(), chosen: { "Fern 1": "id-000001" }, find: "fern", ecUnit: "ppm" as const };
  expect(readCare(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
  expect(readCare("x")).toBeNull();
});
