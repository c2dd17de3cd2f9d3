/** "Know a feed" without a page: how a label is understood, corrected and asked about, what is saved, what it leaves short. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readChoices } from "../../sidebar/batch-shelf.ts";
import {
  bringBack,
  correctLine,
  type FeedDraft,
  freshFeed,
  leaveOut,
  pasteLabel,
  readFeedDraft,
} from "../../sidebar/feed-draft.ts";
import { gapChoice, gapsOf } from "../../sidebar/feed-gaps.ts";
import { answerKey, feedOfLabel, readTypedLabel } from "../../sidebar/feed-label.ts";
import { makeFeed, reasonOf } from "../../sidebar/feed-save.ts";
import { sayFields } from "../../sidebar/feed-words.ts";
import { sheet } from "./sheet.ts";
import { openTestPanel, said } from "./world.ts";

const fresh = (change: Partial<FeedDraft> = {}): FeedDraft => ({ ...freshFeed(), id: "made-id-1", ...change });

/** Invented. */
const LABEL = [
  "Total nitrogen (N) 10 %",
  "Available phosphate (P2O5) 5 %",
  "Soluble potash (K2O) 5 %",
  "",
  "Shake well",
  "Iron (Fe) 1.200 mg/kg",
].join("\n");

/** The first choice of every question that is open. */
function answered(draft: FeedDraft, position = 0): FeedDraft {
  const answers: Record<string, string> = { ...draft.answers };
  for (const line of readTypedLabel(draft).lines) {
    for (const question of line.questions) answers[answerKey(line, question)] = question.choices[position]?.words ?? "";
  }
  return { ...draft, answers };
}

describe("a label", () => {
  test("keeps every line at its number; what is not understood stays, what is open counts for nothing", () => {
    const label = readTypedLabel(fresh({ text: LABEL }));
    expect(label.lines.map(({ number, outcome }) => [number, outcome])).toEqual([
      [1, "understood"],
      [2, "understood"],
      [3, "understood"],
      [5, "not understood"],
      [6, "asked"],
    ]);
    expect(label).toMatchObject({ fields: { N: 10, P2O5: 5, K2O: 5 }, open: 1, unclear: [5] });
    // 1.2 or 1200 mg/kg.
    const values = [0, 1].map((at) => readTypedLabel(answered(fresh({ text: LABEL }), at)).fields.Fe);
    expect(values).toEqual([0.00012, 0.12]);
    expect(readTypedLabel(answered(fresh({ text: LABEL }), 2)).fields.Fe).toBeUndefined();
  });

  test("is corrected beside what was pasted, and a line left out can be brought back", () => {
    let draft = correctLine(fresh({ text: LABEL }), 5, "Magnesium (Mg)\n2 %");
    expect(readTypedLabel(draft)).toMatchObject({ fields: { Mg: 2 }, unclear: [] });
    draft = leaveOut(draft, [5, 6]);
    expect(readTypedLabel(draft)).toMatchObject({
      open: 0,
      leftOut: [
        { number: 5, pasted: "Shake well" },
        { number: 6, pasted: "Iron (Fe) 1.200 mg/kg" },
      ],
    });
    expect(draft).toMatchObject({ text: LABEL, open: [] });
    expect(readTypedLabel(bringBack(draft, 6))).toMatchObject({ open: 1, leftOut: [{ number: 5 }] });
    expect(pasteLabel(draft, "N 3 %").corrected).toEqual({});
  });

  test("a line emptied while it is corrected stays open", () => {
    const label = readTypedLabel(correctLine(fresh({ text: LABEL }), 5, ""));
    expect(label.lines.find(({ number }) => number === 5)).toMatchObject({
      outcome: "passed over",
      sentence: "Nothing is left of this line.",
    });
  });

  test("asks for what it does not say: solid or liquid, weight or volume, density", () => {
    const asks = (change: Partial<FeedDraft>) => readTypedLabel(fresh(change)).asks;
    expect(asks({ text: "N 10 %" })).toEqual({ form: true, basis: false, density: false });
    expect(asks({ text: "N 10 %", form: "solid" })).toEqual({ form: true, basis: false, density: false });
    expect(asks({ text: "N 10 %", form: "liquid" })).toEqual({ form: true, basis: true, density: true });
    expect(asks({ text: "N 10 % w/v" })).toEqual({ form: false, basis: false, density: true });
    expect(asks({ text: "N 10 % w/w\nDensity 1.2 g/mL" })).toEqual({ form: false, basis: false, density: false });
    expect(asks({ text: "N 10 %\nDensity 1.2 g/mL" })).toEqual({ form: false, basis: true, density: false });
    expect(asks({ text: "N 8 % w/v\nK2O 6 %" })).toMatchObject({ basis: true });
  });

  test("a basis that is chosen goes into the row, and a solid counts by weight", () => {
    expect(readTypedLabel(fresh({ text: "N 10 %", form: "solid" })).fields).toEqual({ N: 10, Basis: "w/w" });
    expect(readTypedLabel(fresh({ text: "N 10 %", form: "liquid", basis: "w/v" })).fields).toEqual({
      N: 10,
      Basis: "w/v",
    });
    const mixed = readTypedLabel(fresh({ text: "N 8 % w/v\nK2O 6 %", basis: "w/v" }));
    expect(mixed).toMatchObject({ refused: "", fields: { N: 8, K2O: 6, Basis: "w/v" } });
  });

  test("is said in words", () => {
    expect(sayFields({ N: 10, "NO3-N": 6, Fe: 0.000123456789, Density: 1.24, Basis: "w/v" })).toBe(
      "nitrogen N 10 %, nitrate nitrogen NO3-N 6 %, iron Fe 0.000123457 %, density 1.24 g/mL, percent by volume",
    );
  });

  test("whatever is pasted and corrected, nothing throws and no line is lost", () => {
    const words = fc.constantFrom(
      "N 10 %",
      "P 5",
      "12-5-24",
      "Mg 2 %",
      "Density 1.2",
      "blah",
      "",
      "K2O 5 % w/v",
      "Fe 1.200 mg/kg",
    );
    const draft = fc.record({
      lines: fc.array(words, { maxLength: 8 }),
      corrected: fc.dictionary(fc.integer({ min: 1, max: 9 }).map(String), words, { maxKeys: 3 }),
      open: fc.array(fc.integer({ min: 1, max: 9 }), { maxLength: 3 }),
      form: fc.constantFrom("" as const, "solid" as const, "liquid" as const),
    });
    fc.assert(
      fc.property(draft, ({ lines, ...given }) => {
        const label = readTypedLabel(fresh({ text: lines.join("\n"), ...given }));
        const shown = new Set([...label.lines, ...label.leftOut].map(({ number }) => number));
        lines.forEach((line, at) => {
          if (line.trim() !== "") expect(shown).toContain(at + 1);
        });
        feedOfLabel(fresh(given), label);
        makeFeed(fresh({ text: lines.join("\n"), origin: "mineral", name: "A", ...given }), label);
      }),
      { numRuns: 300, seed: 8 },
    );
  });
});

describe("saving", () => {
  const made = (change: Partial<FeedDraft>) => {
    const draft = fresh({ origin: "mineral", form: "solid", name: " Meadow ", ...change });
    return makeFeed(draft, readTypedLabel(draft));
  };

  test.each<[Partial<FeedDraft>, string | RegExp]>([
    [{ text: "" }, "Paste the analysis, or tick that none is printed."],
    [{ text: "Phosphorus 5 %" }, "Choose what “Phosphorus 5 %” means first."],
    [
      { text: "N 10 %\n Shake well" },
      "“Shake well” is not understood. Correct that line, or leave it out if it holds no amount.",
    ],
    [{ text: "N 60 %\nK2O 60 %" }, /adds up to 120 %/],
    [{ text: "N 10 %", form: "" }, "Choose whether it is a solid or a liquid."],
    [{ text: "N 10 %", form: "liquid" }, "Choose what the percents count: weight or volume."],
    [{ text: "N 10 %", form: "liquid", basis: "w/w", density: "12" }, /The density is 12 g\/mL/],
    [{ text: "N 10 %", origin: "" }, "Choose what it is made of."],
    [{ text: "N 10 %", name: " " }, "Type a name for this feed."],
    [{ text: "Guaranteed analysis" }, /has nothing on its label/],
    [{ text: "N 10 %\n".repeat(301) }, "That is too long for a label. Paste the analysis alone."],
    [{ text: "x".repeat(20_001) }, "That is too long for a label. Paste the analysis alone."],
  ])("%o waits: %s", (change, sentence) => {
    const answer = made(change);
    if (typeof sentence === "string") expect(answer).toBe(sentence);
    else expect(answer).toMatch(sentence);
  });

  test("puts what was understood into the row, and the label as it was pasted", () => {
    const draft = correctLine(fresh({ text: "N 10 %\nShake well" }), 2, "Mg 2 %");
    expect(made({ text: draft.text, corrected: draft.corrected, note: " a note " })).toEqual({
      ask: "log feed",
      entry: {
        ...{ id: "made-id-1", feed: "Meadow", basis: "w/w", percents: { N: 10, Mg: 2 }, densityGPerMl: null },
        ...{ origin: "mineral", published: true, labelText: "N 10 %\nShake well", note: "a note" },
      },
    });
  });

  test("keeps an organic feed and one without an analysis on the shelf, with the reason", () => {
    expect(made({ text: "N 3 %", origin: "organic" })).toMatchObject({
      entry: { origin: "organic", percents: { N: 3 } },
    });
    expect(made({ text: "?", noAnalysis: true, form: "" })).toMatchObject({
      entry: { published: false, percents: {}, basis: "", labelText: "?" },
    });
    const reason = (change: Partial<FeedDraft>) => reasonOf(fresh(change), readTypedLabel(fresh(change)));
    expect(reason({ text: "N 3 %", origin: "organic" })).toMatch(/^This feed is organic: .* enters no recipe\.$/);
    expect(reason({ noAnalysis: true, origin: "mineral" })).toMatch(/^This feed has no published analysis/);
    expect(reason({ text: "N 3 %", origin: "mineral", form: "solid" })).toBeNull();
  });

  test("keeps the id through a retry, offers the feed for mixing, and takes another id for another label", async () => {
    const { panel, host } = await openTestPanel();
    const { feed } = panel;
    feed.edit((now) => ({ ...now, text: "N 10 %", name: "Meadow", origin: "mineral", form: "solid" }));
    feed.sender.press();
    await host.last().lose();
    const first = host.last().request;
    feed.sender.press();
    expect(host.last().request).toEqual(first);
    await host.last().reply({ written: 0, already: 1, differing: [] });
    expect(said(feed.sender)).toBe("done: “Meadow” was there already, just so.");
    expect(feed.draft.get().saved).toBe(true);
    const usable = panel.batch.shelf.get().feeds.find(({ name }) => name === "Meadow");
    expect(usable?.feed?.label.percent).toEqual({ N: 10 });
    const before = feed.draft.get().id;
    feed.edit((now) => ({ ...now, note: "more" }));
    expect(feed.draft.get()).toMatchObject({ saved: false });
    expect(feed.draft.get().id).not.toBe(before);
    feed.another();
    expect(feed.draft.get()).toMatchObject({ text: "", name: "", id: "" });
  });

  test("a refusal is shown and leaves the label as it was", async () => {
    const { panel, host } = await openTestPanel();
    panel.feed.edit((now) => ({ ...now, text: "N 10 %", name: "Potassium nitrate", origin: "mineral", form: "solid" }));
    panel.feed.sender.press();
    await host.last().fail("“Potassium nitrate” already stands in row 2.");
    expect(said(panel.feed.sender)).toBe("failed: “Potassium nitrate” already stands in row 2.");
    expect(panel.feed.draft.get()).toMatchObject({ text: "N 10 %", saved: false });
  });

  test("a draft that was kept is read back; what is spoilt is dropped", () => {
    const draft = fresh({ text: LABEL, corrected: { 5: "" }, open: [6], basis: "w/v", answers: { a: "b" } });
    expect(readFeedDraft(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
    expect(readFeedDraft({ ...draft, id: 7 })).toBeNull();
    expect(readFeedDraft({ ...draft, basis: "stone", open: "x", corrected: 3, origin: 1 })).toMatchObject({
      ...{ basis: "", open: [], corrected: {}, origin: "" },
    });
  });
});

describe("what it leaves short", () => {
  const shelf = readChoices(sheet());
  const target = { gapTarget: "foliage, half strength", gapWater: "" };

  test("is looked for in the pasted label first, else in the shelf, and not in feeds that enter no recipe", () => {
    const draft = fresh({ text: "N 10 %", form: "solid", origin: "mineral" });
    const pasted = feedOfLabel(draft, readTypedLabel(draft));
    expect(gapChoice(draft, pasted, shelf).options[0]).toEqual({ value: "", words: "The label above" });
    expect(gapChoice(draft, null, shelf)).toMatchObject({ key: "potassium nitrate" });
    expect(gapChoice({ gapFeed: "magnesium sulfate heptahydrate" }, pasted, shelf).feed?.name).toBe(
      "Magnesium sulfate heptahydrate",
    );
    const names = gapChoice(draft, null, shelf).options.map(({ words }) => words);
    expect(names).not.toContain("Fish and kelp brew");
  });

  test("names feeds of the shelf and salts, and waits for a target", () => {
    const { feed } = gapChoice({ gapFeed: "potassium nitrate" }, null, shelf);
    expect(gapsOf({ gapTarget: "", gapWater: "" }, feed, shelf)).toBeNull();
    const found = gapsOf(target, feed, shelf);
    if (found === null || typeof found === "string") throw new Error("There should be gaps.");
    const magnesium = found.gaps.find(({ symbol }) => symbol === "Mg");
    expect(magnesium?.fillers.map(({ name, onShelf }) => [name, onShelf])[0]).toEqual([
      "Magnesium sulfate heptahydrate",
      true,
    ]);
    // The tap water of the sheet brings 62 mg/L of calcium, of the 80 wanted.
    const inTap = gapsOf({ ...target, gapWater: "tap" }, feed, shelf);
    if (inTap === null || typeof inTap === "string") throw new Error("There should be gaps.");
    expect(inTap.gaps.find(({ symbol }) => symbol === "Ca")?.reached).toBeGreaterThanOrEqual(62);
  });
});

test("a label of thirty lines is understood and its gaps found within 50 ms a key", () => {
  const shelf = readChoices(sheet());
  const text = Array.from({ length: 5 }, () => LABEL.replace("Total nitrogen", "Shake it")).join("\n");
  const first = fresh({ text: `${text}\nN 10 %\nMg 0.1 %`, form: "solid", origin: "mineral" });
  const own = leaveOut(answered(first, 2), readTypedLabel(first).unclear);
  const times = Array.from({ length: 15 }, (_, index) => {
    const draft = correctLine(own, 32, `Mg 0.${index} %`);
    const started = performance.now();
    const feed = feedOfLabel(draft, readTypedLabel(draft));
    expect(gapsOf({ gapTarget: "foliage, half strength", gapWater: "tap" }, feed, shelf)).not.toBeNull();
    return performance.now() - started;
  });
  expect(times.sort((a, b) => a - b)[7]).toBeLessThan(50);
});
