/** The order in which a batch is mixed, so that nothing falls out on the way: common practice, no source. */

import { ACID_CAUTION } from "./acid-dose.ts";
import type { Feed } from "./feeds.ts";
import { fillings } from "./measurable.ts";
import { sayGiven, sayNumber } from "./saying.ts";

/** What a feed must be kept apart from while it is strong. */
export type Part = "silicate" | "plain" | "sulfate or phosphate" | "calcium" | "calcium with sulfate or phosphate";

export interface OrderDose {
  readonly feed: Feed;
  /** g or mL for the batch, as the feed is measured. */
  readonly perBatch: number;
}

export interface OrderTask {
  readonly litres: number;
  readonly doses: readonly OrderDose[];
  /** Acid worked out for this batch; null for none. */
  readonly acid: { readonly name: string; readonly amount: number; readonly unit: "mL" | "g" } | null;
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

function feedText({ feed, perBatch }: OrderDose, task: OrderTask): string {
  const unit = feed.liquid ? "mL" : "g";
  const most = feed.liquid ? task.syringeMostMl : task.scaleMostG;
  const times = most === undefined ? 1 : fillings(perBatch, most);
  const goes = times > 1 ? `, in ${times} goes` : "";
  const amount = `${sayGiven(perBatch)} ${unit} of ${feed.name}${goes}`;
  switch (partOf(feed)) {
    case "silicate":
      return `Thin ${amount} with a cup of water, stir it in slowly and wait until the water is clear.`;
    case "calcium":
      return feed.liquid
        ? `Thin ${amount} with a cup of water and stir it in slowly.`
        : `Dissolve ${amount} in a cup of water apart from the rest, then stir it in slowly.`;
    default:
      return feed.liquid ? `Stir in ${amount}.` : `Add ${amount} and stir until nothing is left on the bottom.`;
  }
}

function acidStep(acid: NonNullable<OrderTask["acid"]>, early: boolean): Step {
  const amount = `${sayNumber(acid.amount)} ${acid.unit} of ${acid.name}`;
  const text = early
    ? `Stir in three quarters of ${amount}; the rest follows at the end, when the pH has been read.`
    : `Read the pH, then add ${amount} bit by bit, stirring and reading between, and stop when it is in range.`;
  return { kind: "acid", what: acid.name, amount: acid.amount, unit: acid.unit, text, caution: ACID_CAUTION };
}

/**
 * Steps from the empty can to the reading: most of the water, silicate, the acid first where the water is alkaline,
 * sulfates and phosphates, what is plain, calcium last and apart, fill up, read. Feeds of the same kind keep the order
 * in which they are given; doses of 0 are left out.
 */
export function mixingSteps(task: OrderTask): Step[] {
  const { litres, doses, acid, alkalinityMgCaCO3L } = task;
  const early = acid !== null && (alkalinityMgCaCO3L === null || alkalinityMgCaCO3L > ALKALINE);
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
    ? "Wait a few minutes and read EC and pH. Add the rest of the acid bit by bit until the pH is in range, and write both readings down."
    : "Wait a few minutes, read EC and pH, and write them down.";
  steps.push({ kind: "measure", what: "", amount: 0, unit: "", text: read, caution: early ? ACID_CAUTION : "" });
  return steps;
}
