/** What one record of each log and list is, as the panel sends it: amounts carry their unit in their name. */

import * as z from "zod/mini";
import { LABEL_TERMS } from "../core/analysis.ts";
import { SYMBOLS } from "../core/elements.ts";
import { SUPPLY_UNITS } from "../core/supply.ts";
import { MEASURES } from "../core/trial-measure.ts";
import { onlyThese, type RequestKinds } from "./request-kinds.ts";

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

/** How far a claim has come in this household. */
export const CLAIM_STATES = ["heard", "trying", "kept", "dropped"] as const;

/** Made from the kinds, when the first request comes. */
export function requestEntries({ text, name, sentence, id, isoDay, notNegative, positive, pH }: RequestKinds) {
  /** mg/L by element symbol; an element that is not known is not there. */
  const amounts = onlyThese(SYMBOLS, notNegative);

  const careEntry = z.object({
    id,
    day: isoDay,
    plant: name,
    event: name,
    amountMl: z.nullable(notNegative),
    solution: text,
    ecMsCm: z.nullable(notNegative),
    pH: z.nullable(pH),
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
    measured: z.exactOptional(z.object({ ecMsCm: z.nullable(notNegative), pH: z.nullable(pH) })),
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
  };
}

export type RequestEntries = ReturnType<typeof requestEntries>;
