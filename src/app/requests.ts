/**
 * What the sidebar may ask, as schemas that both sides check. Everything travels as one JSON text; days are
 * ISO texts ("2026-03-01"); amounts carry their unit in their name. Replies stand in contract.ts: the sheet
 * makes them and the panel checks them, so no formula has to load their schemas. These here are made when the
 * first request comes, since making them takes as long as everything else that a formula loads.
 */

import * as z from "zod/mini";
import { TAB_NAMES } from "../sheet/spec.ts";
import { requestEntries } from "./request-entries.ts";
import { onlyThese, requestKinds } from "./request-kinds.ts";

export { CLAIM_STATES, WATER_NUMBERS } from "./request-entries.ts";

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

/** Headings of the Plants tab, which a list of one's own may stand in for. */
const PLANT_COLUMNS = ["Plant", "Kind", "Place", "Pot mL", "Medium", "Since", "Note"] as const;

const PAGE_MOST_ROWS = 5000;

function makeSchemas() {
  const kinds = requestKinds();
  const { text, name, sentence, id, isoDay, notNegative, pH } = kinds;
  const entries = requestEntries(kinds);
  /** A row of a page that the panel lays out. */
  const pageRow = z.int().check(z.gte(1), z.lte(PAGE_MOST_ROWS));

  /** A cell as it is; the host keeps at most 50,000 characters in one. */
  const cell = z.union([
    z.string().check(z.maxLength(50_000)),
    z.number(),
    z.boolean(),
    z.null(),
    z.object({ day: isoDay }),
  ]);

  const taking = {
    /** Of the new row that says so. */
    id,
    /** Id of the row that is taken back. */
    takes: id,
  };

  /** By what is asked, so that each side checks against the one schema that is meant. */
  const asked = {
    /** Everything the panel needs, in one call. */
    load: z.object({ ask: z.literal("load") }),
    /** What only some sections need, when one of them opens. */
    records: z.object({ ask: z.literal("records") }),
    "log care": z.object({
      ask: z.literal("log care"),
      who: text,
      entries: z.array(entries.careEntry).check(z.minLength(1), z.maxLength(500)),
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
    "log batch": z.object({ ask: z.literal("log batch"), who: text, batch: entries.batchEntry }),
    /** Readings belong to a batch that is already in the log. */
    "log readings": z.object({
      ask: z.literal("log readings"),
      batchId: id,
      ecMsCm: z.nullable(notNegative),
      pH: z.nullable(pH),
      /** What the panel made of the reading, as shown; "" for nothing. */
      verdict: text,
    }),
    "log meter": z.object({ ask: z.literal("log meter"), who: text, entry: entries.meterEntry }),
    "log water": z.object({ ask: z.literal("log water"), entry: entries.waterEntry }),
    "log feed": z.object({ ask: z.literal("log feed"), entry: entries.feedEntry }),
    "log purchase": z.object({ ask: z.literal("log purchase"), who: text, entry: entries.purchaseEntry }),
    "save claim": z.object({ ask: z.literal("save claim"), who: text, claim: entries.claimEntry }),
    /** A trial as it begins, and with it the claim that it tests, as a row that replaces the claim's. */
    "save trial": z.object({
      ask: z.literal("save trial"),
      who: text,
      trial: entries.trialEntry,
      claim: z.exactOptional(entries.claimEntry),
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
      from: z.int().check(z.gte(2)),
      rows: z.int().check(z.gte(1), z.lte(PAGE_ROWS)),
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
  return { ...entries, asked };
}

export type RequestSchemas = ReturnType<typeof makeSchemas>;

let made: RequestSchemas | null = null;

/** The schemas by what is asked, so that each side checks against the one that is meant. */
export function requestSchemas(): RequestSchemas["asked"] {
  made ??= makeSchemas();
  return made.asked;
}
