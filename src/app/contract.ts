/**
 * What the sidebar gets back, as schemas that it checks, and the types of all that is asked and answered.
 * The sheet imports types from here and nothing else.
 */

import * as z from "zod/mini";
import type { RequestSchemas } from "./requests.ts";

const isoDay = z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/));
const finite = z.number();

/** A row of a tab by our own headings; blank cells are not there. Days are ISO texts. */
export const fieldRow = z.object({
  /** Row on the tab, for sentences: "row 7 of Feeds". */
  row: z.number(),
  fields: z.record(z.string(), z.union([z.string(), z.number(), z.boolean()])),
});

export const plantRow = z.object({
  plant: z.string(),
  kind: z.string(),
  place: z.string(),
  potMl: z.nullable(finite),
  medium: z.string(),
  /** Whole days since the roots were last disturbed; null where none is on record. */
  restDays: z.nullable(finite),
  lastEvent: z.string(),
});

export const careRow = z.object({
  id: z.string(),
  day: z.string(),
  plant: z.string(),
  event: z.string(),
  amountMl: z.nullable(finite),
  solution: z.string(),
  ecMsCm: z.nullable(finite),
  pH: z.nullable(finite),
  who: z.string(),
  reason: z.string(),
  note: z.string(),
});

export const batchRow = z.object({
  id: z.string(),
  day: z.nullable(isoDay),
  who: z.string(),
  litres: z.nullable(finite),
  water: z.string(),
  target: z.string(),
  doses: z.string(),
  /** mg/L by element symbol, as it was when the batch was logged. */
  reached: z.record(z.string(), finite),
  predictedEcMsCm: z.nullable(finite),
  acid: z.string(),
  measuredEcMsCm: z.nullable(finite),
  measuredPH: z.nullable(finite),
  verdict: z.string(),
  note: z.string(),
  state: z.enum(["planned", "mixed"]),
  /** Id of the row that this one replaces; "" for none. */
  corrects: z.string(),
});

export const loaded = z.object({
  today: isoDay,
  who: z.string(),
  people: z.array(z.string()),
  meterScale: z.nullable(z.number()),
  /** Every row of Settings as text. */
  settings: z.record(z.string(), z.string()),
  plantTab: z.string(),
  plants: z.array(plantRow),
  care: z.object({
    /** Standing rows, newest first, a bounded number of them. */
    rows: z.array(careRow),
    /** Day of the oldest row sent; null when there is none. */
    from: z.nullable(isoDay),
    /** False when older rows were left out. */
    all: z.boolean(),
  }),
  events: z.array(z.object({ event: z.string(), disturbsRoots: z.boolean() })),
  feeds: z.array(fieldRow),
  waters: z.array(fieldRow),
  targets: z.array(fieldRow),
  /** Standing ones, newest first, at most 200. */
  batches: z.array(batchRow),
  /** What standing, mixed batches older than those used in all, g or mL, and doses of theirs that cannot be read. */
  usedBefore: z.object({
    used: z.array(z.object({ feed: z.string(), amount: finite, unit: z.enum(["g", "mL"]) })),
    unread: z.array(z.object({ text: z.string(), sentence: z.string() })),
  }),
  /** Sentences on tabs not found, columns not found, rows that cannot be used. Shown, never hidden. */
  problems: z.array(z.string()),
});

/** Rows that only some sections need; those that a later row corrects or takes back are left out. */
export const records = z.object({
  purchases: z.array(fieldRow),
  meterLog: z.array(fieldRow),
  claims: z.array(fieldRow),
  trials: z.array(fieldRow),
  problems: z.array(z.string()),
});

export const logged = z.object({
  /** Written by this call. */
  written: z.number(),
  /** Found already there, from an earlier try of the same press. */
  already: z.number(),
  /** A sentence on each of those whose row holds other values than were sent now; the row was left as it is. */
  differing: z.array(z.string()),
});

export const replies = {
  load: loaded,
  records,
  "log care": z.extend(logged, {
    /** Not empty: somebody else logged the same that day, and nothing was written. */
    doubles: z.exactOptional(
      z.array(z.object({ plant: z.string(), event: z.string(), day: z.string(), who: z.string(), id: z.string() })),
    ),
  }),
  /** `already`: rows that were taken back, or corrected, before. */
  "take back": z.object({ written: z.number(), already: z.number() }),
  "log batch": logged,
  "log readings": logged,
  "log meter": logged,
  "log water": logged,
  "log feed": logged,
  "log purchase": logged,
  "save claim": logged,
  "save trial": logged,
  "save result": logged,
  "save settings": z.object({ settings: z.record(z.string(), z.string()) }),
  "set name": z.object({ who: z.string() }),
  "look at tabs": z.object({
    tabs: z.array(z.object({ tab: z.string(), headings: z.array(z.string()), rows: z.number() })),
  }),
  "read list": z.object({
    tab: z.string(),
    /** "" over a column without a heading. */
    headings: z.array(z.string()),
    /** Below the headings; date cells as their day. */
    rows: z.array(z.array(z.union([z.string(), z.number(), z.boolean(), z.object({ day: isoDay })]))),
    /** Rows that were too many to send. */
    left: z.number(),
  }),
  "log past": z.object({ written: z.number(), already: z.number() }),
  "use plant list": z.object({ plantTab: z.string(), plants: z.number() }),
  "read page": z.object({
    /** The name the tab has now; null when there is none. */
    tab: z.nullable(z.string()),
    /** `ours`: the heading is the add-on's own name for it. `computed`: formulas fill it. */
    columns: z.array(z.object({ heading: z.string(), ours: z.boolean(), computed: z.boolean() })),
    rows: z.array(z.array(z.union([z.string(), finite, z.boolean(), z.null(), z.object({ day: isoDay })]))),
    /** Row to go on with; null at the end. */
    next: z.nullable(finite),
  }),
  "import rows": logged,
  "draw chart": z.object({ sentence: z.string() }),
  /** `kept`: an earlier page that somebody had typed on, and that was left as it was. */
  "write sitter page": z.object({ tab: z.string(), kept: z.nullable(z.string()) }),
  "read sitter page": z.object({
    tab: z.nullable(z.string()),
    rows: z.array(z.array(z.union([z.string(), finite]))),
  }),
  "make boards": z.object({ sentence: z.string() }),
  "show on hand": z.object({ sentence: z.string() }),
} as const;

/** A failure is an answer, not a throw: what happened, and what to do, as one or two sentences. */
export const failure = z.object({
  ok: z.literal(false),
  code: z.string(),
  sentence: z.string(),
});

export type Ask = keyof RequestSchemas["asked"];
export type Request = z.infer<RequestSchemas["asked"][Ask]>;
export type RequestFor<A extends Ask> = Extract<Request, { ask: A }>;
export type ReplyFor<A extends Ask> = z.infer<(typeof replies)[A]>;
export type Answered<A extends Ask> = { ok: true; reply: ReplyFor<A> } | z.infer<typeof failure>;
export type Loaded = z.infer<typeof loaded>;
export type Records = z.infer<typeof records>;
export type CareEntry = z.infer<RequestSchemas["careEntry"]>;
export type BatchEntry = z.infer<RequestSchemas["batchEntry"]>;
export type MeterEntry = z.infer<RequestSchemas["meterEntry"]>;
export type WaterEntry = z.infer<RequestSchemas["waterEntry"]>;
export type FeedEntry = z.infer<RequestSchemas["feedEntry"]>;
export type PurchaseEntry = z.infer<RequestSchemas["purchaseEntry"]>;
export type ClaimEntry = z.infer<RequestSchemas["claimEntry"]>;
export type TrialEntry = z.infer<RequestSchemas["trialEntry"]>;
export type BatchDose = z.infer<RequestSchemas["batchDose"]>;
export type FieldRow = z.infer<typeof fieldRow>;
export type CareRow = z.infer<typeof careRow>;
export type PlantRow = z.infer<typeof plantRow>;
export type BatchRow = z.infer<typeof batchRow>;
