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
  /** Whole days since the roots were last disturbed; null where none is on record. */
  restDays: z.nullable(finite),
  lastEvent: z.string(),
});

export const batchRow = z.object({
  id: z.string(),
  day: z.nullable(isoDay),
  who: z.string(),
  litres: z.nullable(finite),
  water: z.string(),
  target: z.string(),
  doses: z.string(),
  measuredEcMsCm: z.nullable(finite),
  measuredPH: z.nullable(finite),
});

export const loaded = z.object({
  today: isoDay,
  who: z.string(),
  people: z.array(z.string()),
  meterScale: z.nullable(z.number()),
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
  "log water": logged,
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

export type Ask = keyof RequestSchemas["asked"];
export type Request = z.infer<RequestSchemas["asked"][Ask]>;
export type RequestFor<A extends Ask> = Extract<Request, { ask: A }>;
export type ReplyFor<A extends Ask> = z.infer<(typeof replies)[A]>;
export type Answered<A extends Ask> = { ok: true; reply: ReplyFor<A> } | z.infer<typeof failure>;
export type Loaded = z.infer<typeof loaded>;
export type CareEntry = z.infer<RequestSchemas["careEntry"]>;
export type BatchEntry = z.infer<RequestSchemas["batchEntry"]>;
export type WaterEntry = z.infer<RequestSchemas["waterEntry"]>;
export type BatchDose = z.infer<RequestSchemas["batchDose"]>;
export type FieldRow = z.infer<typeof fieldRow>;
export type PlantRow = z.infer<typeof plantRow>;
export type BatchRow = z.infer<typeof batchRow>;
