/** The sitter's page in words and cells, read back as it stands, and held against the log afterwards. */

import { describe, expect, test } from "vitest";
import { checkSitting } from "../../sidebar/sitter-check.ts";
import { freshSitter, newestBatches, planSitting, readSitter, spanOf } from "../../sidebar/sitter-draft.ts";
import { dayOfWords, dayWords, litresReady, roundPour, sitterPage } from "../../sidebar/sitter-page.ts";
import { broken, pageCells, readPageCells } from "../../sidebar/sitter-tab.ts";
import type { Loaded } from "../../src/app/contract.ts";
import { sheet } from "./sheet.ts";
import { openTestPanel, said } from "./world.ts";

type Care = Loaded["care"]["rows"][number];

const care = (plant: string, day: string, given: Partial<Care> = {}): Care => ({
  id: `${plant} ${day}`,
  day,
  plant,
  event: "Top up",
  amountMl: 150,
  solution: "",
  ecMsCm: null,
  pH: null,
  who: "Ama",
  reason: "",
  note: "",
  ...given,
});

/** Fern 1 and Hoya 3 drink 150 mL in five days; nothing is known of the others. Today is 14 March 2026, a Saturday. */
const rows = ["Fern 1", "Hoya 3"].flatMap((plant) =>
  ["2026-03-13", "2026-03-08", "2026-03-03", "2026-02-26"].map((day) => care(plant, day)),
);
const household = (more: readonly Care[] = [], today = "2026-03-14"): Loaded =>
  sheet({ today, care: { rows: [...more, ...rows], from: "2026-02-26", all: true } });

const BACK = "2026-03-25";

const draft = { ...freshSitter(), from: "2026-03-15", to: "2026-03-24", sitter: "Mira", every: "1" };

const made = (given: Partial<typeof draft> = {}) => {
  const typed = { ...draft, ...given };
  const span = spanOf(typed);
  if (typeof span === "string") throw new Error(span);
  const sitting = planSitting(typed, household(), span);
  return { sitting, page: sitterPage(typed, sitting) };
};

describe("days in words", () => {
  // 1 March 2026 is a Sunday; 29 February 2024 was a Thursday; 1 January 1900 a Monday (perpetual calendar).
  test.each([
    ["Sun 1 Mar 2026", 20_513],
    ["Thu 29 Feb 2024", 19_782],
    ["Mon 1 Jan 1900", -25_567],
  ])("%s", (words, day) => {
    expect(dayWords(day)).toBe(words);
    expect(dayOfWords(words)).toBe(day);
    expect(dayOfWords(words.slice(4))).toBe(day);
  });

  test("anything else is no day", () => {
    expect(["", "31 Feb 2026", "1 March 2026", "Sun"].map(dayOfWords)).toEqual([null, null, null, null]);
  });
});

test("amounts are rounded to what a jug shows, and there is always a little more in the can", () => {
  expect([3, 12.4, 48, 151, 154.9].map(roundPour)).toEqual([5, 10, 50, 150, 150]);
  // A tenth more, up to the next half litre.
  expect([100, 454, 455, 5000].map(litresReady)).toEqual([0.5, 0.5, 1, 5.5]);
});

describe("the time away", () => {
  test.each([
    ["", "2026-03-20", "Choose the first and the last day away."],
    ["2026-03-20", "2026-03-19", "The last day away lies before the first one. Choose a later one."],
    ["2026-03-20", "2026-12-31", "That is more than 120 days. Choose a shorter time."],
  ])("from %j to %j: %s", (from, to, sentence) => {
    expect(spanOf({ ...draft, from, to })).toBe(sentence);
  });

  test("rooms can be left out, and a batch of one's own choice stand in the can", () => {
    const { sitting } = made({ without: ["kitchen SILL"] as never });
    expect(sitting.plan.pours.every(({ place }) => place !== "Kitchen sill")).toBe(true);
    expect(newestBatches(household()).map(({ id }) => id)).toEqual(["batch-0000-0002", "batch-0000-0001"]);
    expect(made().sitting.batch?.id).toBe("batch-0000-0002");
    expect(made({ batch: "batch-0000-0001" }).sitting.batch?.measuredPH).toBe(5.9);
    expect(made({ batch: "plain" }).page.pouring[0]).toBe("Pour plain water that has stood to room temperature.");
  });

  test("what was kept of a draft by another version is read, or left", () => {
    expect(readSitter({ ...draft, without: ["Hall", 3], every: 7 })).toEqual({
      ...draft,
      without: ["Hall"],
      every: "3",
    });
    expect(readSitter("no draft")).toBeNull();
  });
});

describe("the page", () => {
  test("asks for each plant when it has drunk what it holds, and names the sitter, the batch and the cautions", () => {
    const { page } = made();
    const poured = page.days.flatMap(({ day, lines }) =>
      lines.map(({ plant, aboutMl }) => [dayWords(day), plant, aboutMl]),
    );
    // Full on the 14th, 30 mL a day, 150 mL at a time: the 19th; the next would be the 24th.
    expect(poured).toEqual([
      ["Thu 19 Mar 2026", "Fern 1", 150],
      ["Thu 19 Mar 2026", "Hoya 3", 150],
      ["Tue 24 Mar 2026", "Fern 1", 150],
      ["Tue 24 Mar 2026", "Hoya 3", 150],
    ]);
    expect(page.title).toBe("For Mira, who looks after the plants");
    expect(page.intro[0]).toBe("From Sun 15 Mar 2026 to Tue 24 Mar 2026: 10 visits, every day.");
    expect(page.pouring[0]).toBe(
      "Pour from the can with the batch mixed on 1 Mar 2026 by Bo for “Rooting, weak” from “Tap”.",
    );
    expect(page.pouring).toContain("About 0.6 L are needed in all these days together.");
    for (const word of ["drinking water", "sap", "plugs", "mark", "repotting"])
      expect(page.care.join(" ")).toContain(word);
  });

  test("goes into cells and is read back, also sorted, moved and written on", () => {
    const { page } = made({ reach: "the number on the fridge" });
    const { cells, boldRows, wrapped, widths } = pageCells(page);
    const heading = cells.findIndex(([first]) => first === "Day");
    expect(boldRows).toContain(heading + 1);
    expect(wrapped).toEqual({ from: heading + 1, to: cells.length });
    // An upright A4 sheet shows about 730 pixels between narrow margins.
    expect(widths.reduce((sum, width) => sum + width, 0)).toBeLessThanOrEqual(730);
    const asRead = cells.map((row) => row.map((cell) => cell ?? ""));
    const read = readPageCells(asRead);
    expect(read?.lines.map(({ day, plant, amountMl }) => [dayWords(day), plant, amountMl])).toEqual([
      ["Thu 19 Mar 2026", "Fern 1", 150],
      ["Thu 19 Mar 2026", "Hoya 3", 150],
      ["Tue 24 Mar 2026", "Fern 1", 150],
      ["Tue 24 Mar 2026", "Hoya 3", 150],
    ]);
    expect([read?.fromDay, read?.toDay]).toEqual([dayOfWords("15 Mar 2026"), dayOfWords("24 Mar 2026")]);
    const table = asRead.slice(heading + 1).reverse();
    const moved = [...asRead.slice(0, heading + 1), ...table].map((row) => [row[0] ?? "", "mine", ...row.slice(1)]);
    expect(readPageCells(moved)?.lines).toHaveLength(4);
    expect(readPageCells([["something", "else"]])).toBeNull();
  });

  test("a long line is broken between words", () => {
    expect(broken("one two three four", 9)).toEqual(["one two", "   three", "   four"]);
    expect(broken("short", 9)).toEqual(["short"]);
  });
});

describe("back home", () => {
  const { page } = made();
  const read = readPageCells(pageCells(page).cells.map((row) => row.map((cell) => cell ?? "")));
  if (read === null) throw new Error("no page");

  test("says what was done, what was not, and what else", () => {
    const found = checkSitting(
      read,
      household(
        [
          care("Fern 1", "2026-03-19", { amountMl: 140, who: "Mira" }),
          care("Fern 1", "2026-03-24", { amountMl: 400, who: "Mira" }),
          care("Hoya 3", "2026-03-21", { who: "" }),
          care("Arum 2", "2026-03-20", { who: "Mira" }),
          care("Hoya 3", "2026-03-20", { event: "Note" }),
        ],
        BACK,
      ),
    );
    expect(found.summary).toBe("Of 4 lines on the page, 3 are in the log and 1 is not.");
    expect(found.parts).toEqual([
      { title: "On the page, not in the log", sentences: ["Hoya 3, Tue 24 Mar 2026, about 150 mL."] },
      { title: "Done on another day", sentences: ["Hoya 3: planned for Thu 19 Mar 2026, done on Sat 21 Mar 2026."] },
      {
        title: "Another amount",
        sentences: ["Fern 1, Tue 24 Mar 2026: 400 mL were poured where about 150 mL were on the page."],
      },
      { title: "In the log, not on the page", sentences: ["Arum 2: Top up on Fri 20 Mar 2026, 150 mL by Mira."] },
    ]);
  });

  test("what is still to come is not missing", () => {
    const early = [care("Fern 1", "2026-03-19", { who: "Mira" }), care("Hoya 3", "2026-03-19", { who: "Mira" })];
    expect(checkSitting(read, household(early, "2026-03-20")).summary).toBe(
      "Of 2 lines on the page, 2 are in the log, so everything was done. 2 lines are still to come.",
    );
    expect(checkSitting(read, household()).summary).toBe("4 lines are still to come.");
  });

  test("a word under Done is shown with a line that the log does not have", () => {
    const typed = { ...read, lines: read.lines.map((line) => ({ ...line, done: "yes, M" })) };
    expect(checkSitting(typed, household([], BACK)).parts[0]?.sentences[0]).toBe(
      "Fern 1, Thu 19 Mar 2026, about 150 mL. Under Done stands “yes, M”.",
    );
  });

  test("through the panel: no page, a page nobody can read, and the real one", async () => {
    const { panel, host } = await openTestPanel();
    const { check } = panel.sitter;
    const settle = () => new Promise((done) => setImmediate(done));
    check.press();
    await host.last().reply({ tab: null, rows: [] });
    expect(said(check)).toBe("blocked: There is no sitter’s page in this sheet yet.");
    check.press();
    await host.last().reply({ tab: "Fridge", rows: [["torn"]] });
    expect(said(check)).toMatch(/^blocked: “Fridge” has no line left that can be read\./);
    check.press();
    await host.last().reply({ tab: "Fridge", rows: pageCells(page).cells.map((row) => row.map((cell) => cell ?? "")) });
    await settle();
    await host.last().reply(household([], BACK));
    expect(said(check)).toBe("done: Of 4 lines on the page, 0 are in the log and 4 are not.");
    check.press();
    await host.last().fail("Somebody else was writing.");
    expect(said(check)).toBe("failed: Somebody else was writing.");
  });
});
