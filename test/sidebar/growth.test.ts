/** Recovery curves and what fed what, by hand; the drawing beside its words, at 300 px. */

import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { atRisk, grownBy, growthBy, riskDays } from "../../sidebar/growth-curves.ts";
import { batchOf, fedBy, sayBatch, saySeen, solutionsOf, stretchesOf } from "../../sidebar/growth-fed.ts";
import { growthDrawing } from "../../sidebar/growth-plot.ts";
import type { CareRow, Loaded } from "../../src/app/contract.ts";
import { dayFromIso, isoFromDay } from "../../src/core/calendar.ts";
import { objections } from "../browser/axe.ts";
import { launch } from "../browser/chromium.ts";
import { care } from "./care-rows.ts";
import { openPanel, overflows } from "./page.ts";
import { sheet } from "./sheet.ts";

/** Rows as the sheet sends them: newest first. */
const withCare = (rows: readonly CareRow[], change: Partial<Loaded> = {}): Loaded =>
  sheet({
    care: {
      rows: [...rows].sort((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : 0)),
      from: "2025-01-01",
      all: true,
    },
    ...change,
  });
const later = (iso: string, days: number): string => isoFromDay((dayFromIso(iso) ?? 0) + days);

/** Repots on 1 June, new leaves so many days after; a plus for none by 14 March. */
function repots(event: string, from: string, waits: readonly (number | null)[]): CareRow[] {
  return waits.flatMap((days, k) => {
    const plant = `${event} ${k}`;
    const rows = [care(from, plant, event), care(from, plant, "Top up")];
    return days === null ? rows : [...rows, care(later(from, days), plant, "New leaf")];
  });
}

describe("recovery", () => {
  const loaded = withCare([
    ...repots("Repot", "2025-06-01", [10, 20, 30, 40, 50, null]),
    ...repots("Root trim", "2025-11-01", [60, 70, 80, 90, 100]),
    ...repots("Repot", "2025-06-01", []),
    care("2022-01-01", "Old one", "Repot"),
  ]);

  test("by event: shares, numbers still waited for and medians by hand", () => {
    const { curves, test: ranked, sentence } = growthBy({ sort: "event", after: "" }, loaded);
    expect(curves.map((one) => one.sentence)).toEqual([
      "Repot: 5 of 6 grew again; half had within 30 days.",
      "Root trim: 5 of 5 grew again; half had within 80 days.",
    ]);
    const [repot] = curves;
    if (repot === undefined) throw new Error("no curve");
    expect(grownBy(repot, 9)).toBe(0);
    expect(grownBy(repot, 20)).toBeCloseTo(2 / 6, 12);
    expect(grownBy(repot, 287)).toBeNull();
    expect(atRisk(repot, 30)).toBe(4);
    expect(riskDays(curves)).toEqual([0, 77, 154, 231, 308]);
    expect(ranked?.freedom).toBe(1);
    expect(sentence).toMatch(
      /^Repot and Root trim differ by .* \(log-rank test, p .*\)\. Plants were not drawn into these groups, so this shows no cause\.$/,
    );
  });

  test("by half of the year and by medium", () => {
    expect(
      growthBy({ sort: "season", after: "" }, loaded).curves.map(({ name, curve }) => [name, curve.count]),
    ).toEqual([
      ["April to September", 6],
      ["October to March", 5],
    ]);
    const media = growthBy(
      { sort: "medium", after: "" },
      {
        ...loaded,
        plants: [{ ...sheet().plants[0], plant: "repot 0", medium: "Clay" } as Loaded["plants"][number]],
      },
    );
    expect(media.curves.map(({ name, curve }) => [name, curve.count])).toEqual([
      ["Medium not known", 10],
      ["Clay", 1],
    ]);
    expect(media.sentence).toBe("Too few to compare: a group needs 5 that grew again, and two such groups.");
  });

  test("after one kind of disturbance only", () => {
    const { curves } = growthBy({ sort: "season", after: "root trim" }, loaded);
    expect(curves.map(({ name, curve }) => [name, curve.count])).toEqual([["October to March", 5]]);
  });

  test("with fewer than five that grew again it is too few to tell, and nothing is drawn", () => {
    const few = growthBy({ sort: "event", after: "" }, withCare(repots("Repot", "2025-06-01", [10, 20, 30, 40, null])));
    expect(few.curves).toMatchObject([{ enough: false, sentence: "Repot: 4 of 5 grew again, too few to tell." }]);
    expect(few.sentence).toBe("");
    expect(growthBy({ sort: "event", after: "" }, withCare([])).curves).toEqual([]);
  });

  test("is drawn as stairs: flat up to the day, then up", () => {
    const [repot] = growthBy({ sort: "event", after: "" }, loaded).curves;
    if (repot === undefined) throw new Error("no curve");
    const { data } = growthDrawing([repot]);
    const [days = [], shares = []] = data;
    const at = (day: number) => (shares as (number | null)[])[[...days].findIndex((one) => one >= day - 0.002)];
    expect(at(10)).toBe(0);
    expect([...days]).toContain(10);
    expect((shares as (number | null)[])[[...days].indexOf(10)]).toBeCloseTo(100 / 6, 9);
    expect(days[days.length - 1]).toBe(50);
  });
});

describe("what fed what", () => {
  const loaded = withCare([
    care("2026-02-16", "Fern 1", "Solution change", { solution: "batch-0000-0001", amountMl: 400 }),
    care("2026-02-20", "fern 1", "Top up", { solution: "Batch-0000-0001", amountMl: 150 }),
    care("2026-02-24", "Fern 1", "New leaf", { note: "Largest so far" }),
    care("2026-03-02", "Fern 1", "Top up", { solution: "Rain", amountMl: 100 }),
    care("2026-03-01", "Arum 2", "Top up", { solution: "batch-0000-0001", amountMl: 100 }),
  ]);

  test("of one plant: each solution with its days, its batch and what was seen meanwhile", () => {
    const stretches = stretchesOf("Fern 1", loaded);
    expect(stretches).toMatchObject([
      { solution: "Rain", from: "2026-03-02", to: "2026-03-02", pours: 1, batch: null, seen: [] },
      { from: "2026-02-16", to: "2026-02-20", pours: 2, amountMl: 550, batch: { id: "batch-0000-0001" } },
    ]);
    expect(saySeen(stretches[1]?.seen ?? [])).toBe("1 × New leaf");
    expect(stretches[1]?.batch && sayBatch(stretches[1].batch)).toBe("Foliage, half strength; EC 1.1 mS/cm, pH 5.9");
  });

  test("of one solution: the plants that got it, the last first", () => {
    expect(solutionsOf(loaded).map((name) => name.toLowerCase())).toEqual(["rain", "batch-0000-0001"]);
    expect(fedBy("batch-0000-0001", loaded)).toEqual([
      { plant: "Arum 2", from: "2026-03-01", to: "2026-03-01", pours: 1 },
      { plant: "Fern 1", from: "2026-02-16", to: "2026-02-20", pours: 2 },
    ]);
    expect(batchOf({ solution: "Rooting, weak", day: "2026-02-28" }, loaded.batches)).toBeNull();
    expect(batchOf({ solution: "Rooting, weak", day: "2026-03-01" }, loaded.batches)?.id).toBe("batch-0000-0002");
  });
});

describe("the section", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(() => browser.close());

  test.each(["light", "dark"] as const)("in %s: drawn, said, no objection, nothing sticking out", async (scheme) => {
    const loaded = withCare([
      ...repots("Repot", "2025-06-01", [10, 20, 30, 40, 50, null]),
      ...repots("Root trim", "2025-11-01", [60, 70, 80, 90, 100]),
      care("2026-02-16", "Fern 1", "Solution change", {
        solution: "batch-0000-0001",
        amountMl: 400,
        note: "x".repeat(90),
      }),
    ]);
    const opened = await openPanel(browser, { scheme, behave: () => ({ answer: { ok: true, reply: loaded } }) });
    try {
      const { page } = opened;
      await page.getByRole("button", { name: "Growth" }).click();
      await page.getByRole("img", { name: /Repot: 5 of 6 grew again; half had within 30 days\./ }).waitFor();
      await page.locator(".plot canvas").waitFor();
      for (const more of await page.locator("main summary").all()) await more.click();
      await page.getByLabel("A plant, and what it got").selectOption("Fern 1");
      await page.getByLabel("A solution, and who got it").selectOption({ index: 1 });
      expect(await objections(page)).toEqual([]);
      expect(await overflows(page)).toBe(false);
      await page.getByLabel("Compare by").selectOption("season");
      await page.getByText("April to September: 5 of 6 grew again").waitFor();
    } finally {
      await opened.close();
    }
  });
});
