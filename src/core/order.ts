/** The order in which a batch is mixed, so that nothing falls out on the way: common practice, no source. */

import { ACID_CAUTION, BASE_CAUTION } from "./acid-dose.ts";
import type { Feed } from "./feeds.ts";
import { fillings } from "./measurable.ts";
import { sayGiven, sayList, sayNumber } from "./saying.ts";

/** What a feed must be kept apart from while it is strong. */
export type Part = "silicate" | "plain" | "sulfate or phosphate" | "calcium" | "calcium with sulfate or phosphate";

export interface OrderDose {
  readonly feed: Feed;
  /** g or mL for the batch, as the feed is measured. */
  readonly perBatch: number;
  /** mL of a stock solution that hold this much; absent where the feed goes in as it is. */
  readonly stockMl?: number | undefined;
  /** How to measure it, where g or mL do not say it: "2 level spoons of 4.8 g". */
  readonly how?: string | undefined;
}

export interface OrderAcid {
  readonly name: string;
  readonly kind: "acid" | "base";
  /** Of the whole dose, as it is measured. */
  readonly amount: number;
  readonly unit: "mL" | "g";
  /** The first four fifths and the rest in words: "1.2 mL of phosphoric acid 85 %". */
  readonly first: string;
  readonly rest: string;
}

export interface OrderTask {
  readonly litres: number;
  readonly doses: readonly OrderDose[];
  /** Acid or base worked out for this batch; null for none. */
  readonly acid: OrderAcid | null;
  /** mg/L as CaCO3; null where not known, and then it counts as high. */
  readonly alkalinityMgCaCO3L: number | null;
  /** What the scale and the syringe take at once, where known. */
  readonly scaleMostG?: number | undefined;
  readonly syringeMostMl?: number | undefined;
}

export interface Step {
  readonly kind: "water" | "acid" | "feed" | "fill" | "measure";
  /** Name of the feed or acid, else "". */
  readonly what: string;
  /** 0 where there is nothing to measure out. */
  readonly amount: number;
  readonly unit: "g" | "mL" | "L" | "";
  readonly text: string;
  /** The caution that goes with it, else "". */
  readonly caution: string;
}

/** Less than this on a label, percent, does not matter for what may fall out. */
const TRACE_PERCENT = 0.5;
/** Above this much alkalinity, mg/L as CaCO3, water is well above pH 7 and calcium phosphate falls out before the acid is in. */
const ALKALINE = 40;

const SILICATE_CAUTION = "Silicate is strongly alkaline and burns skin and eyes: gloves and goggles on.";

/** By the label: calcium above 0.5 %, sulfur or phosphorus above 0.5 %, silicon above 0.5 %. */
export function partOf({ label: { percent } }: Feed): Part {
  const has = (symbol: "Ca" | "S" | "P" | "Si") => (percent[symbol] ?? 0) > TRACE_PERCENT;
  if (has("Si")) return "silicate";
  const falls = has("S") || has("P");
  if (has("Ca")) return falls ? "calcium with sulfate or phosphate" : "calcium";
  return falls ? "sulfate or phosphate" : "plain";
}

/** Silicate before anything makes it gel, calcium last and into the full volume, where it meets the others thinned. */
const ORDER: readonly Part[] = [
  "silicate",
  "sulfate or phosphate",
  "plain",
  "calcium with sulfate or phosphate",
  "calcium",
];

/** "1.4 g of Potassium nitrate, in 2 goes". */
function amountText({ feed, perBatch, stockMl, how = "" }: OrderDose, task: OrderTask): string {
  const liquid = stockMl !== undefined || feed.liquid;
  const amount = stockMl ?? perBatch;
  const most = liquid ? task.syringeMostMl : task.scaleMostG;
  const times = most === undefined ? 1 : fillings(amount, most);
  const goes = times > 1 ? `, in ${times} goes` : "";
  const of = stockMl === undefined ? "of" : "of the stock of";
  return how === ""
    ? `${sayGiven(amount)} ${liquid ? "mL" : "g"} ${of} ${feed.name}${goes}`
    : `${how} of ${feed.name} (${sayGiven(perBatch)} g)`;
}

function feedText(dose: OrderDose, task: OrderTask): string {
  const amount = amountText(dose, task);
  const liquid = dose.stockMl !== undefined || dose.feed.liquid;
  switch (partOf(dose.feed)) {
    case "silicate":
      return `Thin ${amount} with a cup of water, stir it in slowly and wait until the water is clear.`;
    case "calcium":
      return liquid
        ? `Thin ${amount} with a cup of water and stir it in slowly.`
        : `Dissolve ${amount} in a cup of water apart from the rest, then stir it in slowly.`;
    default:
      return liquid ? `Stir in ${amount}.` : `Add ${amount} and stir until nothing is left on the bottom.`;
  }
}

function acidStep({ name, kind, amount, unit, first, rest }: OrderAcid, early: boolean): Step {
  const text = early
    ? `Stir in ${first}, four fifths of the dose; the rest follows at the end, when the pH has been read.`
    : `Stir in ${first}, wait a minute and read the pH. Then add the rest, about ${rest}, bit by bit, reading between, and stop when the pH is in range.`;
  return { kind: "acid", what: name, amount, unit, text, caution: kind === "acid" ? ACID_CAUTION : BASE_CAUTION };
}

/**
 * Steps from the empty can to the reading: most of the water, silicate, the acid first where the water is alkaline,
 * sulfates and phosphates, what is plain, calcium last and apart, fill up, a base or the acid of a soft water, read.
 * Feeds of the same kind keep the order in which they are given; doses of 0 are left out.
 */
export function mixingSteps(task: OrderTask): Step[] {
  const { litres, doses, acid, alkalinityMgCaCO3L } = task;
  const alkaline = alkalinityMgCaCO3L === null || alkalinityMgCaCO3L > ALKALINE;
  const early = acid !== null && acid.kind === "acid" && alkaline;
  const most = litres * 0.8;
  const steps: Step[] = [
    {
      kind: "water",
      what: "",
      amount: most,
      unit: "L",
      text: `Pour ${sayNumber(most)} L of the water into a clean can, at room temperature.`,
      caution: "",
    },
  ];
  for (const part of ORDER) {
    for (const dose of doses) {
      if (!(dose.perBatch > 0) || partOf(dose.feed) !== part) continue;
      const unit = dose.feed.liquid ? "mL" : "g";
      const caution = part === "silicate" ? SILICATE_CAUTION : "";
      const text = feedText(dose, task);
      steps.push({ kind: "feed", what: dose.feed.name, amount: dose.perBatch, unit, text, caution });
    }
    // After silicate, which acid would turn to gel while it is strong, and before what falls out at a high pH.
    if (part === "silicate" && acid !== null && early) steps.push(acidStep(acid, true));
  }
  const full = `Fill up to ${sayNumber(litres)} L and stir.`;
  steps.push({ kind: "fill", what: "", amount: litres, unit: "L", text: full, caution: "" });
  if (acid !== null && !early) steps.push(acidStep(acid, false));
  const read = early
    ? `Wait a few minutes and read EC and pH. Add the rest of the acid, about ${acid.rest}, bit by bit until the pH is in range, and write both readings down.`
    : "Wait a few minutes, read EC and pH, and write them down.";
  steps.push({ kind: "measure", what: "", amount: 0, unit: "", text: read, caution: early ? ACID_CAUTION : "" });
  return steps;
}

/**
 * What must not meet while it is strong: calcium falls out with sulfate and phosphate (DPIRD Western Australia, for
 * concentrates). Null where nothing clashes.
 */
export function keepApart(feeds: readonly Feed[]): string | null {
  const named = (...parts: readonly Part[]) =>
    feeds.filter((feed) => parts.includes(partOf(feed))).map(({ name }) => name);
  const calcium = named("calcium", "calcium with sulfate or phosphate");
  const others = named("sulfate or phosphate");
  if (calcium.length === 0 || others.length === 0) return null;
  return `Never mix ${sayList(calcium, "or")} with ${sayList(others, "or")} undiluted, and keep them in separate bottles as concentrates: calcium falls out with sulfate and phosphate.`;
}
