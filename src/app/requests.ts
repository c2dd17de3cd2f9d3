/**
 * What the sidebar may ask, as schemas that both sides check. Everything travels as one JSON text; days are
 * ISO texts ("2026-03-01"); amounts carry their unit in their name. Replies stand in contract.ts: the sheet
 * makes them and the panel checks them, so no formula has to load their schemas. These here are made when the
 * first request comes, since making them takes as long as everything else that a formula loads.
 */

import * as z from "zod/mini";
import { LABEL_TERMS } from "../core/analysis.ts";
import { SYMBOLS } from "../core/elements.ts";
import { SUPPLY_UNITS } from "../core/supply.ts";
import { MEASURES } from "../core/trial-measure.ts";
import { TAB_NAMES } from "../sheet/spec.ts";

/** Columns of the Waters tab that hold numbers: mg/L, alkalinity as CaCO3, nitrate as N, EC in mS/cm at 25 °C. */
export const WATER_NUMBERS = [
  "Ca",
  "Mg",
  "Na",
  "K",
  "Alkalinity",
  "SO4",
  "Cl",
  "NO3-N",
  "Fe",
  "B",
  "EC",
  "pH",
] as const;

/** What writes nothing that was asked for; today's date is refreshed by the way. */
export const ONLY_READ: readonly string[] = [
  "load",
  "records",
  "look at tabs",
  "read page",
  "read list",
  "read sitter page",
];
/** Rows that travel at once: 200,000 rows make 40 calls, each far below what the host allows. */
export const PAGE_ROWS = 5000;
const MOST_HEADINGS = 200;

/** Settings that the panel may write. */
export const KEPT_SETTINGS = [
  "Scale step g",
  "Scale most g",
  "Syringe step mL",
  "Syringe most mL",
  "Spoons",
  "Spoonfuls at most",
  "Stock solutions",
] as const;

/** How far a claim has come in this household. */
export const CLAIM_STATES = ["heard", "trying", "kept", "dropped"] as const;

/** Headings of the Plants tab, which a list of one's own may stand in for. */
const PLANT_COLUMNS = ["Plant", "Kind", "Place", "Pot mL", "Medium", "Since", "Note"] as const;

const PAGE_MOST_ROWS = 5000;

/**
 * An object with none, some or all of these keys and no others. A record would check the same and take
 * 2 kB more of what the host loads for every formula.
 */
function onlyThese<Key extends string, Value extends z.ZodMiniType>(keys: readonly Key[], value: Value) {
  const shape = Object.fromEntries(keys.map((key) => [key, z.exactOptional(value)]));
  return z.strictObject(shape as Record<Key, z.ZodMiniExactOptional<Value>>);
}

function makeSchemas() {
  const text = z.string().check(z.maxLength(2000));
  const name = z.string().check(z.minLength(1), z.maxLength(200));
  const sentence = z.string().check(z.minLength(1), z.maxLength(2000));
  /** Made by the panel once per record, kept through retries, so that a record is written once. */
  const id = z.string().check(z.regex(/^[a-z0-9-]{8,64}$/));
  const isoDay = z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/));
  const notNegative = z.number().check(z.nonnegative());
  const positive = z.number().check(z.positive());
  /** A row of a page that the panel lays out. */
  const pageRow = z.int().check(z.gte(1), z.lte(PAGE_MOST_ROWS));

  /** mg/L by element symbol; an element that is not known is not there. */
  const amounts = onlyThese(SYMBOLS, notNegative);

  /** A cell as it is; the host keeps at most 50,000 characters in one. */
  const cell = z.union([
    z.string().check(z.maxLength(50_000)),
    z.number(),
    z.boolean(),
    z.null(),
    z.object({ day: isoDay }),
  ]);

  const careEntry = z.object({
    id,
    day: isoDay,
    plant: name,
    event: name,
    amountMl: z.nullable(notNegative),
    solution: text,
    ecMsCm: z.nullable(notNegative),
    pH: z.nullable(z.number().check(z.gte(0), z.lte(14))),
    reason: text,
    note: text,
    /** Id of the row that this one replaces. */
    corrects: z.exactOptional(id),
  });

  const batchDose = z.object({
    feed: name,
    perLitre: notNegative,
    unit: z.literal(["g", "mL"]),
    perBatch: notNegative,
  });

  const batchEntry = z.object({
    id,
    day: isoDay,
    litres: positive,
    water: text,
    target: text,
    doses: z.array(batchDose).check(z.minLength(1)),
    /** mg/L after mixing, as shown when the button was pressed. */
    reached: amounts,
    /** At 25 °C, as shown; null where it cannot be worked out. */
    predictedEcMsCm: z.nullable(notNegative),
    /** Which acid or base, how much, to which pH; "" for none. */
    acid: text,
    note: text,
    /** What was measured of the row that this one corrects; a new batch has its readings filled in later. */
    measured: z.exactOptional(
      z.object({ ecMsCm: z.nullable(notNegative), pH: z.nullable(z.number().check(z.gte(0), z.lte(14))) }),
    ),
    /** Left out for a batch that is mixed. */
    state: z.exactOptional(z.literal("planned")),
    /** Id of the row that this one replaces: a plan that was mixed, or a mistake. */
    corrects: z.exactOptional(id),
  });

  const waterEntry = z.object({
    /** Names the press in the panel. The tab has no column for it: a retry is known by name, day and numbers. */
    id,
    water: name,
    day: isoDay,
    source: text,
    /** What was not measured is not there. */
    numbers: onlyThese(WATER_NUMBERS, notNegative),
    disinfectant: z.literal(["", "none", "chlorine", "chloramine"]),
    note: text,
  });

  const taking = {
    /** Of the new row that says so. */
    id,
    /** Id of the row that is taken back. */
    takes: id,
  };

  const meterEntry = z.object({
    id,
    day: isoDay,
    meter: z.literal(["EC", "pH"]),
    /** mS/cm at 25 °C, or pH. */
    standard: positive,
    /** What the meter showed in it, before it was set; in the same unit. */
    reading: notNegative,
    tempC: z.nullable(z.number().check(z.gte(0), z.lte(50))),
    /** The meter was set to the standard after this reading. */
    calibrated: z.boolean(),
    note: text,
  });

  const feedEntry = z.object({
    /** Names the press in the panel. The tab has no column for it: a retry is known by name and values. */
    id,
    feed: name,
    /** "" where the label does not say and nothing is dosed. */
    basis: z.literal(["", "w/w", "w/v"]),
    /** As printed, percent; what the label does not state is not there. */
    percents: onlyThese(LABEL_TERMS, notNegative),
    densityGPerMl: z.nullable(positive),
    origin: z.literal(["mineral", "organic"]),
    published: z.boolean(),
    /** The label as it was pasted. */
    labelText: z.string().check(z.maxLength(20_000)),
    note: text,
  });

  const purchaseEntry = z.object({
    id,
    day: isoDay,
    feed: name,
    /** Below 0 for what was spilled or given away. */
    amount: z.number(),
    unit: z.literal(SUPPLY_UNITS),
    /** Of the pack, in the household's money. */
    price: z.nullable(notNegative),
    lot: text,
    note: text,
    /** Id of the row that this one replaces. */
    corrects: z.exactOptional(id),
  });

  const claimEntry = z.object({
    id,
    claim: sentence,
    heardFrom: text,
    yearsAtIt: z.nullable(notNegative),
    theirSetup: text,
    ourSetup: text,
    agrees: text,
    differs: text,
    status: z.literal(CLAIM_STATES),
    heardOn: z.nullable(isoDay),
    lookAgain: z.nullable(isoDay),
    /** Id of its trial, "" for none. */
    trial: text,
    outcome: text,
    note: text,
    /** Id of the row that this one replaces. */
    corrects: z.exactOptional(id),
  });

  const plants = z.array(name).check(z.minLength(1), z.maxLength(100));
  const trialEntry = z.object({
    id,
    question: sentence,
    measure: z.literal(MEASURES),
    started: isoDay,
    ends: isoDay,
    groupA: text,
    groupB: text,
    /** In pairs, plantsA[k] and plantsB[k] belong together. */
    plantsA: plants,
    plantsB: plants,
    design: z.literal(["Pairs", "Together"]),
    /** The number that the groups were drawn by. */
    draw: z.int().check(z.gte(0), z.lte(99_999_999)),
    /** The smallest difference that would matter; null where nobody said. */
    worthSeeing: z.nullable(positive),
    note: text,
  });

  /** By what is asked, so that each side checks against the one schema that is meant. */
  const asked = {
    /** Everything the panel needs, in one call. */
    load: z.object({ ask: z.literal("load") }),
    /** What only some sections need, when one of them opens. */
    records: z.object({ ask: z.literal("records") }),
    "log care": z.object({
      ask: z.literal("log care"),
      who: text,
      entries: z.array(careEntry).check(z.minLength(1), z.maxLength(500)),
      /** Written also where somebody else logged the same that day. */
      again: z.exactOptional(z.boolean()),
    }),
    /** By the person under "Who" only. */
    "take back": z.object({
      ask: z.literal("take back"),
      who: text,
      log: z.literal(["Care log", "Batch log", "Purchases", "Meter log", "Claims", "Trials"]),
      ...taking,
      /** Others of the same log, taken back in the same write. */
      more: z.exactOptional(z.array(z.object(taking)).check(z.maxLength(500))),
    }),
    "log batch": z.object({ ask: z.literal("log batch"), who: text, batch: batchEntry }),
    /** Readings belong to a batch that is already in the log. */
    "log readings": z.object({
      ask: z.literal("log readings"),
      batchId: id,
      ecMsCm: z.nullable(notNegative),
      pH: z.nullable(z.number().check(z.gte(0), z.lte(14))),
      /** What the panel made of the reading, as shown; "" for nothing. */
      verdict: text,
    }),
    "log meter": z.object({ ask: z.literal("log meter"), who: text, entry: meterEntry }),
    "log water": z.object({ ask: z.literal("log water"), entry: waterEntry }),
    "log feed": z.object({ ask: z.literal("log feed"), entry: feedEntry }),
    "log purchase": z.object({ ask: z.literal("log purchase"), who: text, entry: purchaseEntry }),
    "save claim": z.object({ ask: z.literal("save claim"), who: text, claim: claimEntry }),
    /** A trial as it begins, and with it the claim that it tests, as a row that replaces the claim's. */
    "save trial": z.object({
      ask: z.literal("save trial"),
      who: text,
      trial: trialEntry,
      claim: z.exactOptional(claimEntry),
    }),
    /** Into the blank cells of the trial's row. */
    "save result": z.object({
      ask: z.literal("save result"),
      trialId: id,
      /** In words, as shown. */
      result: sentence,
      difference: z.nullable(z.number()),
      low: z.nullable(z.number()),
      high: z.nullable(z.number()),
      p: z.nullable(z.number().check(z.gte(0), z.lte(1))),
    }),
    /** Values beside rows of Settings; a row that is not there is added. */
    "save settings": z.object({
      ask: z.literal("save settings"),
      settings: z
        .array(z.object({ setting: z.literal(KEPT_SETTINGS), value: text }))
        .check(z.minLength(1), z.maxLength(50)),
    }),
    /** The name shown in "Who"; kept for this person only. */
    "set name": z.object({ ask: z.literal("set name"), who: text }),
    /** Tabs of the workbook with their headings, to choose one's own plant list. */
    "look at tabs": z.object({ ask: z.literal("look at tabs") }),
    /** A tab's cells, to guess its columns by and to find past days in. */
    "read list": z.object({ ask: z.literal("read list"), tab: name }),
    /** Past disturbances out of a plant list; ids are made of what they say, so that each comes once. */
    "log past": z.object({
      ask: z.literal("log past"),
      who: text,
      entries: z
        .array(z.object({ id, day: isoDay, plant: name, event: name }))
        .check(z.minLength(1), z.maxLength(5000)),
    }),
    "use plant list": z.object({
      ask: z.literal("use plant list"),
      tab: name,
      /** Column heading on that tab for each of ours; "" where there is none. */
      columns: onlyThese(PLANT_COLUMNS, text),
    }),
    /** Some rows of a tab as they are, for a copy outside. */
    "read page": z.object({
      ask: z.literal("read page"),
      tab: z.literal(TAB_NAMES),
      from: z.number().check(z.gte(2)),
      rows: z.number().check(z.gte(1), z.lte(PAGE_ROWS)),
    }),
    /** Rows of such a copy; each has its key, by which it is written once. */
    "import rows": z.object({
      ask: z.literal("import rows"),
      tab: z.literal(TAB_NAMES),
      headings: z.array(name).check(z.minLength(1), z.maxLength(MOST_HEADINGS)),
      rows: z.array(z.array(cell)).check(z.minLength(1), z.maxLength(PAGE_ROWS)),
    }),
    /** EC and pH over time on a tab of their own, with a chart; never a second one. */
    "draw chart": z.object({ ask: z.literal("draw chart") }),
    /** The page as the panel worked it out; it goes onto a tab of its own. */
    "write sitter page": z.object({
      ask: z.literal("write sitter page"),
      cells: z
        .array(z.array(z.union([text, z.number(), z.null()])).check(z.maxLength(10)))
        .check(z.minLength(1), z.maxLength(PAGE_MOST_ROWS)),
      /** Pixels. */
      widths: z.array(z.int().check(z.gte(10), z.lte(2000))).check(z.minLength(1), z.maxLength(10)),
      boldRows: z.array(pageRow),
      wrapped: z.nullable(z.object({ from: pageRow, to: pageRow })),
    }),
    "read sitter page": z.object({ ask: z.literal("read sitter page") }),
    /** A tab each with one formula; those that are there stay as they are. */
    "make boards": z.object({ ask: z.literal("make boards") }),
    /** The column On hand of Feeds as a formula in its heading; never over numbers typed by hand. */
    "show on hand": z.object({ ask: z.literal("show on hand") }),
  } as const;
  return {
    careEntry,
    batchDose,
    batchEntry,
    waterEntry,
    meterEntry,
    feedEntry,
    purchaseEntry,
    claimEntry,
    trialEntry,
    asked,
  };
}

export type RequestSchemas = ReturnType<typeof makeSchemas>;

let made: RequestSchemas | null = null;

/** The schemas by what is asked, so that each side checks against the one that is meant. */
export function requestSchemas(): RequestSchemas["asked"] {
  made ??= makeSchemas();
  return made.asked;
}
