/** What is being typed about a trial before it begins, and the rows it makes. */

import type { ClaimEntry, Loaded, PlantRow, RequestFor } from "../src/app/contract.ts";
import { drawPairs, drawTogether, type Pairing, proposePairs } from "../src/core/assignment.ts";
import { dayFromIso, isoFromDay } from "../src/core/calendar.ts";
import { fnv1a64 } from "../src/core/fnv.ts";
import { LAST_DRAW } from "../src/core/random.ts";
import { standardDeviation } from "../src/core/tolerance.ts";
import { MEASURES, type Measure, measurePlants } from "../src/core/trial-measure.ts";
import type { Design } from "../src/core/trial-power.ts";
import { plantsOnce } from "./care.ts";
import { type ClaimDraft, claimEntry, readClaim } from "./claim-draft.ts";
import { isRecord, textOf } from "./drafts.ts";
import type { NewId } from "./ids.ts";
import { measuredRows } from "./trial-rows.ts";
import { type Typed, typedNumber } from "./typed.ts";

export interface TrialDraft {
  /** Of the row, made once and kept until it is in the sheet; the draw follows from it, so nobody draws twice. */
  readonly id: string;
  /** The claim that it tests, as its row will then be; null for none. */
  readonly claim: ClaimDraft | null;
  readonly question: string;
  readonly measure: Measure;
  /** ISO day, "" for today. */
  readonly started: string;
  readonly ends: string;
  readonly groupA: string;
  readonly groupB: string;
  readonly design: Design;
  readonly place: string;
  readonly plants: readonly string[];
  readonly worth: string;
  readonly spread: string;
}

/** Three months show a difference in leaves, if there is one. Common practice, no source. */
const USUAL_DAYS = 90;

export function freshTrial(newId: NewId): TrialDraft {
  return {
    id: newId(),
    claim: null,
    question: "",
    measure: MEASURES[0],
    started: "",
    ends: "",
    groupA: "",
    groupB: "",
    design: "Pairs",
    place: "",
    plants: [],
    worth: "",
    spread: "",
  };
}

export function readTrialDraft(kept: unknown): TrialDraft | null {
  if (!isRecord(kept) || !/^[a-z0-9-]{8,64}$/.test(textOf(kept, "id"))) return null;
  const text = (key: keyof TrialDraft) => textOf(kept, key);
  const plants = Array.isArray(kept.plants) ? kept.plants.filter((one): one is string => typeof one === "string") : [];
  return {
    id: text("id"),
    claim: readClaim(kept.claim),
    question: text("question"),
    measure: MEASURES.find((one) => one === text("measure")) ?? MEASURES[0],
    started: text("started"),
    ends: text("ends"),
    groupA: text("groupA"),
    groupB: text("groupB"),
    design: text("design") === "Together" ? "Together" : "Pairs",
    place: text("place"),
    plants,
    worth: text("worth"),
    spread: text("spread"),
  };
}

/** A whole number from 0 to 99,999,999 that follows from the row's id. */
export function drawOf(id: string): number {
  return Number.parseInt(fnv1a64(new TextEncoder().encode(id)).slice(4), 16) % (LAST_DRAW + 1);
}

export interface Days {
  readonly started: string;
  readonly ends: string;
}

export function daysOf(draft: Pick<TrialDraft, "started" | "ends">, today: string): Days {
  const started = draft.started === "" ? today : draft.started;
  const from = dayFromIso(started);
  const usual = from === null ? "" : isoFromDay(from + USUAL_DAYS);
  return { started, ends: draft.ends === "" ? usual : draft.ends };
}

/** Plants of the draft that the sheet still has. */
export function trialPlants(draft: Pick<TrialDraft, "plants">, plants: readonly PlantRow[]): readonly PlantRow[] {
  return plantsOnce(plants).filter(({ plant }) => draft.plants.includes(plant));
}

export function pairingOf(draft: Pick<TrialDraft, "plants">, plants: readonly PlantRow[]): Pairing {
  return proposePairs(trialPlants(draft, plants));
}

export interface TrialNumbers {
  readonly worth: Typed;
  readonly spread: Typed;
}

export function trialNumbers(draft: Pick<TrialDraft, "worth" | "spread">): TrialNumbers {
  const rule = { min: 0.01, max: 10_000 };
  return {
    worth: typedNumber(draft.worth, { what: "The difference", ...rule }),
    spread: typedNumber(draft.spread, { what: "The spread", ...rule }),
  };
}

/** Fewer known differences than this say nothing about their spread. */
const ENOUGH = 3;

/**
 * How far these plants differed before, in a time as long as the trial: the standard deviation within the pairs, or
 * between plants. Null when the log does not reach back, or says too little.
 */
export function spreadBefore(draft: TrialDraft, loaded: Loaded): number | null {
  const { started, ends } = daysOf(draft, loaded.today);
  const [from, to, today] = [started, ends, loaded.today].map(dayFromIso);
  if (from == null || to == null || today == null || to <= from) return null;
  const until = Math.min(from, today);
  const span = { started: until - (to - from), until };
  const first = loaded.care.from === null ? null : dayFromIso(loaded.care.from);
  if (first === null || (!loaded.care.all && first > span.started)) return null;
  const rows = measuredRows(loaded.care.rows);
  const valuesOf = (names: readonly string[]) =>
    measurePlants(draft.measure, names, { rows, span }).map(({ value }) => value);
  const pairs = pairingOf(draft, loaded.plants).pairs;
  const values =
    draft.design === "Pairs"
      ? pairs.flatMap(({ first: a, second: b }) => {
          const [one, other] = valuesOf([a, b]);
          return one == null || other == null ? [] : [one - other];
        })
      : valuesOf(trialPlants(draft, loaded.plants).map(({ plant }) => plant)).flatMap((value) =>
          value === null ? [] : [value],
        );
  if (values.length < ENOUGH) return null;
  // Which of two plants is named first is of no consequence: a difference between them counts either way.
  const spread =
    draft.design === "Pairs"
      ? Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length)
      : standardDeviation(values);
  return spread > 0 ? spread : null;
}

/** What keeps the trial from beginning, or null. */
function missing(draft: TrialDraft, loaded: Loaded, { started, ends }: Days): string | null {
  if (draft.question.trim() === "") return "Write down the question that the trial should answer.";
  if (draft.groupA.trim() === "" || draft.groupB.trim() === "") return "Say what group A gets and what group B gets.";
  if (dayFromIso(started) === null || dayFromIso(ends) === null) return "Choose the first and the last day.";
  if (started < loaded.today) return "A trial begins today or later: the groups are drawn before anything is counted.";
  if (ends <= started) return "Choose a last day that is later than the first.";
  const count = trialPlants(draft, loaded.plants).length;
  const most = draft.design === "Pairs" ? 84 : 42;
  if (count < 2) return "Choose at least two plants.";
  if (count > most) return `Choose at most ${most} plants; ${count} are chosen.`;
  return null;
}

/** The request for what is typed now, or the sentence that says what is missing. The groups are drawn here. */
export function makeTrial(draft: TrialDraft, who: string, loaded: Loaded): RequestFor<"save trial"> | string {
  if (who === "") return "Type your name first, so that the sheet can say who began this.";
  const days = daysOf(draft, loaded.today);
  const lacks = missing(draft, loaded, days);
  if (lacks !== null) return lacks;
  const { worth } = trialNumbers(draft);
  if (worth.problem !== null) return worth.problem;
  const draw = drawOf(draft.id);
  const groups =
    draft.design === "Pairs"
      ? drawPairs(
          pairingOf(draft, loaded.plants).pairs.map(({ first, second }) => [first, second] as const),
          draw,
        )
      : drawTogether(
          trialPlants(draft, loaded.plants).map(({ plant }) => plant),
          draw,
        );
  const claim: ClaimEntry | string | null = draft.claim === null ? null : claimEntry(draft.claim, loaded);
  if (typeof claim === "string") return claim;
  return {
    ask: "save trial",
    who,
    trial: {
      id: draft.id,
      question: draft.question.trim(),
      measure: draft.measure,
      ...days,
      groupA: draft.groupA.trim(),
      groupB: draft.groupB.trim(),
      plantsA: [...groups.a],
      plantsB: [...groups.b],
      design: draft.design,
      draw,
      worthSeeing: worth.value,
      note: "",
    },
    ...(claim === null ? {} : { claim: { ...claim, trial: draft.id } }),
  };
}
