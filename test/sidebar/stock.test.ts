/** "Keep stock" without a page: what is on hand by hand-made records, how long it lasts, and what a purchase writes. */

import { describe, expect, test } from "vitest";
import { readChoices } from "../../sidebar/batch-shelf.ts";
import { ureaWords } from "../../sidebar/slow-nitrogen.tsx";
import { onHandIn, type Purchase, readPurchases, stockOf } from "../../sidebar/stock.ts";
import { freshStock, makePurchase, readStock, type StockDraft, unitOf } from "../../sidebar/stock-draft.ts";
import { shortOf } from "../../sidebar/stock-short.tsx";
import { purchaseWords, stockWords } from "../../sidebar/stock-words.ts";
import type { BatchRow, FieldRow } from "../../src/app/contract.ts";
import { readShelf } from "../../src/core/feeds.ts";
import { outcome } from "../functions/cells.ts";
import { sheet } from "./sheet.ts";
import { openTestPanel, said } from "./world.ts";

const [BATCH] = sheet().batches as [BatchRow];
const batch = (id: number, day: string | null, doses: string, change: Partial<BatchRow> = {}): BatchRow => ({
  ...{ ...BATCH, id: `batch-0000-${id}`, day, doses, state: "mixed" as const },
  ...change,
});
const row = (at: number, fields: FieldRow["fields"]): FieldRow => ({ row: at, fields });
/** Invented. */
const BOUGHT = [
  row(2, {
    Id: "purchase-1",
    Date: "2026-01-01",
    Feed: "Potassium nitrate",
    Amount: 1,
    Unit: "kg",
    Lot: "A",
    Who: "Ama",
  }),
  row(3, {
    Id: "purchase-2",
    Date: "2025-12-01",
    Feed: "potassium nitrate ",
    Amount: 500,
    Unit: "g",
    Lot: "old",
    Who: "Bo",
  }),
];
const MIXED = [
  batch(1, "2026-03-01", "Potassium nitrate 1 g/L (20 g)"),
  batch(2, "2026-02-01", "Potassium nitrate 1 g/L (30 g)"),
  batch(3, "2026-03-10", "Potassium nitrate 1 g/L (400 g)", { state: "planned" }),
];
const records = (purchases: FieldRow[]) => ({ purchases, meterLog: [], claims: [], trials: [], problems: [] });
const lineFor = (feed: string, bought: FieldRow[], change: Parameters<typeof sheet>[0] = {}) =>
  stockOf(sheet({ batches: MIXED, ...change }), records(bought)).find((line) => line.feed === feed);

describe("on hand", () => {
  test("is bought less used, by every batch that is mixed, those too old to be sent too", () => {
    const usedBefore = { used: [{ feed: "Potassium Nitrate", amount: 250, unit: "g" as const }], unread: [] };
    // 1000 + 500 less 20 + 30, and less 250.
    expect(lineFor("Potassium nitrate", BOUGHT)).toMatchObject({ problem: null, lot: "A", supply: { onHand: 1450 } });
    expect(lineFor("Potassium nitrate", BOUGHT, { usedBefore })).toMatchObject({ supply: { onHand: 1200 } });
  });

  test("agrees with the formula FEED_LEFT", () => {
    const purchases = [
      ["Date", "Feed", "Amount", "Unit"],
      ...BOUGHT.map(({ fields }) => [fields.Date, fields.Feed, fields.Amount, fields.Unit]),
    ];
    const batches = [["Date", "Doses", "State"], ...MIXED.map(({ day, doses, state }) => [day, doses, state])];
    const left = lineFor("Potassium nitrate", BOUGHT)?.supply?.onHand;
    expect(outcome("FEED_LEFT", "Potassium nitrate", purchases, batches, "2026-03-14")).toBe(left);
  });

  test("lasts at the pace of late: 50 g in the 42 days since the first batch", () => {
    const line = lineFor("Potassium nitrate", [row(2, { ...BOUGHT[0]?.fields, Amount: 100, Unit: "g" })]);
    // 50 g left at 50/42 g a day is 42 days after 14 March; the middle batch was 20 g.
    expect(line).toMatchObject({ runsOut: "2026-04-25", supply: { onHand: 50, batchesLeft: 2 } });
    if (line === undefined) throw new Error("There should be a line.");
    expect(stockWords(line)).toEqual({
      ...{ counted: true, amount: "50 g", warns: true },
      sentence: "Enough for 2 batches, until about 25 Apr 2026. Time to buy.",
    });
  });

  test.each<[string, FieldRow[], Parameters<typeof sheet>[0], RegExp, boolean]>([
    [
      "years",
      [row(2, { Feed: "Potassium nitrate", Amount: 90, Unit: "kg" })],
      {},
      /^Enough for \d+ batches; at this pace it lasts for years\.$/,
      false,
    ],
    [
      "nothing used",
      [row(2, { Feed: "Potassium nitrate", Amount: 9, Unit: "g" })],
      { batches: [] },
      /^None was used lately\.$/,
      false,
    ],
    [
      "more used than bought",
      [row(2, { Feed: "Potassium nitrate", Amount: 9, Unit: "g" })],
      {},
      /used 50 g .* only 9 g were bought/,
      true,
    ],
    [
      "the last of it",
      [row(2, { Feed: "Potassium nitrate", Amount: 55, Unit: "g" })],
      {},
      /^Not enough for another batch\. Time to buy\.$/,
      true,
    ],
    ["no unit", [row(7, { Feed: "Potassium nitrate", Amount: 9 })], {}, /^Unit in row 7 of Purchases is blank/, true],
    [
      "an amount that is none",
      [row(7, { Feed: "Potassium nitrate", Amount: "a lot", Unit: "g" })],
      {},
      /^Amount in row 7 of Purchases is "a lot"/,
      true,
    ],
    [
      "a dose typed by hand",
      BOUGHT,
      { batches: [batch(4, "2026-03-02", "two spoons")] },
      /^Doses in the batch of 8 L, 2 Mar 2026: “two spoons” is not a dose/,
      true,
    ],
    [
      "millilitres without a density",
      BOUGHT,
      { batches: [batch(4, null, "Potassium nitrate 1 mL/L (5 mL)")] },
      /is counted in g, .* Give its density/,
      true,
    ],
  ])("says so: %s", (_, bought, change, words, warns) => {
    const line = lineFor("Potassium nitrate", bought, change);
    if (line === undefined) throw new Error("There should be a line.");
    expect(stockWords(line).sentence).toMatch(words);
    expect(stockWords(line).warns).toBe(warns);
  });

  test("shows what needs a look first, then what runs out first, then what was never bought", () => {
    const bought = [
      row(2, { Feed: "Magnesium sulfate heptahydrate", Amount: 5, Unit: "g" }),
      row(3, { Feed: "Calcium nitrate tetrahydrate", Amount: 40, Unit: "g" }),
      row(4, { Feed: "Potassium nitrate", Amount: 80, Unit: "g" }),
      row(5, { Feed: "Kelp", Amount: 1, Unit: "spoon" }),
      row(6, { Feed: "Potassium dihydrogen phosphate", Amount: 90, Unit: "kg" }),
    ];
    const batches = [
      batch(1, "2026-03-01", "Potassium nitrate 1 g/L (20 g); Calcium nitrate tetrahydrate 1 g/L (20 g)"),
      batch(2, "2026-03-01", "Potassium dihydrogen phosphate 1 g/L (1 g)"),
    ];
    const lines = stockOf(sheet({ batches }), records(bought));
    expect(lines.slice(0, 5).map(({ feed }) => feed)).toEqual([
      "Kelp",
      "Calcium nitrate tetrahydrate",
      "Potassium nitrate",
      "Potassium dihydrogen phosphate",
      "Magnesium sulfate heptahydrate",
    ]);
    expect(lines.slice(5).every((line) => !stockWords(line).counted)).toBe(true);
    expect(lines).toHaveLength(sheet().feeds.length + 1);
  });
});

describe("beside the doses of a batch", () => {
  const loaded = sheet({ batches: MIXED });
  const feedOf = (name: string) => {
    const found = readChoices(loaded).feeds.find((one) => one.name === name)?.feed ?? null;
    if (found === null) throw new Error(`${name} should be on the shelf.`);
    return found;
  };

  test("what is left comes in the unit of the dose, and as nothing where nobody can say", () => {
    const bought = [...BOUGHT, row(4, { Feed: "Complete liquid 4-2-6", Amount: 1.12, Unit: "kg" })];
    const onHandOf = onHandIn(loaded, records(bought));
    expect(onHandOf(feedOf("Potassium nitrate"))).toBe(1450);
    // 1120 g at 1.12 g/mL.
    expect(onHandOf(feedOf("Complete liquid 4-2-6"))).toBeCloseTo(1000, 9);
    expect(onHandOf(feedOf("Magnesium sulfate heptahydrate"))).toBeNull();
    expect(onHandIn(loaded, null)(feedOf("Potassium nitrate"))).toBeNull();
  });

  test("a feed that will not do is named, one that just does is not", () => {
    const feeds = [feedOf("Potassium nitrate")];
    const line = { feed: "Potassium nitrate", perLitre: 1, unit: "g" as const, measuredBy: null, how: "", stock: null };
    const short = (perBatch: number, onHand: number | null) =>
      shortOf({ feeds, lines: [{ ...line, perBatch }] }, { onHandOf: () => onHand });
    expect(short(20, 20)).toEqual([]);
    expect(short(20, null)).toEqual([]);
    expect(short(20, 12)).toEqual([
      "This batch takes 20 g of Potassium nitrate, but only 12 g are on hand by Purchases and the log.",
    ]);
    expect(short(20, -3)[0]).toContain("but nothing is on hand");
  });

  test("nitrogen that comes as urea is said, and none where there is none", () => {
    const feeds = readShelf([{ fields: { Feed: "Green", N: 20, "Urea-N": 15, "NO3-N": 5 }, where: "row 2" }]).flatMap(
      ({ feed }) => (feed === null ? [] : [feed]),
    );
    const line = { perLitre: 0.5, unit: "g" as const, perBatch: 5, measuredBy: null, how: "", stock: null };
    // 0.5 g/L of 20 % are 100 mg/L, three quarters of them urea.
    expect(ureaWords({ feeds, lines: [{ ...line, feed: "Green" }], reached: { N: 100 } })).toMatch(
      /^Of the 100 mg\/L of nitrogen 75 come as urea: /,
    );
    const salts = [feedOf("Potassium nitrate")];
    expect(ureaWords({ feeds: salts, lines: [{ ...line, feed: "Potassium nitrate" }], reached: { N: 69 } })).toBeNull();
  });

  test("the shelf of the mix follows the records", async () => {
    const { panel, host } = await openTestPanel({ batches: MIXED });
    const onHand = () => panel.batch.shelf.get().onHandOf(feedOf("Potassium nitrate"));
    expect(onHand()).toBeNull();
    panel.recordsLoading.press();
    await host.last().reply(records([...BOUGHT]));
    expect(onHand()).toBe(1450);
    panel.loaded.change(
      (now) => now && { ...now, batches: [batch(9, "2026-03-14", "Potassium nitrate 1 g/L (50 g)"), ...now.batches] },
    );
    expect(onHand()).toBe(1400);
  });
});

describe("a purchase", () => {
  const purchases = readPurchases(BOUGHT).purchases as Purchase[];
  const fresh = (change: Partial<StockDraft> = {}): StockDraft => ({
    ...freshStock(() => "made-id-1"),
    ...{ feed: "Potassium nitrate", amount: "1,5" },
    ...change,
  });
  const made = (change: Partial<StockDraft>, who = "Ama") =>
    makePurchase(fresh(change), { who, today: "2026-03-14", purchases });

  test.each<[Partial<StockDraft>, string, string | RegExp]>([
    [{}, "", "Type your name first, so that the log can say who did this."],
    [{ feed: "" }, "Ama", "Choose a feed."],
    [{ amount: "" }, "Ama", "Type how much it was."],
    [{ amount: "0" }, "Ama", "Type how much it was."],
    [{ amount: "a bag" }, "Ama", /The amount is "a bag"/],
    [{ price: "free" }, "Ama", /The price is "free"/],
    [{ feed: "Complete liquid 4-2-6" }, "Ama", "Choose the unit of the amount."],
    [{ day: "none" }, "Ama", "Choose the date."],
  ])("%o by %j waits: %s", (change, who, sentence) => {
    if (typeof sentence === "string") expect(made(change, who)).toBe(sentence);
    else expect(made(change, who)).toMatch(sentence);
  });

  test("takes the unit of the latest pack, and counts below 0 what was spilled", () => {
    expect(unitOf(fresh(), purchases)).toBe("kg");
    expect(made({ price: "9.80", lot: " 007 ", note: " x " })).toEqual({
      ask: "log purchase",
      who: "Ama",
      entry: {
        ...{ id: "made-id-1", day: "2026-03-14", feed: "Potassium nitrate", amount: 1.5, unit: "kg" },
        ...{ price: 9.8, lot: "007", note: "x" },
      },
    });
    expect(made({ way: "left", unit: "g", price: "3", lot: "1" })).toMatchObject({
      entry: { amount: -1.5, unit: "g", price: null, lot: "" },
    });
  });

  test("is on hand at once, keeps its id through a retry, and can be taken back", async () => {
    const { panel, host } = await openTestPanel({ batches: MIXED });
    panel.recordsLoading.press();
    await host.last().reply(records([...BOUGHT]));
    const { stock } = panel;
    stock.draft.change((now) => ({ ...now, feed: "Potassium nitrate", amount: "250", unit: "g" }));
    stock.sender.press();
    await host.last().lose();
    const first = host.last().request;
    stock.sender.press();
    expect(host.last().request).toEqual(first);
    await host.last().reply({ written: 0, already: 1, differing: [] });
    expect(said(stock.sender)).toBe("done: Logged: 250 g of Potassium nitrate bought.");
    const onHand = () => {
      const [all, read] = [panel.loaded.get(), panel.records.get()];
      if (all === null || read === null) throw new Error("Both were read.");
      return stockOf(all, read).find(({ feed }) => feed === "Potassium nitrate")?.supply?.onHand;
    };
    expect(onHand()).toBe(1700);
    expect(stock.draft.get()).toMatchObject({ feed: "", amount: "" });
    const id = first.ask === "log purchase" ? first.entry.id : "";
    expect(stock.draft.get().id).not.toBe(id);
    stock.takeBack.row(id);
    expect(host.last().request).toMatchObject({ ask: "take back", log: "Purchases", takes: id, who: "Ama" });
    await host.last().reply({ written: 1, already: 0 });
    expect(onHand()).toBe(1450);
  });

  test("has the sheet count too, and says what came of it", async () => {
    const { panel, host } = await openTestPanel();
    panel.stock.inSheet.press();
    expect(host.last().request).toEqual({ ask: "show on hand" });
    await host.last().fail("Column AF (“On hand”) of “Feeds” holds something in row 3.");
    expect(said(panel.stock.inSheet)).toMatch(/^failed: Column AF/);
  });

  test("is told with its day, lot and who, and what left as that", () => {
    expect(purchases.map(purchaseWords)).toEqual([
      "1 Jan 2026: 1 kg of Potassium nitrate, lot A, Ama",
      "1 Dec 2025: 500 g of potassium nitrate, lot old, Bo",
    ]);
    const [first] = purchases as [Purchase];
    expect(purchaseWords({ ...first, amount: -40, unit: "g", day: null, lot: "", who: "" })).toBe(
      "No date: 40 g of Potassium nitrate left the shelf",
    );
  });

  test("a draft that was kept is read back; what is spoilt is dropped", () => {
    const draft = fresh({ way: "left", unit: "mL" });
    expect(readStock(JSON.parse(JSON.stringify(draft)))).toEqual(draft);
    expect(readStock({ ...draft, id: "x" })).toBeNull();
    expect(readStock({ ...draft, unit: "spoon", way: "flew" })).toMatchObject({ unit: "", way: "came" });
  });
});
