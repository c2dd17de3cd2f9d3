/**
 * A small household's workbook, and for everything that the panel may ask a request that does something in it. A new
 * request has to have a sample here: the fault table, the interleavings and the fuzz take theirs from this list.
 */

import type { CellChange, CellValue } from "../../sample-sheet/workbench/standin/grid.ts";
import type { MemoryTabOptions } from "../../sample-sheet/workbench/standin/memory.ts";
import type { Ask, ClaimEntry, RequestFor } from "../../src/app/contract.ts";
import { TABS } from "../../src/sheet/tabs.ts";
import { batch, careEntry, dateCell } from "../sheet/workbook.ts";

type Row = readonly (CellValue | CellChange)[];

const day = dateCell("2026-02-01");

/** Rows below the headings, by heading; what is not named is blank. */
const CONTENT: Readonly<Record<string, readonly Readonly<Record<string, Row[number]>>[]>> = {
  Plants: [{ Plant: "Monstera", Place: "Kitchen", "Pot mL": 900 }, { Plant: "Hoya" }],
  Events: [
    { Event: "Repot", "Disturbs roots": "yes" },
    { Event: "Top up", "Disturbs roots": "no" },
  ],
  Feeds: [
    { Feed: "Calcium nitrate", N: 15.5, "NO3-N": 14.4, "NH4-N": 1.1, Ca: 19, Origin: "mineral" },
    { Feed: "Green 10-5-5", N: 10, P2O5: 5, K2O: 5, Basis: "w/v", Note: "=not a formula" },
  ],
  Waters: [{ Water: "Tap", Date: day, Ca: 80, Alkalinity: 200, EC: 0.5 }],
  Targets: [{ Target: "Half strength", N: 100, P: 15, K: 100 }],
  "Care log": [
    { Id: "care-0001", Date: day, Plant: "Monstera", Event: "Repot", Who: "Ana", Note: "'quoted" },
    { Date: day, Plant: "Hoya", Event: "Top up", "Amount mL": 120 },
    { Id: "care-0003", Date: day, Plant: "Hoya", Event: "Repot", Who: "Ben" },
    { Id: "care-0004", Date: day, Plant: "Hoya", Event: "Top up", Who: "Ana" },
    { Id: "care-0005", Date: day, Plant: "Monstera", Event: "Top up", "Amount mL": 80, Who: "Ana" },
  ],
  "Batch log": [
    { Id: "batch-0001", Date: day, Who: "Ana", Litres: 10, Doses: "Calcium nitrate 1 g/L (10 g)", State: "planned" },
    { Id: "batch-0002", Date: day, Who: "Ben", Litres: 5, Doses: "Calcium nitrate 1 g/L (5 g)", "Measured EC": 1.2 },
  ],
  Claims: [{ Id: "claim-0001", Claim: "Rain water helps", Status: "heard", Who: "Ana" }],
  Trials: [{ Id: "trial-0001", Question: "Does shade help?", Measure: "New leaves", Started: day, Ends: day }],
  Settings: [
    { Setting: "Today", Value: dateCell("2026-03-09") },
    { Setting: "People", Value: "Ana, Ben" },
    { Setting: "Rest days", Value: 150 },
  ],
};

/** A tab that lists the plants and is not ours. */
const OWN_LIST: MemoryTabOptions = {
  rows: 8,
  columns: 4,
  cells: [
    ["Nr", "Name", "Room", "Own note"],
    [1, "Monstera", "Kitchen", "mine"],
    [2, "Hoya", "Hall", null],
  ],
};

const SPARE_ROWS = 6;

/** The tabs as they are before the set-up gives them marks and rules; `spareRows` below the last row. */
export function sampleTabs(spareRows = SPARE_ROWS): Record<string, MemoryTabOptions> {
  const tabs: Record<string, MemoryTabOptions> = { "My plants": OWN_LIST };
  for (const { name, columns } of TABS) {
    const headings = columns.map(({ heading }) => heading);
    const rows = (CONTENT[name] ?? []).map((row) => headings.map((heading) => row[heading] ?? null));
    tabs[name] = { cells: [headings, ...rows], rows: rows.length + 1 + spareRows, columns: headings.length + 2 };
  }
  return tabs;
}

export interface Sample<A extends Ask> {
  readonly what: string;
  readonly request: RequestFor<A>;
}

const claim = (given: Partial<ClaimEntry>): ClaimEntry => ({
  id: "sample-claim-0",
  claim: "Rain water helps",
  heardFrom: "Bo",
  yearsAtIt: 3,
  theirSetup: "",
  ourSetup: "",
  agrees: "",
  differs: "",
  status: "heard",
  heardOn: "2026-03-01",
  lookAgain: null,
  trial: "",
  outcome: "",
  note: "",
  ...given,
});

const care = (id: string, given: Partial<ReturnType<typeof careEntry>> = {}) => careEntry({ id, ...given });

/** At least one for each ask; the compiler asks for it, and a test asks the handlers. */
export const SAMPLES: { readonly [A in Ask]: readonly Sample<A>[] } = {
  load: [{ what: "opening the panel", request: { ask: "load" } }],
  "read page": [{ what: "reading a page of a log", request: { ask: "read page", tab: "Care log", from: 2, rows: 3 } }],
  "import rows": [
    {
      what: "bringing rows of a log back",
      request: {
        ask: "import rows",
        tab: "Care log",
        headings: ["Id", "Date", "Plant", "Event", "Note"],
        rows: [
          ["import-sample-1", { day: "2026-03-01" }, "Hoya", "Top up", "=1+1"],
          ["import-sample-2", { day: "2026-03-02" }, "Hoya", "Top up", null],
        ],
      },
    },
    {
      what: "bringing settings back",
      request: {
        ask: "import rows",
        tab: "Settings",
        headings: ["Setting", "Value"],
        rows: [["Rest days", 90]],
      },
    },
  ],
  "write sitter page": [
    {
      what: "putting the sitter’s page into the sheet",
      request: {
        ask: "write sitter page",
        cells: [["For Mira"], ["Day", "Plant"], ["Sat 14 Mar 2026", "=Hoya"]],
        widths: [120, 200],
        boldRows: [1, 2],
        wrapped: { from: 2, to: 3 },
      },
    },
  ],
  "read sitter page": [{ what: "reading the sitter’s page", request: { ask: "read sitter page" } }],
  records: [{ what: "reading the records", request: { ask: "records" } }],
  "log care": [
    {
      what: "logging care of two plants",
      request: {
        ask: "log care",
        who: "Ana",
        entries: [care("sample-care-01", { note: "=1+1" }), care("sample-care-02", { plant: "Hoya", pH: 6 })],
      },
    },
    {
      what: "correcting a row of care",
      request: {
        ask: "log care",
        who: "Ana",
        entries: [care("sample-care-03", { event: "Repot", corrects: "care-0001" })],
      },
    },
  ],
  "take back": [
    {
      what: "taking two rows of care back",
      request: {
        ask: "take back",
        who: "Ana",
        log: "Care log",
        id: "sample-back-01",
        takes: "care-0005",
        more: [{ id: "sample-back-02", takes: "care-0004" }],
      },
    },
    {
      what: "taking a batch back",
      request: { ask: "take back", who: "Ben", log: "Batch log", id: "sample-back-03", takes: "batch-0002" },
    },
  ],
  "log batch": [
    {
      what: "logging a batch",
      request: { ask: "log batch", who: "Ben", batch: batch({ id: "sample-batch-01", note: "'tis" }) },
    },
    {
      what: "mixing a planned batch",
      request: { ask: "log batch", who: "Ben", batch: batch({ id: "sample-batch-02", corrects: "batch-0001" }) },
    },
  ],
  "log readings": [
    {
      what: "entering readings",
      request: { ask: "log readings", batchId: "batch-0001", ecMsCm: 1.4, pH: 6, verdict: "As it should be." },
    },
  ],
  "save claim": [
    {
      what: "saving a claim",
      request: { ask: "save claim", who: "Ana", claim: claim({ id: "sample-claim-1", claim: "=Rain helps" }) },
    },
  ],
  "save trial": [
    {
      what: "beginning a trial of a claim",
      request: {
        ask: "save trial",
        who: "Ana",
        trial: {
          id: "sample-trial-1",
          question: "Does rain water make more leaves?",
          measure: "New leaves",
          started: "2026-03-09",
          ends: "2026-06-09",
          groupA: "rain",
          groupB: "tap",
          plantsA: ["Monstera"],
          plantsB: ["Hoya"],
          design: "Pairs",
          draw: 48213377,
          worthSeeing: 2,
          note: "",
        },
        claim: claim({ id: "sample-claim-2", trial: "sample-trial-1", corrects: "claim-0001" }),
      },
    },
  ],
  "save result": [
    {
      what: "saving the result of a trial",
      request: {
        ask: "save result",
        trialId: "trial-0001",
        result: "Cannot tell.",
        difference: 0.5,
        low: -1,
        high: 2,
        p: 0.4,
      },
    },
  ],
  "log water": [
    {
      what: "logging a water",
      request: {
        ask: "log water",
        entry: {
          id: "sample-water-1",
          water: "Spring",
          day: "2026-03-01",
          source: "Report",
          numbers: { Ca: 40, Alkalinity: 100 },
          disinfectant: "none",
          note: "",
        },
      },
    },
  ],
  "log meter": [
    {
      what: "logging a reading in a standard",
      request: {
        ask: "log meter",
        who: "Ben",
        entry: {
          id: "sample-meter-1",
          day: "2026-03-09",
          meter: "EC",
          standard: 1.413,
          reading: 1.39,
          tempC: 22,
          calibrated: true,
          note: "+1",
        },
      },
    },
  ],
  "log feed": [
    {
      what: "entering a feed from its label",
      request: {
        ask: "log feed",
        entry: {
          id: "sample-feed-01",
          feed: "Blue powder",
          basis: "w/w",
          percents: { N: 20, P2O5: 20, K2O: 20 },
          densityGPerMl: null,
          origin: "mineral",
          published: true,
          labelText: "=NPK 20-20-20",
          note: "",
        },
      },
    },
  ],
  "log purchase": [
    {
      what: "logging a purchase",
      request: {
        ask: "log purchase",
        who: "Ana",
        entry: {
          id: "sample-buy-001",
          day: "2026-03-02",
          feed: "Calcium nitrate",
          amount: 2,
          unit: "kg",
          price: 9.5,
          lot: "012",
          note: "",
        },
      },
    },
  ],
  "save settings": [
    {
      what: "keeping one's tools",
      request: {
        ask: "save settings",
        settings: [
          { setting: "Scale step g", value: "0.1" },
          { setting: "Spoons", value: "Calcium nitrate: 1.3 g" },
        ],
      },
    },
  ],
  "set name": [{ what: "giving one's name", request: { ask: "set name", who: "Cleo" } }],
  "look at tabs": [{ what: "looking at the tabs", request: { ask: "look at tabs" } }],
  "show on hand": [{ what: "counting what is on hand in the sheet", request: { ask: "show on hand" } }],
  "draw chart": [{ what: "drawing the batches", request: { ask: "draw chart" } }],
  "read list": [{ what: "reading a plant list", request: { ask: "read list", tab: "My plants" } }],
  "log past": [
    {
      what: "bringing past repots in, one of them known",
      request: {
        ask: "log past",
        who: "Ana",
        entries: [
          { id: "past-00000001", day: "2025-04-01", plant: "Monstera", event: "Repot" },
          { id: "past-00000002", day: "2026-02-01", plant: "Hoya", event: "Repot" },
        ],
      },
    },
  ],
  "make boards": [{ what: "making the boards", request: { ask: "make boards" } }],
  "use plant list": [
    {
      what: "choosing a plant list",
      request: { ask: "use plant list", tab: "My plants", columns: { Plant: "Name", Place: "Room" } },
    },
  ],
};

export type AnySample = { readonly what: string; readonly request: RequestFor<Ask> };

export const ALL_SAMPLES: readonly AnySample[] = Object.values(SAMPLES).flat();

/** Asks that write nothing but today's date. */
export const READS: ReadonlySet<Ask> = new Set<Ask>([
  "load",
  "records",
  "look at tabs",
  "read page",
  "read list",
  "read sitter page",
]);
