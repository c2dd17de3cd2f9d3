/** The built panel at 300 px: no violation axe-core knows of, nothing sticking out, in light and dark, in every section. */

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { zipOf } from "../../sidebar/export-file.ts";
import type { FunctionHelp } from "../../sidebar/formulas.ts";
import type { Request } from "../../src/app/contract.ts";
import { objections } from "../browser/axe.ts";
import { launch } from "../browser/chromium.ts";
import { type Behaviour, openPanel, overflows } from "./page.ts";
import { sheet } from "./sheet.ts";

const LONG = "A-name-without-any-space-that-goes-on-and-on-for-much-longer-than-the-panel-is-wide";

/** A sheet that is hard on the layout: long words, many rows, a ppm meter, no name yet. */
function hardSheet(): ReturnType<typeof sheet> {
  const { plants, feeds, waters, targets, batches, events } = sheet();
  return sheet({
    who: "",
    meterScale: 700,
    plants: Array.from({ length: 400 }, (_, index) => ({
      plant: `${LONG} ${index}`,
      kind: "",
      place: index % 2 === 0 ? LONG : "Here",
      potMl: null,
      medium: "",
      restDays: plants[index % 12]?.restDays ?? null,
      lastEvent: "",
    })),
    feeds: [...feeds, { row: 20, fields: { Feed: LONG, N: 10 } }],
    waters: [...waters, { row: 20, fields: { Water: LONG, Ca: 1 } }],
    targets: [...targets, { row: 20, fields: { Target: LONG, N: 12345 } }],
    batches: batches.map((batch) => ({ ...batch, doses: `${LONG} 1 g/L` })),
    events: [...events, { event: LONG, disturbsRoots: true }],
    problems: [LONG],
  });
}

/** The same sheet with a log for its first plant: changed, topped up each week, read, trimmed before. */
function withCare(reply: ReturnType<typeof sheet>): ReturnType<typeof sheet> {
  const plant = reply.plants[0]?.plant ?? "";
  const blank = { amountMl: null, ecMsCm: null, pH: null, who: "Bo", reason: "", note: "" };
  const rows = [
    ["2025-12-01", "Root trim"],
    ["2026-02-01", "Solution change"],
    ["2026-02-10", "Top up", 150],
    ["2026-02-17", "Top up", 120],
    ["2026-02-24", "Reading", null, 1.9],
    ["2026-02-24", "Top up", 130],
  ] as const;
  const care = rows.map(([day, event, amountMl = null, ecMsCm = null], at) => ({
    ...{ id: `care-${at}`, day, plant, event, ...blank, amountMl, ecMsCm },
    solution: reply.waters[0] === undefined ? "" : LONG,
  }));
  return { ...reply, care: { rows: care, from: "2025-12-01", all: false } };
}

/** Help that is hard on the layout. */
const HARD_FORMULAS: readonly FunctionHelp[] = [
  {
    name: "A_FUNCTION",
    summary: LONG,
    call: `A_FUNCTION(${LONG})`,
    args: [{ name: LONG, help: LONG, optional: true }],
    result: LONG,
    examples: [`=A_FUNCTION("${LONG}")`],
  },
];

const TABS = { tabs: [{ tab: "My plants", headings: ["Name", "Room", LONG], rows: 31 }] };

const RECORDS = {
  purchases: [
    {
      row: 2,
      fields: {
        Id: "purchase-1",
        Date: "2026-02-20",
        Feed: "Potassium nitrate",
        Amount: 1,
        Unit: "kg",
        Lot: "L-1",
        Who: "Ama",
      },
    },
    { row: 3, fields: { Id: "purchase-2", Feed: LONG, Amount: 5, Unit: "mL", Lot: LONG, Who: "Ama" } },
    { row: 4, fields: { Feed: "Complete liquid 4-2-6", Amount: LONG, Unit: "mL" } },
  ],
  meterLog: [
    {
      row: 2,
      fields: { Id: "meter-0001", Date: "2026-02-20", Meter: "EC", Standard: 1.413, Reading: 1.3, Calibrated: true },
    },
    { row: 3, fields: { Id: "meter-0002", Date: "2026-02-21", Meter: "pH", Standard: 7.01, Reading: 7.3, Who: "Ama" } },
    { row: 4, fields: { Id: "meter-0003", Note: LONG } },
  ],
  claims: [
    {
      row: 2,
      fields: {
        Id: "claim-0001",
        Claim: "Rain water makes more leaves",
        "Heard from": "Bo",
        "Years at it": 6,
        Status: "heard",
        "Heard on": "2026-01-01",
        "Look again": "2026-03-01",
        "Their setup": LONG,
      },
    },
    { row: 3, fields: { Claim: LONG, Status: "dropped", "What came of it": LONG } },
  ],
  trials: [
    {
      row: 2,
      fields: {
        Id: "trial-0001",
        Question: "Does rain water make more leaves?",
        Measure: "New leaves",
        Started: "2025-10-01",
        Ends: "2026-02-01",
        "Plants A": `Fern 1; ${LONG}`,
        "Plants B": "Arum 2; Hoya 3",
        Design: "Pairs",
        Draw: 7,
      },
    },
    { row: 3, fields: { Question: LONG, Measure: LONG } },
  ],
  problems: [LONG],
};

/** The first plant drinks 150 mL in five days. */
function withDrinker(loaded: ReturnType<typeof sheet>): ReturnType<typeof sheet> {
  const rows = ["2026-03-09", "2026-03-04", "2026-02-27"].map((day, at) => ({
    id: `drinker-${at}`,
    day,
    plant: loaded.plants[0]?.plant ?? "",
    event: "Top up",
    amountMl: 150,
    solution: "",
    ecMsCm: null,
    pH: null,
    who: "Ama",
    reason: "",
    note: "",
  }));
  return { ...loaded, care: { rows: [...loaded.care.rows, ...rows], from: "2026-02-27", all: false } };
}

function behave(loaded: ReturnType<typeof sheet>): (request: Request) => Behaviour {
  return (request) => {
    if (request.ask === "load") return { answer: { ok: true, reply: withDrinker(loaded) } };
    if (request.ask === "records") return { answer: { ok: true, reply: RECORDS } };
    if (request.ask === "read page") {
      const columns = [{ heading: "Plant", ours: true, computed: false }];
      return { answer: { ok: true, reply: { tab: LONG, columns, rows: [], next: null } } };
    }
    if (request.ask === "write sitter page") return { answer: { ok: true, reply: { tab: LONG, kept: LONG } } };
    if (request.ask === "look at tabs") return { answer: { ok: true, reply: TABS } };
    if (request.ask === "log batch") {
      return { answer: { ok: true, reply: { written: 0, already: 1, differing: ["It differs in Litres."] } } };
    }
    return { lost: true };
  };
}

type Step = (page: Page) => Promise<unknown>;

const mix: Step = async (page) => {
  await page.getByLabel("Water", { exact: true }).selectOption("Tap");
  await page.getByLabel("Target", { exact: true }).selectOption("Foliage, half strength");
  for (const box of await page.getByRole("list", { name: "Feeds" }).getByRole("checkbox").all()) await box.check();
  await page.getByLabel("Litres to mix").fill("12,5");
};

const STATES: readonly [string, Step][] = [
  ["Mix a batch, nothing chosen", async () => undefined],
  ["Mix a batch, worked out", mix],
  [
    "Mix a batch, doses typed, one unreadable",
    async (page) => {
      await mix(page);
      await page.getByLabel("Give doses").check();
      await page.getByRole("textbox", { name: "Dose of Potassium nitrate" }).fill("1,234.5");
      await page.locator("summary").first().click();
    },
  ],
  [
    "Mix a batch, logged",
    async (page) => {
      await mix(page);
      const name = page.getByRole("main").getByLabel("Your name");
      if ((await name.count()) > 0) await name.fill("Ama");
      await page.getByRole("button", { name: "Log this batch" }).click();
      await page.getByText("It differs in Litres.").waitFor();
    },
  ],
  [
    "Know a feed, asked and corrected",
    async (page) => {
      await page.getByRole("button", { name: "Know a feed" }).click();
      await page.getByLabel("Printed analysis").fill(`N 9 %\n${LONG}\nPhosphorus 5 %\nShake well\nUrea nitrogen 9 %`);
      await page.getByRole("button", { name: "Leave out the 2 lines" }).click();
      await page.getByText("Left out by you").click();
      await page.getByRole("button", { name: "Correct line 1" }).click();
      await page.getByRole("radio", { name: "the oxide P2O5" }).check();
      await page.getByLabel("It is").selectOption("liquid");
      await page.getByLabel("Its percents count by").selectOption("w/w");
      await page.getByLabel("Made of").selectOption("mineral");
      await page.getByLabel("Target", { exact: true }).selectOption({ index: 1 });
      await page.getByText("Alone it comes closest").waitFor();
      await page.getByRole("button", { name: "Save this feed" }).click();
      await page.getByText("Type a name for this feed.").waitFor();
    },
  ],
  [
    "Keep stock, some of it short",
    async (page) => {
      await page.getByRole("button", { name: "Keep stock" }).click();
      await page.getByText("Lot L-1", { exact: true }).waitFor();
      await page.getByText("Without a purchase on record").click();
      await page.getByText("On record: 2 purchases").click();
      await page.getByLabel("Feed", { exact: true }).selectOption({ index: 1 });
      await page.getByLabel("Amount").fill("a bag");
      const name = page.getByRole("main").getByLabel("Your name");
      if ((await name.count()) > 0) await name.fill("Ama");
      await page.getByRole("button", { name: "Log this purchase" }).click();
      await page
        .getByText(/The amount is "a bag"/)
        .first()
        .waitFor();
    },
  ],
  [
    "Log care, failed",
    async (page) => {
      await page.getByRole("button", { name: "Log care" }).click();
      const name = page.getByRole("main").getByLabel("Your name");
      if ((await name.count()) > 0) await name.fill("Ama");
      await page.getByLabel("Select all").check();
      await page.getByLabel("What happened").selectOption("Repot");
      await page.getByLabel("Why now").selectOption("Rot");
      await page.getByLabel("pH").fill("77");
      await page.getByRole("main").getByRole("button", { name: "Log care" }).click();
      await page.getByLabel("pH").fill("6");
      await page.getByRole("main").getByRole("button", { name: "Log care" }).click();
      await page.getByRole("button", { name: "Try again" }).waitFor();
    },
  ],
  [
    "Claims, one to be changed, nothing said",
    async (page) => {
      await page.getByRole("button", { name: "Claims" }).click();
      await page.locator("main summary").first().waitFor();
      for (const more of await page.locator("main summary").all()) await more.click();
      await page.getByRole("button", { name: "Change", exact: true }).click();
      const name = page.getByRole("main").getByLabel("Your name");
      if ((await name.count()) > 0) await name.fill("Ama");
      await page.getByLabel("What is said to help").fill("");
      await page.getByLabel("Years at it").fill("many");
      await page.getByRole("button", { name: "Save the change" }).click();
      await page.getByText("Write down what was said, in one sentence.").waitFor();
    },
  ],
  [
    "Trials, one being planned",
    async (page) => {
      await page.getByRole("button", { name: "Trials" }).click();
      await page.getByLabel("Select all").waitFor();
      for (const more of await page.locator("main summary").all()) await more.click();
      await page.getByLabel("Select all").check();
      await page.getByLabel("Difference that would matter").fill("2");
      await page.getByLabel("Spread, if you know it").fill("1,5");
      await page.getByRole("button", { name: "How many plants does it take?" }).click();
      await page.getByText("in 8 of 10 trials").waitFor();
    },
  ],
  [
    "Reservoirs, all open",
    async (page) => {
      await page.getByRole("button", { name: "Reservoirs" }).click();
      await page.getByText(/^The log is read back to/).waitFor();
      await page.getByLabel("Plant", { exact: true }).selectOption({ index: 1 });
      await page.getByLabel("Filled with, mS/cm").fill("a drop");
      await page
        .getByText(/^Filled with is "a drop"/)
        .first()
        .waitFor();
      await page.getByLabel("Filled with, mS/cm").fill("1.1");
      await page.getByLabel("Topped up with, mS/cm").fill("1");
      await page.getByLabel("Plain water, mS/cm").fill("0.1");
      const volume = page.getByLabel("Reservoir holds, mL");
      await volume.fill("400");
      await page.getByText("Top-ups that keep to it").waitFor();
      await page.locator(".plot canvas").first().waitFor();
      for (const more of await page.locator("details:not([open]) > summary").all()) await more.click();
    },
  ],
  [
    "Meters, all open",
    async (page) => {
      await page.getByRole("button", { name: "Meters" }).click();
      await page.getByLabel("Standard", { exact: true }).selectOption("other");
      await page.getByLabel("Value of the standard").fill("1413");
      await page.getByLabel("Water and feeds").selectOption("all");
      for (const more of await page.locator("summary").all()) await more.click();
      await page.locator(".plot canvas").first().waitFor();
    },
  ],
  [
    "Readings of a batch, look again",
    async (page) => {
      await page.getByRole("textbox", { name: "Measured EC" }).fill("9");
      await page.getByLabel("Measured pH").fill("8");
      await page.getByText("Look again").waitFor();
    },
  ],
  [
    "Go away, planned and written",
    async (page) => {
      await page.getByRole("button", { name: "Go away" }).click();
      await page.getByLabel("First day away").fill("2026-03-20");
      await page.getByLabel("Last day away").fill("2026-04-02");
      await page.getByLabel("How often").selectOption("7");
      await page.getByLabel("Who comes").fill(LONG);
      await page.getByText("sooner than the next visit").waitFor();
      await page.getByRole("button", { name: "Put the page into the sheet" }).click();
      await page.getByText("so that tab was kept as it is.").waitFor();
    },
  ],
  [
    "Sheet, with a copy compared and one made",
    async (page) => {
      await page.getByRole("button", { name: "Sheet", exact: true }).click();
      await page.getByRole("button", { name: "Export all records" }).click();
      await page.getByRole("link", { name: /^Save / }).waitFor();
      const rows = [
        [LONG, LONG],
        ["Fern", LONG],
      ];
      const tabs = [{ tab: "Plants", headings: ["Plant", LONG], rows, computed: [] }];
      const settings = { tab: "Settings", headings: ["Setting", "Value"], rows: [[LONG, 1]], computed: [] };
      const buffer = Buffer.from(zipOf([...tabs, settings]));
      await page
        .getByLabel("Zip with the records")
        .setInputFiles({ name: "copy.zip", mimeType: "application/zip", buffer });
      await page.getByRole("button", { name: "Write these rows" }).waitFor();
      await page.getByText("is no heading of").waitFor();
    },
  ],
  [
    "Set up, all open",
    async (page) => {
      await page.getByRole("button", { name: "Set up" }).click();
      await page.getByRole("button", { name: "Choose another tab" }).click();
      await page.getByLabel("Tab with your plants").selectOption({ index: 1 });
      for (const help of await page.locator("summary").all()) await help.click();
    },
  ],
];

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

describe.each(["light", "dark"] as const)("in %s", (scheme) => {
  describe.each([
    ["a common sheet", sheet, undefined],
    ["a sheet that is hard on the layout", hardSheet, HARD_FORMULAS],
  ])("with %s", (_, make, formulas) => {
    test.each(STATES)("%s", async (__, reach) => {
      const opened = await openPanel(browser, {
        scheme,
        behave: behave(withCare(make())),
        ...(formulas && { formulas }),
      });
      try {
        await opened.page.getByRole("heading", { name: "Mix a batch" }).waitFor();
        await reach(opened.page);
        expect(await objections(opened.page)).toEqual([]);
        expect(await overflows(opened.page)).toBe(false);
        expect(opened.outside).toEqual([]);
      } finally {
        await opened.close();
      }
    });
  });

  test("a sheet that cannot be read", async () => {
    const opened = await openPanel(browser, { scheme, behave: () => ({ lost: true }) });
    try {
      await opened.page.getByText("two accounts").waitFor();
      expect(await objections(opened.page)).toEqual([]);
      expect(await overflows(opened.page)).toBe(false);
    } finally {
      await opened.close();
    }
  });
});

test("axe-core does object where there is something to object to", async () => {
  const opened = await openPanel(browser, { behave: behave(sheet()) });
  try {
    await opened.page.getByRole("heading", { name: "Mix a batch" }).waitFor();
    await opened.page.evaluate(() => {
      document.querySelector("h2")?.setAttribute("style", "color: #eee");
    });
    expect((await objections(opened.page)).join()).toContain("color-contrast");
    await opened.page.evaluate(() => {
      document.querySelector("h2")?.setAttribute("style", "width: 400px");
    });
    expect(await overflows(opened.page)).toBe(true);
  } finally {
    await opened.close();
  }
});
