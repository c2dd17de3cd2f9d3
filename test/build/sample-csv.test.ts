/** The committed sample sheet: fresh, with the add-on's own headings, and telling a story that holds together. */

import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import Papa from "papaparse";
import { beforeAll, describe, expect, test } from "vitest";
import { SAMPLE_DIR, sampleFiles, staleFiles, writeSample } from "../../src/build/sample.ts";
import { answerTabs } from "../../src/build/sample-answers.ts";
import { sampleTabs } from "../../src/build/sample-tabs.ts";
import { drawRepeats } from "../../src/core/assignment.ts";
import { dayFromIso } from "../../src/core/calendar.ts";
import { TABS } from "../../src/sheet/tabs.ts";

type Row = Readonly<Record<string, string>>;

/** Tabs in which a number may lie below 0. */
const SIGNED = ["Purchases", "Trials"];

async function cells(tab: string): Promise<string[][]> {
  const text = await readFile(path.join(SAMPLE_DIR, `${tab}.csv`), "utf8");
  return Papa.parse<string[]>(text, { skipEmptyLines: true }).data;
}

async function rows(tab: string): Promise<Row[]> {
  const [headings = [], ...rest] = await cells(tab);
  return rest.map((row) => Object.fromEntries(headings.map((heading, at) => [heading, row[at] ?? ""])));
}

function dayOf(row: Row, heading = "Date"): number {
  const day = dayFromIso(row[heading] ?? "");
  if (day === null) throw new Error(`"${row[heading]}" under ${heading} is no day.`);
  return day;
}

describe("Committed files", () => {
  test("are what the generator writes", async () => {
    expect(await staleFiles(SAMPLE_DIR)).toEqual([]);
  });

  test("come out the same twice", () => {
    expect([...sampleFiles()]).toEqual([...sampleFiles()]);
  });

  test("are reported when changed, missing or of no tab", async () => {
    const directory = await mkdtemp(path.join(tmpdir(), "sample-"));
    try {
      await writeSample(directory);
      expect(await staleFiles(directory)).toEqual([]);
      await writeFile(path.join(directory, "Plants.csv"), "Plant\n");
      await rm(path.join(directory, "Care log.csv"));
      await writeFile(path.join(directory, "Shopping.csv"), "Thing\n");
      expect((await staleFiles(directory)).sort()).toEqual([
        "Care log.csv is missing.",
        "Plants.csv is stale.",
        "Shopping.csv belongs to no tab.",
      ]);
    } finally {
      await rm(directory, { recursive: true });
    }
  });

  test("hold one CSV for each tab, for each board and for formulas to try", async () => {
    const names = (await readdir(SAMPLE_DIR)).filter((name) => name.endsWith(".csv")).sort();
    expect(names).toEqual(
      [...TABS.map(({ name }) => `${name}.csv`), "Root board.csv", "Due board.csv", "Try it.csv"].sort(),
    );
  });
});

describe("Headings", () => {
  test.each(TABS.map(({ name }) => name))("of %s are those of the add-on, further ones to the right", async (name) => {
    const [found = []] = await cells(name);
    const wanted = TABS.find((tab) => tab.name === name)?.columns.map(({ heading }) => heading) ?? [];
    const said = found.map((heading) => (heading.startsWith("=FEED_LEFT(") ? "On hand" : heading));
    expect(said.slice(0, wanted.length)).toEqual(wanted);
    if (name !== "Plants") expect(found).toHaveLength(wanted.length);
  });
});

describe("Values fit their columns", () => {
  test.each(TABS.map(({ name }) => name))("on %s", async (name) => {
    const columns = TABS.find((tab) => tab.name === name)?.columns ?? [];
    for (const row of await rows(name)) {
      for (const { heading, kind, choices } of columns) {
        const value = row[heading] ?? "";
        if (value === "") continue;
        const where = `${heading} "${value}"`;
        // Something was spilled once: an amount below 0. A difference has either sign.
        const number = SIGNED.includes(name) ? /^-?\d+(\.\d+)?$/ : /^\d+(\.\d+)?$/;
        if (kind === "number") expect(value, where).toMatch(number);
        if (kind === "day") expect(dayFromIso(value), where).not.toBeNull();
        if (choices !== undefined) expect(choices, where).toContain(value);
      }
    }
  });

  test("names refer to rows that are there, and keys stand once", async () => {
    for (const tab of TABS) {
      const found = await rows(tab.name);
      const keys = found.map((row) => row[tab.key]);
      expect(new Set(keys).size, tab.name).toBe(keys.length);
      for (const { heading, kind, refersTo } of tab.columns) {
        if (kind !== "name" || refersTo === undefined) continue;
        const other = TABS.find(({ name }) => name === refersTo);
        const names = new Set((await rows(refersTo)).map((row) => row[other?.key ?? ""]));
        for (const row of found) if (row[heading]) expect(names, `${tab.name}: ${heading}`).toContain(row[heading]);
      }
    }
  });

  test("only intended cells are formulas, and no text starts like one", async () => {
    for (const name of [...TABS.map((tab) => tab.name), "Root board", "Due board", "Try it"]) {
      for (const row of await cells(name)) {
        for (const value of row) {
          if (!/^[=+@-]/.test(value)) continue;
          if (SIGNED.includes(name) && /^-\d/.test(value)) continue;
          expect(["Plants", "Feeds", "Root board", "Due board", "Try it"], `${name}: ${value}`).toContain(name);
          expect(value).toMatch(/^=(IF|FEED_|WATER_|METER_|ROOT_|POT_|CHECK_|TRIAL_)/);
        }
      }
    }
  });
});

describe("The story", () => {
  let log: Row[] = [];
  const [first, last] = [dayFromIso("2024-11-24") ?? 0, dayFromIso("2026-11-24") ?? 0];

  beforeAll(async () => {
    log = await rows("Care log");
  });

  test("has about thirty plants in several rooms and two years of care by several people", async () => {
    const plants = await rows("Plants");
    expect(plants.length).toBeGreaterThanOrEqual(28);
    expect(new Set(plants.map((row) => row.Place)).size).toBeGreaterThanOrEqual(5);
    const days = log.map((row) => dayOf(row));
    expect(Math.max(...days)).toBeLessThanOrEqual(last);
    expect(Math.max(...days)).toBeGreaterThan(last - 7);
    expect(new Set(log.map((row) => row.Who)).size).toBeGreaterThanOrEqual(4);
    const logged = new Set(log.filter((row) => dayOf(row) >= first).map((row) => row.Plant));
    for (const row of plants) expect(logged).toContain(row.Plant);
  });

  test("has nothing done to a plant before it came into clay", async () => {
    const since = new Map((await rows("Plants")).map((row) => [row.Plant, dayOf(row, "Since")]));
    for (const row of log) expect(dayOf(row), row.Id).toBeGreaterThanOrEqual(since.get(row.Plant) ?? 0);
  });

  test("keeps one plant's day to one top-up, so that what it drank can be told", () => {
    const seen = new Set<string>();
    for (const row of log.filter(({ Event }) => Event === "Top up")) {
      const key = `${row.Plant} ${row.Date}`;
      expect(seen, key).not.toContain(key);
      seen.add(key);
      expect(Number(row["Amount mL"])).toBeGreaterThan(0);
    }
  });

  function topUps(plant: string, from: string, to: string): { everyDays: number; mlADay: number } {
    const found = log.filter((row) => row.Plant === plant && row.Event === "Top up");
    const between = found.filter((row) => (row.Date ?? "") >= from && (row.Date ?? "") <= to);
    const days = between.map((row) => dayOf(row)).sort((a, b) => a - b);
    const span = (days[days.length - 1] ?? 0) - (days[0] ?? 0);
    const amount = between.reduce((sum, row) => sum + Number(row["Amount mL"]), 0);
    return { everyDays: span / (days.length - 1), mlADay: amount / span };
  }

  test.each(["Big monstera", "Peace lily, large", "Papyrus by the sink"])(
    "lets the reservoir of %s fill with roots: it drinks more, and is topped up sooner, than a year before",
    (plant) => {
      const before = topUps(plant, "2025-09-25", "2025-11-24");
      const now = topUps(plant, "2026-09-25", "2026-11-24");
      expect(now.mlADay).toBeGreaterThan(1.3 * before.mlADay);
      expect(now.everyDays).toBeLessThan(0.7 * before.everyDays);
    },
  );

  test("lets the weeping fig drink slower again once it was potted up", () => {
    expect(topUps("Weeping fig", "2026-04-01", "2026-06-05").everyDays).toBeLessThan(9);
    expect(topUps("Weeping fig", "2026-06-10", "2026-11-24").everyDays).toBeGreaterThan(14);
  });

  test("gives a reason with every disturbance of roots since the log began", async () => {
    const disturbing = new Set(
      (await rows("Events")).filter((row) => row["Disturbs roots"] === "yes").map((row) => row.Event),
    );
    const disturbances = log.filter((row) => disturbing.has(row.Event) && dayOf(row) >= first);
    expect(disturbances.length).toBeGreaterThan(20);
    for (const row of disturbances) expect(row.Reason, row.Id).not.toBe("");
  });

  test("pours only what is there: a batch already mixed, or a water", async () => {
    const mixed = new Map((await rows("Batch log")).map((row) => [row.Id, dayOf(row)]));
    const waters = new Set((await rows("Waters")).map((row) => row.Water));
    for (const row of log) {
      if (!row.Solution || waters.has(row.Solution)) continue;
      expect(mixed.get(row.Solution), row.Id).toBeLessThanOrEqual(dayOf(row));
    }
  });

  test("has forty batches, some of them not tested", async () => {
    const batches = await rows("Batch log");
    expect(batches).toHaveLength(40);
    const blank = batches.filter((row) => row["Measured pH"] === "");
    expect(blank.length).toBeGreaterThan(3);
    expect(blank.length).toBeLessThan(15);
  });

  /** mg/L of an element in a row of Waters or, per gram a litre, in a row of Feeds; factors of science handbooks [1]. */
  function elementOf(row: Row, symbol: string): number {
    const number = (heading: string) => Number(row[heading] || 0);
    const oxides: Readonly<Record<string, readonly (readonly [heading: string, factor: number])[]>> = {
      N: row.Water ? [["NO3-N", 1]] : [],
      P: [["P2O5", 0.43643]],
      K: [["K2O", 0.83015]],
      S: [["SO4", 0.33376]],
    };
    return (
      number(symbol) + (oxides[symbol] ?? []).reduce((sum, [heading, factor]) => sum + number(heading) * factor, 0)
    );
  }

  test("has batches whose amounts follow from their doses, the shelf and the water", async () => {
    const [feeds, waters] = [await rows("Feeds"), await rows("Waters")];
    for (const batch of await rows("Batch log")) {
      const water = waters.find((row) => row.Water === batch.Water) ?? {};
      const doses = (batch.Doses ?? "").split("; ").map((text) => {
        const [, name, perLitre, unit, perBatch] = /^(.+) ([\d.]+) (g|mL)\/L \(([\d.]+) \3\)$/.exec(text) ?? [];
        expect(Number(perBatch), text).toBeCloseTo(Number(perLitre) * Number(batch.Litres), 2);
        const feed = feeds.find((row) => row.Feed === name);
        expect(feed?.Unit, text).toBe(unit);
        return { feed: feed ?? {}, perLitre: Number(perLitre) };
      });
      for (const symbol of ["N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "Zn", "B", "Cu", "Mo"]) {
        // One gram (or, w/v, one mL) of a feed with 1 % in a litre brings 10 mg.
        const brought = doses.reduce((sum, { feed, perLitre }) => sum + 10 * perLitre * elementOf(feed, symbol), 0);
        const expected = elementOf(water, symbol) + brought;
        expect(Math.abs(Number(batch[symbol]) - expected), `${batch.Id} ${symbol}`).toBeLessThan(
          0.0005 * expected + 0.0001,
        );
      }
    }
  });

  test("never weighs what is not on the shelf, and shows what the purchases and the log leave", async () => {
    const GRAMS: Readonly<Record<string, number>> = { g: 1, kg: 1000, mL: 1, L: 1000 };
    const purchases = await rows("Purchases");
    const replaced = new Set(purchases.map((row) => row.Corrects).filter((id) => id));
    const came = purchases
      .filter((row) => !replaced.has(row.Id))
      .map((row) => ({ on: dayOf(row), feed: row.Feed, amount: Number(row.Amount) * (GRAMS[row.Unit ?? ""] ?? NaN) }));
    const went = (await rows("Batch log")).flatMap((row) =>
      [...(row.Doses ?? "").matchAll(/(?:^|; )(.+?) [\d.]+ (?:g|mL)\/L \(([\d.]+) (?:g|mL)\)/g)].map(
        ([, feed, amount]) => ({
          ...{ on: dayOf(row), feed: feed?.replace(/"/g, ""), amount: -Number(amount) },
        }),
      ),
    );
    const left = new Map<string | undefined, number>();
    for (const { feed, amount } of [...came, ...went].sort((a, b) => a.on - b.on || b.amount - a.amount)) {
      left.set(feed, (left.get(feed) ?? 0) + amount);
      expect(left.get(feed), String(feed)).toBeGreaterThanOrEqual(0);
    }
    const { shown = [] } = answerTabs(sampleTabs()).find(({ tab }) => tab.name === "Feeds") ?? {};
    const at = shown[0]?.indexOf("On hand") ?? -1;
    for (const row of shown.slice(1)) expect(row[at], String(row[0])).toBeCloseTo(left.get(String(row[0])) ?? NaN, 6);
    expect(shown.length - 1).toBe(left.size);
  });

  test("comes close to the target where the water allows it", async () => {
    const targets = await rows("Targets");
    for (const batch of (await rows("Batch log")).filter((row) => row.Water === "Low-mineral water")) {
      const target = targets.find((row) => row.Target === batch.Target) ?? {};
      for (const symbol of ["N", "P", "K", "Ca", "Mg", "S"]) {
        expect(Math.abs(Number(batch[symbol]) / Number(target[symbol]) - 1), `${batch.Id} ${symbol}`).toBeLessThan(
          0.02,
        );
      }
    }
  });

  test("reads the EC a meter would: near the cations in meq/L over ten (rule of thumb, from memory)", async () => {
    for (const batch of await rows("Batch log")) {
      if (!batch["Measured EC"]) continue;
      const meqL =
        Number(batch.Ca) / 20.039 +
        Number(batch.Mg) / 12.1525 +
        Number(batch.K) / 39.098 +
        (batch.Water === "Town tap" ? 0.6 : 0.2);
      // The rule is good to about a fifth.
      expect(Number(batch["Measured EC"]) / (meqL / 10), batch.Id).toBeGreaterThan(0.9);
      expect(Number(batch["Measured EC"]) / (meqL / 10), batch.Id).toBeLessThan(1.25);
    }
  });

  test("has today's date where the formulas look for it", async () => {
    expect((await cells("Settings"))[1]?.slice(0, 2)).toEqual(["Today", "2026-11-24"]);
  });

  test("counts the trial's leaves as the log does, and every one of the 64 ways its pairs could have been drawn", async () => {
    const [trial] = await rows("Trials");
    const leaves = (side: string) =>
      (trial?.[side] ?? "")
        .split("; ")
        .map(
          (name) =>
            log.filter(
              ({ Event, Plant = "", Date: date = "" }) =>
                Event === "New leaf" && Plant === name && date > (trial?.Started ?? "") && date <= (trial?.Ends ?? ""),
            ).length,
        );
    const [a, b] = [leaves("Plants A"), leaves("Plants B")];
    const differences = a.map((count, k) => count - (b[k] ?? 0));
    const sum = (values: readonly number[]) => values.reduce((so, value) => so + value, 0);
    const seen = sum(differences);
    const sums = Array.from({ length: 64 }, (_, way) =>
      sum(differences.map((difference, k) => (way & (1 << k) ? -difference : difference))),
    );
    expect(differences).toHaveLength(6);
    expect(Number(trial?.Difference)).toBeCloseTo(seen / 6, 3);
    expect(Number(trial?.p)).toBeCloseTo(sums.filter((one) => Math.abs(one) >= Math.abs(seen)).length / 64, 4);
    expect(trial?.Result).toContain("Cannot tell yet");
  });

  test("has groups that its draws give again", async () => {
    for (const trial of await rows("Trials")) {
      const side = (name: string) => (trial[name] ?? "").split("; ");
      const groups = { a: side("Plants A"), b: side("Plants B") };
      expect(drawRepeats(groups, "Pairs", Number(trial.Draw)), trial.Id).toBe(true);
    }
  });
});

// [1] P = 0.43643 P2O5, K = 0.83015 K2O: from CIAAW 2021 weights; S = 32.06 / 96.056 of sulfate, the same.
