/**
 * What the sidebar may ask and what it gets back, as schemas that both sides check. Everything travels
 * as one JSON text; days are ISO texts ("2026-03-01"); amounts carry their unit in their name.
 */

import * as z from "zod/mini";

const text = z.string().check(z.maxLength(2000));
const name = z.string().check(z.minLength(1), z.maxLength(200));
/** Made by the panel once per record, kept through retries, so that a record is written once. */
const id = z.string().check(z.regex(/^[a-z0-9-]{8,64}$/));
const isoDay = z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/));
const finite = z.number();
const notNegative = z.number().check(z.nonnegative());
const positive = z.number().check(z.positive());
const orNull = <T extends z.core.$ZodType>(schema: T) => z.nullable(schema);

/** mg/L by element symbol; an element that is not known is not there. */
const amounts = z.record(z.string(), notNegative);

export const careEntry = z.object({
  id,
  day: isoDay,
  plant: name,
  event: name,
  amountMl: orNull(notNegative),
  solution: text,
  ecMsCm: orNull(notNegative),
  pH: orNull(z.number().check(z.gte(0), z.lte(14))),
  reason: text,
  note: text,
});

export const batchDose = z.object({
  feed: name,
  perLitre: notNegative,
  unit: z.enum(["g", "mL"]),
  perBatch: notNegative,
});

export const batchEntry = z.object({
  id,
  day: isoDay,
  litres: positive,
  water: text,
  target: text,
  doses: z.array(batchDose).check(z.minLength(1)),
  /** mg/L after mixing, as shown when the button was pressed. */
  reached: amounts,
  note: text,
});

export const request = z.discriminatedUnion("ask", [
  /** Everything the panel needs, in one call. */
  z.object({ ask: z.literal("load") }),
  z.object({
    ask: z.literal("log care"),
    who: text,
    entries: z.array(careEntry).check(z.minLength(1), z.maxLength(500)),
  }),
  z.object({ ask: z.literal("log batch"), who: text, batch: batchEntry }),
  /** Readings belong to a batch that is already in the log. */
  z.object({
    ask: z.literal("log readings"),
    batchId: id,
    ecMsCm: orNull(notNegative),
    pH: orNull(z.number().check(z.gte(0), z.lte(14))),
  }),
  /** The name shown in "Who"; kept for this person only. */
  z.object({ ask: z.literal("set name"), who: text }),
  /** Tabs of the workbook with their headings, to choose one's own plant list. */
  z.object({ ask: z.literal("look at tabs") }),
  z.object({
    ask: z.literal("use plant list"),
    tab: name,
    /** Column heading on that tab for each of ours; "" where there is none. */
    columns: z.record(z.string(), text),
  }),
]);

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
  potMl: orNull(finite),
  /** Whole days since the roots were last disturbed; null where none is on record. */
  restDays: orNull(finite),
  lastEvent: z.string(),
});

export const batchRow = z.object({
  id: z.string(),
  day: orNull(isoDay),
  who: z.string(),
  litres: orNull(finite),
  water: z.string(),
  target: z.string(),
  doses: z.string(),
  measuredEcMsCm: orNull(finite),
  measuredPH: orNull(finite),
});

export const loaded = z.object({
  today: isoDay,
  who: z.string(),
  people: z.array(z.string()),
  meterScale: orNull(z.number()),
  plantTab: z.string(),
  plants: z.array(plantRow),
  events: z.array(z.object({ event: z.string(), disturbsRoots: z.boolean() })),
  feeds: z.array(fieldRow),
  waters: z.array(fieldRow),
  targets: z.array(fieldRow),
  /** Newest first, at most 20. */
  batches: z.array(batchRow),
  /** Sentences on tabs not found, columns not found, rows that cannot be used. Shown, never hidden. */
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
  "log care": logged,
  "log batch": logged,
  "log readings": logged,
  "set name": z.object({ who: z.string() }),
  "look at tabs": z.object({
    tabs: z.array(z.object({ tab: z.string(), headings: z.array(z.string()), rows: z.number() })),
  }),
  "use plant list": z.object({ plantTab: z.string(), plants: z.number() }),
} as const;

/** A failure is an answer, not a throw: what happened, and what to do, as one or two sentences. */
export const failure = z.object({
  ok: z.literal(false),
  code: z.string(),
  sentence: z.string(),
});

export type Request = z.infer<typeof request>;
export type Ask = Request["ask"];
export type RequestFor<A extends Ask> = Extract<Request, { ask: A }>;
export type ReplyFor<A extends Ask> = z.infer<(typeof replies)[A]>;
export type Answered<A extends Ask> = { ok: true; reply: ReplyFor<A> } | z.infer<typeof failure>;
export type Loaded = z.infer<typeof loaded>;
export type CareEntry = z.infer<typeof careEntry>;
export type BatchEntry = z.infer<typeof batchEntry>;
export type BatchDose = z.infer<typeof batchDose>;
export type FieldRow = z.infer<typeof fieldRow>;
export type PlantRow = z.infer<typeof plantRow>;
export type BatchRow = z.infer<typeof batchRow>;
