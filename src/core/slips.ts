/** The meter as a check on a mixed batch: whether its reading is as expected, and which single slip would explain it. */

import type { Amounts } from "./elements.ts";
import { BadInput } from "./errors.ts";
import { ecAllowance } from "./label-share.ts";
import { METER_SCALES, RISE_PER_DEGREE } from "./meter.ts";
import { type EcOf, type MixtureDose, mixtureOf } from "./mixture.ts";
import { sayGiven, sayList, sayNumber } from "./saying.ts";
import { type Band, spreadBand } from "./spread.ts";

export interface MeterUse {
  /** ppm scale that the reading was turned into EC by: 500, 640 or 700; null when the meter shows EC. */
  readonly scale: number | null;
  /** Temperature of the solution; null when not known. */
  readonly tempC: number | null;
  /** The reading was corrected to 25 °C by hand; null when not known. */
  readonly corrected: boolean | null;
}

export interface CheckTask {
  /** mS/cm, taken to be at 25 °C. */
  readonly measuredMsCm: number;
  readonly doses: readonly MixtureDose[];
  /** mg/L in the water. */
  readonly water: Amounts;
  readonly litres: number;
  readonly ecOf: EcOf;
  /** Measured over predicted EC of earlier batches, oldest first. */
  readonly history: readonly number[];
  readonly meter: MeterUse;
  /** Volumes that could have been filled by mistake, L; half and double where absent. */
  readonly otherLitres?: readonly number[] | undefined;
  /** Share by which the meter may be off; 0.05 where absent. */
  readonly meterShare?: number | undefined;
}

export type SlipKind = "doubled" | "forgotten" | "volume" | "scale" | "not corrected" | "corrected twice";

export interface Slip {
  readonly kind: SlipKind;
  /** As it stands in a sentence: "Potassium nitrate went in twice". */
  readonly words: string;
  /** Feed of a doubled or forgotten one, else "". */
  readonly feed: string;
  /** What the meter would then show, mS/cm. */
  readonly readsMsCm: number;
  /** Weight of this among all single slips, adding up to 1. */
  readonly weight: number;
}

export interface Check {
  readonly verdict: "as expected" | "look again" | "not enough history";
  readonly predictedMsCm: number;
  /** As expected between these, mS/cm. */
  readonly lowMsCm: number;
  readonly highMsCm: number;
  readonly band: Band;
  /** Best explanation first; none when the reading is as expected, or when no single slip explains it. */
  readonly slips: readonly Slip[];
  /** How many of the first ones explain the reading about equally well. */
  readonly alike: number;
  readonly sentence: string;
}

/** Before the reading is seen; our own guess at kitchens. A volume is measured once, feeds one by one. */
const PRIOR: Readonly<Record<SlipKind, number>> = {
  doubled: 1,
  forgotten: 1,
  volume: 0.7,
  scale: 0.7,
  "not corrected": 0.7,
  "corrected twice": 0.4,
};
/** Another slip with at least this share of the best one's weight is named beside it. */
const ALIKE_SHARE = 0.4;
/** A slip that leaves more than this many standard deviations does not explain a reading. */
const EXPLAINS_SIGMAS = 3;
/** A slip that changes less than this cannot be told from none: so a feed that was not dosed, or the volume that was meant. */
const LEAST_CHANGE = 0.02;

type Candidate = Omit<Slip, "weight">;

function candidates(task: CheckTask, predicted: number): Candidate[] {
  const { doses, water, litres, ecOf, meter } = task;
  const found: Candidate[] = [];
  const add = (kind: SlipKind, feed: string, words: string, readsMsCm: number) => {
    if (Math.abs(readsMsCm / predicted - 1) >= LEAST_CHANGE) found.push({ kind, feed, words, readsMsCm });
  };
  const mixed = (factorOf: (index: number) => number) =>
    ecOf(
      mixtureOf(
        doses.map(({ feed, perLitre }, k) => ({ feed, perLitre: perLitre * factorOf(k) })),
        water,
      ),
    );
  doses.forEach(({ feed }, j) => {
    add(
      "doubled",
      feed.name,
      `${feed.name} went in twice`,
      mixed((k) => (k === j ? 2 : 1)),
    );
    add(
      "forgotten",
      feed.name,
      `${feed.name} was left out`,
      mixed((k) => (k === j ? 0 : 1)),
    );
  });
  for (const other of task.otherLitres ?? [litres / 2, litres * 2]) {
    if (!(other > 0)) continue;
    add(
      "volume",
      "",
      `there were ${sayNumber(other)} L of water, not ${sayNumber(litres)}`,
      mixed(() => litres / other),
    );
  }
  const { scale, tempC, corrected } = meter;
  if (scale !== null) {
    for (const other of METER_SCALES) {
      add("scale", "", `the meter was set to the ${other} scale, not ${sayGiven(scale)}`, (predicted * other) / scale);
    }
  }
  if (tempC !== null) {
    const rise = 1 + RISE_PER_DEGREE * (tempC - 25);
    if (corrected !== true) {
      add("not corrected", "", `the reading was not corrected from ${sayNumber(tempC)} to 25 °C`, predicted * rise);
    }
    if (corrected !== false) {
      add("corrected twice", "", `the reading was corrected from ${sayNumber(tempC)} to 25 °C twice`, predicted / rise);
    }
  }
  return found;
}

function ranked(task: CheckTask, predicted: number, band: Band): Slip[] {
  const { spread, freedom, centre } = band;
  const seen = Math.log(task.measuredMsCm / (predicted * centre));
  const weighed = candidates(task, predicted).flatMap((candidate) => {
    const off = (seen - Math.log(candidate.readsMsCm / predicted)) / spread;
    if (!(Math.abs(off) <= EXPLAINS_SIGMAS)) return [];
    // Student's density: the spread itself is only estimated.
    const density = (1 + (off * off) / freedom) ** (-(freedom + 1) / 2);
    return [{ ...candidate, weight: PRIOR[candidate.kind] * density }];
  });
  const all = weighed.reduce((sum, { weight }) => sum + weight, 0);
  return weighed.map((slip) => ({ ...slip, weight: slip.weight / all })).sort((a, b) => b.weight - a.weight);
}

function slipSentence(slips: readonly Slip[], alike: number): string {
  if (slips.length === 0) return "No single slip explains it: measure once more, and calibrate the meter.";
  const named = slips.slice(0, alike).map(({ words }) => words);
  if (alike === 1) return `It would fit if ${named[0]}.`;
  return `Several slips explain it about equally well: ${sayList(named, "or")}.`;
}

/**
 * Whether a reading is as expected, by the household's own spread or, until there is enough history, by what labels
 * and meter allow; and if not, which single slip explains it best. Throws BadInput for a reading that is not above 0
 * and a batch of nothing.
 */
export function checkReading(task: CheckTask): Check {
  const { measuredMsCm, doses, water, ecOf, history, meterShare } = task;
  if (!(measuredMsCm > 0 && Number.isFinite(measuredMsCm))) {
    throw new BadInput("out-of-bounds", `The reading is ${sayGiven(measuredMsCm)} mS/cm. Give a number above 0.`);
  }
  const predicted = ecOf(mixtureOf(doses, water));
  if (!(predicted > 0)) throw new BadInput("nothing-predicted", "Nothing that conducts is in this batch.");
  const band = spreadBand({ ratios: history, labelShare: ecAllowance(doses, water, ecOf), meterShare });
  const ratio = measuredMsCm / predicted;
  const inside = ratio >= band.low && ratio <= band.high;
  const sure = ratio < band.surelyLow || ratio > band.surelyHigh;
  const verdict = inside ? "as expected" : sure ? "look again" : "not enough history";
  const slips = inside ? [] : ranked(task, predicted, band);
  const best = slips[0]?.weight ?? 0;
  const alike = slips.filter(({ weight }) => weight >= ALIKE_SHARE * best).length;
  const [low, high] = [predicted * band.low, predicted * band.high];
  const reads = `The meter reads ${sayNumber(measuredMsCm)} mS/cm, and ${sayNumber(low)} to ${sayNumber(high)} was to be expected`;
  const sentence =
    verdict === "as expected"
      ? `As expected: ${reads.charAt(0).toLowerCase()}${reads.slice(1)}.`
      : verdict === "look again"
        ? `Look again: ${reads.charAt(0).toLowerCase()}${reads.slice(1)}. ${slipSentence(slips, alike)}`
        : `Not enough history: ${reads.charAt(0).toLowerCase()}${reads.slice(1)} by the labels. There are not enough earlier readings to tell whether something went wrong. ${slipSentence(slips, alike)}`;
  return { verdict, predictedMsCm: predicted, lowMsCm: low, highMsCm: high, band, slips, alike, sentence };
}
