/** The chemistry of the batch on show: its EC with a band, its pH now and later, and what may fall out. */

import type { FieldRow } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { conductivity } from "../src/core/conductivity.ts";
import { isBadInput } from "../src/core/errors.ts";
import { type Feed, feedOf } from "../src/core/feeds.ts";
import { ecAllowance } from "../src/core/label-share.ts";
import { type EcOf, type MixtureDose, mixtureOf } from "../src/core/mixture.ts";
import { elementsOf, mixtureEc } from "../src/core/mixture-ec.ts";
import { keepApart, mixingSteps, type OrderAcid, type OrderDose, type Step } from "../src/core/order.ts";
import { type Risk, risks } from "../src/core/precipitation.ts";
import { sayNumber } from "../src/core/saying.ts";
import { impliedIons, mixStates, solutionAt } from "../src/core/solution.ts";
import type { State } from "../src/core/speciation.ts";
import { alkalinityEqKg, totalsOfWater, type WaterLines } from "../src/core/water-lines.ts";
import type { Worked } from "./batch.ts";
import { type Choice, PURE_WATER } from "./choices.ts";
import { stockMl } from "./measuring-ways.ts";
import type { HouseTools } from "./tools.ts";
import { linesOfRow } from "./water-blend.ts";

export interface MixChemistry {
  /** As mixed; at pH 6 where the pH cannot be worked out. */
  readonly now: State;
  /** In balance with the air; null where the pH cannot be worked out. */
  readonly standing: State | null;
  /** Share by which the EC may be off: labels and model. */
  readonly ecShare: number;
  /** Whole sentences. */
  readonly assumptions: readonly string[];
}

/** Of the EC, by trial against published conductivities: feeds within 3 %, bicarbonate waters within 8 %. */
const FEED_MODEL_SHARE = 0.03;
const WATER_MODEL_SHARE = 0.08;
/** Of a water whose report has none; between 7 and 8 it hardly moves the mix. */
const USUAL_WATER_PH = 7.5;

/** The report of the water in the batch; pure water where it was chosen; null where its row cannot be read. */
export function waterOfMix(water: Worked["water"], rows: readonly FieldRow[]): WaterLines | null {
  if (water === null) return null;
  if (water.key === PURE_WATER.key) return { Alkalinity: 0, pH: 7 };
  const row = rows.find(({ fields }) => nameKey(String(fields.Water ?? "")) === water.key);
  if (row === undefined) return null;
  try {
    return linesOfRow(row.fields, `row ${row.row} of Waters`);
  } catch (error) {
    if (isBadInput(error)) return null;
    throw error;
  }
}

/** The feeds that go in, as they are measured. */
export function dosesOf({ lines, feeds }: Pick<Worked, "lines" | "feeds">): MixtureDose[] {
  return lines.flatMap(({ feed: name, perLitre }) => {
    const feed = feeds.find((one) => one.name === name);
    return feed === undefined || perLitre === 0 ? [] : [{ feed, perLitre }];
  });
}

/** EC of mixes with this water, before any acid: with its alkalinity where the report has it. */
export function ecOfWater(water: Choice, rows: readonly FieldRow[]): EcOf {
  const lines = waterOfMix(water, rows);
  if (lines === null || lines.Alkalinity === undefined) return mixtureEc;
  const start = { totals: totalsOfWater(lines), alkalinityEqKg: alkalinityEqKg(lines), pH: lines.pH ?? USUAL_WATER_PH };
  return ({ doses }) =>
    conductivity(mixStates({ water: start, feeds: elementsOf(mixtureOf(doses, {})), tempC: 25 }).now).at25MsCm;
}

/** Throws BadInput, as solveState does, for a mix beyond the range of the model. */
export function mixChemistry(worked: Worked, rows: readonly FieldRow[]): MixChemistry | null {
  const water = waterOfMix(worked.water, rows);
  const amounts = worked.water?.amounts;
  if (worked.reached === null || water === null || amounts === undefined) return null;
  const doses = dosesOf(worked);
  const all = mixtureOf(doses, amounts);
  const whole = mixtureEc(all);
  const waterPart = whole > 0 ? Math.min(mixtureEc(mixtureOf([], amounts)) / whole, 1) : 0;
  const model = FEED_MODEL_SHARE + waterPart * (WATER_MODEL_SHARE - FEED_MODEL_SHARE);
  const ecShare = Math.hypot(ecAllowance(doses, amounts, mixtureEc), model);
  if (water.Alkalinity === undefined) {
    const elements = elementsOf(all);
    const unknown =
      "The pH cannot be worked out: the water has no alkalinity on the Waters tab. What may fall out is said for pH 6.";
    const assumptions = [unknown, ...impliedIons(elements).assumptions];
    return { now: solutionAt(elements, {}), standing: null, ecShare, assumptions };
  }
  const mix = mixStates({
    water: { totals: totalsOfWater(water), alkalinityEqKg: alkalinityEqKg(water), pH: water.pH ?? USUAL_WATER_PH },
    feeds: elementsOf(mixtureOf(doses, {})),
    tempC: 25,
  });
  const taken =
    water.pH === undefined ? [`The water’s own pH is not on the Waters tab and is taken as ${USUAL_WATER_PH}.`] : [];
  return { now: mix.now, standing: mix.standing, ecShare, assumptions: [...taken, ...mix.assumptions] };
}

/** What may fall out now, and what only later, once the CO2 has left and the pH has climbed. */
export function risksNowAndLater(now: State, standing: State | null): { now: Risk[]; later: Risk[] } {
  const first = risks(now);
  const later = standing === null ? [] : risks(standing);
  return { now: first, later: later.filter(({ solid }) => !first.some((one) => one.solid === solid)) };
}

/** A feed of an old batch that is no longer on the shelf: what is in it is not known, only how it was measured. */
function unknownFeed(name: string, unit: "g" | "mL"): Feed {
  const nitrogen = { nitrate: null, ammonium: null, urea: null, other: null };
  return feedOf(name, { basis: unit === "mL" ? "w/v" : "w/w", percent: {}, nitrogen }, null);
}

/** What a batch is done in, step by step; null until its litres are known. */
export function stepsOf(
  worked: Pick<Worked, "lines" | "feeds" | "litres" | "water">,
  { acid, waterRows, tools }: { acid: OrderAcid | null; waterRows: readonly FieldRow[]; tools: HouseTools },
): { steps: readonly Step[]; apart: string | null } | null {
  const litres = worked.litres.value;
  if (litres === null || litres === 0) return null;
  const doses = worked.lines.flatMap(
    ({ feed: name, unit, perBatch, perLitre, measuredBy, how, stock }): OrderDose[] => {
      if (perLitre === 0) return [];
      const feed = worked.feeds.find((one) => nameKey(one.name) === nameKey(name)) ?? unknownFeed(name, unit);
      const amount = perBatch ?? perLitre * litres;
      const rounded = measuredBy === null ? Number(sayNumber(amount)) : amount;
      return [
        {
          feed,
          perBatch: rounded,
          ...(stock === null ? {} : { stockMl: stockMl(amount, stock.perMl) }),
          ...(measuredBy === "spoons" ? { how } : {}),
        },
      ];
    },
  );
  const steps = mixingSteps({
    litres,
    doses,
    acid,
    alkalinityMgCaCO3L: waterOfMix(worked.water, waterRows)?.Alkalinity ?? null,
    scaleMostG: tools.scaleMostG ?? undefined,
    syringeMostMl: tools.syringeMostMl ?? undefined,
  });
  return { steps, apart: keepApart(doses.map(({ feed }) => feed)) };
}
