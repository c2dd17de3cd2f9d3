/** Goals beyond a row of amounts: strength by EC or by N, ratios held, limits, weights, cost, feeds to be used up. */

import { batchCost, type Cost } from "./cost.ts";
import { amountsPerUnit, measureUnit } from "./dose.ts";
import type { Amounts, ElementSymbol } from "./elements.ts";
import { BadInput } from "./errors.ts";
import { type GoalDoses, type GoalFeed, goalDoses, type Prefer, withLowerLimits } from "./goal-doses.ts";
import { type LimitWishes, namedLimits } from "./goal-limits.ts";
import type { Measure } from "./grid.ts";
import { type EcOf, type Mixture, mixtureOf } from "./mixture.ts";
import { followRatios, type Ratio, ratioEqualities, ratioOff, ratioSymbols, sayRatio } from "./ratios.ts";
import { sayGiven, sayNumber } from "./saying.ts";
import type { Dose } from "./solve.ts";

export type Strength =
  /** mg/L of nitrogen, water included. */
  | { readonly kind: "N"; readonly nitrogenMgL: number }
  /** mS/cm at 25 °C; all wanted amounts are scaled together until `ecOf` says so. It must rise with strength. */
  | { readonly kind: "EC"; readonly ecMsCm: number; readonly ecOf: EcOf };

export interface GoalTask {
  readonly feeds: readonly GoalFeed[];
  /** mg/L already in the water. */
  readonly water: Amounts;
  readonly litres: number;
  /** mg/L. With a strength by EC only their proportions count. */
  readonly wanted?: Amounts | undefined;
  /** How much an element's misfit counts; 1 where absent. */
  readonly weights?: Amounts | undefined;
  readonly ratios?: readonly Ratio[] | undefined;
  readonly strength?: Strength | undefined;
  readonly limits?: LimitWishes | undefined;
  readonly prefer?: Prefer | undefined;
  /** How each feed is measured, in the order of the feeds; absent: to any amount. */
  readonly measures?: readonly Measure[] | undefined;
}

export interface GoalMix {
  /** One for each feed, in the order given, also those of 0. */
  readonly doses: readonly (Dose & { readonly perBatch: number })[];
  readonly mixture: Mixture;
  /** mg/L that were aimed at, after ratios and strength. */
  readonly aimed: Amounts;
  readonly misfit: number;
  /** For each ratio: how far its parts are from it at most, as a share; null where none of it is there. */
  readonly ratios: readonly { readonly ratio: Ratio; readonly off: number | null }[];
  /** mS/cm as `ecOf` says; null without it. */
  readonly ecMsCm: number | null;
  /** Ammonium, with nitrogen of unstated form, as a share of all nitrogen; null without nitrogen. */
  readonly ammoniumShare: number | null;
  readonly cost: Cost;
  /** Sentences on what holds the mix back. */
  readonly notices: readonly string[];
}

/** A ratio off by more is said to be not held. */
const HELD_WITHIN = 0.01;
/** EC is met to this share: meters show no more. */
const EC_WITHIN = 1e-4;

function aimOf({ wanted = {}, ratios = [], strength }: GoalTask): Amounts {
  const fixed: Partial<Record<ElementSymbol, number>> = {};
  if (strength?.kind === "N") {
    if (!(strength.nitrogenMgL > 0 && Number.isFinite(strength.nitrogenMgL))) {
      throw new BadInput(
        "out-of-bounds",
        `The strength is ${sayGiven(strength.nitrogenMgL)} mg/L N. Give a number above 0.`,
      );
    }
    fixed.N = strength.nitrogenMgL;
  } else if (strength?.kind === "EC" && Object.keys(wanted).length === 0) {
    // Only proportions count; the first element of the first ratio stands for all.
    const first = ratios[0] === undefined ? undefined : ratioSymbols(ratios[0])[0];
    if (first !== undefined) fixed[first] = 100;
  }
  return followRatios(wanted, fixed, ratios);
}

const times = (amounts: Amounts, factor: number): Amounts => {
  const scaled: Partial<Record<ElementSymbol, number>> = {};
  for (const symbol of Object.keys(amounts) as ElementSymbol[]) scaled[symbol] = (amounts[symbol] as number) * factor;
  return scaled;
};

interface Tried {
  readonly aimed: Amounts;
  readonly found: GoalDoses;
  readonly mixture: Mixture;
}

/** The strength at which `ecOf` gives what is asked, by doubling and then by false position with halving. */
function atEc(
  trial: (factor: number) => Tried,
  { ecMsCm, ecOf }: Extract<Strength, { kind: "EC" }>,
  water: Amounts,
): Tried {
  if (!(ecMsCm > 0 && ecMsCm <= 20)) {
    throw new BadInput("out-of-bounds", `The strength is ${sayGiven(ecMsCm)} mS/cm. Give a number above 0, up to 20.`);
  }
  const plain = ecOf(mixtureOf([], water));
  if (plain >= ecMsCm) {
    throw new BadInput(
      "water-too-strong",
      `The water alone reads ${sayNumber(plain)} mS/cm, and ${sayGiven(ecMsCm)} is asked for. Blend it with low-mineral water or ask for more.`,
    );
  }
  let low = 0;
  let lowOff = plain - ecMsCm;
  let high = 1;
  let tried = trial(high);
  let highOff = ecOf(tried.mixture) - ecMsCm;
  for (let round = 0; highOff < 0; round++) {
    if (round === 8) {
      throw new BadInput(
        "ec-out-of-reach",
        `With these feeds and limits the EC stays at ${sayNumber(highOff + ecMsCm)} mS/cm, and ${sayGiven(ecMsCm)} is asked for. Loosen a limit or ask for less.`,
      );
    }
    low = high;
    lowOff = highOff;
    high *= 2;
    tried = trial(high);
    highOff = ecOf(tried.mixture) - ecMsCm;
  }
  for (let round = 0; round < 60; round++) {
    const straight = low + (high - low) * (lowOff / (lowOff - highOff));
    const at = round % 3 === 2 ? (low + high) / 2 : straight;
    tried = trial(at);
    const off = ecOf(tried.mixture) - ecMsCm;
    if (Math.abs(off) <= EC_WITHIN * ecMsCm) break;
    if (off < 0) {
      low = at;
      lowOff = off;
    } else {
      high = at;
      highOff = off;
    }
  }
  return tried;
}

/**
 * Doses for a goal. Ratios are held exactly where feeds and limits allow it, otherwise as closely as least squares
 * make them, and a notice says so. With measures the strength is found first, then the closest measurable amounts.
 * Throws BadInput for goals that contradict each other or the water, and for limits that cannot all be kept.
 */
export function solveGoals(task: GoalTask): GoalMix {
  const { feeds, water, litres, ratios = [], strength, limits: wishes = {}, prefer = { kind: "closest" } } = task;
  const plainFeeds = feeds.map(({ feed }) => feed);
  const perUnit = plainFeeds.map((feed) => amountsPerUnit(feed, measureUnit(feed) === "mL" ? "mL/L" : "g/L"));
  const limits = namedLimits(wishes, { feeds: plainFeeds, perUnit, water });
  const equalities = ratios.flatMap((ratio) => ratioEqualities(ratio, { perUnit, water }));
  const aim = aimOf(task);
  if (strength?.kind === "N") {
    const coefficients = perUnit.map((amounts) => amounts.N ?? 0);
    equalities.push({ coefficients, atLeast: strength.nitrogenMgL - (water.N ?? 0) });
  }
  const doseFor = (aimed: Amounts, measures: readonly Measure[] | undefined): Tried => {
    const light = withLowerLimits(aimed, wishes.atLeast ?? {}, task.weights ?? {});
    const { wanted, weights } = light;
    const found = goalDoses(wanted, { feeds, water, litres, weights, equalities, limits, prefer, measures });
    const parts = plainFeeds.map((feed, j) => ({ feed, perLitre: found.x[j] as number }));
    return { aimed, found, mixture: mixtureOf(parts, water) };
  };
  const trial = (factor: number) => doseFor(times(aim, factor), undefined);
  const exact = strength?.kind === "EC" ? atEc(trial, strength, water) : trial(1);
  const tried = task.measures === undefined ? exact : doseFor(exact.aimed, task.measures);
  const { mixture, found, aimed } = tried;
  const doses = plainFeeds.map((feed, j) => {
    const perLitre = found.x[j] as number;
    return { feed, perLitre, unit: measureUnit(feed), perBatch: Number((perLitre * litres).toPrecision(12)) };
  });
  const offs = ratios.map((ratio) => ({ ratio, off: ratioOff(ratio, mixture.amounts) }));
  const notices: string[] = [];
  for (const { ratio, off } of offs) {
    if (off === null || off <= HELD_WITHIN) continue;
    const why = exact.found.held
      ? "the steps of the tools are too coarse for it"
      : "these feeds and limits do not allow it";
    notices.push(`${sayRatio(ratio)} is off by up to ${sayNumber(off * 100)} %: ${why}.`);
  }
  limits.forEach(({ words }, k) => {
    if (exact.found.binding[k]) notices.push(`The mix would come closer without the limit of ${words}.`);
  });
  const { nitrate, ammonium, urea, unstated } = mixture.nitrogenMgL;
  const nitrogen = nitrate + ammonium + urea + unstated;
  if (strength?.kind === "N" && Math.abs(nitrogen - strength.nitrogenMgL) > HELD_WITHIN * strength.nitrogenMgL) {
    notices.push(`Nitrogen comes to ${sayNumber(nitrogen)} of ${sayGiven(strength.nitrogenMgL)} mg/L.`);
  }
  if (unstated > 0) {
    notices.push("Not every label says which form its nitrogen has. What is not said counts as ammonium here.");
  }
  return {
    doses,
    mixture,
    aimed,
    misfit: found.misfit,
    ratios: offs,
    ecMsCm: strength?.kind === "EC" ? strength.ecOf(mixture) : null,
    ammoniumShare: nitrogen > 0 ? (ammonium + unstated) / nitrogen : null,
    cost: batchCost(doses, litres, (feed) => feeds.find((one) => one.feed === feed)?.pack ?? null),
    notices,
  };
}
