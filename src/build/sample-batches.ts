/** The Batch log: doses found and amounts reached by the project's own arithmetic, readings invented around them. */

import { type Amounts, ELEMENTS } from "../core/elements.ts";
import { type Feed, type Fields, readShelfFeed } from "../core/feeds.ts";
import { mixAmounts } from "../core/mix.ts";
import { solveDoses } from "../core/solve.ts";
import { readTarget, readWater, type Water } from "../core/waters.ts";
import { BATCH_PLAN, type PlannedBatch } from "./sample-batch-plan.ts";
import { rounded, type SampleCell } from "./sample-cell.ts";
import { DOSED_FEEDS, FEED_ROWS } from "./sample-feeds.ts";
import { type Random, randomStream } from "./sample-random.ts";
import { TARGET_ROWS } from "./sample-targets.ts";
import { WATER_ROWS } from "./sample-waters.ts";

type SampleFields = Readonly<Record<string, SampleCell>>;

export const SCALE_STEP_G = 0.01;
export const SYRINGE_STEP_ML = 0.5;
export const PH_LOW = 5.4;
export const PH_HIGH = 6.2;

function fieldsOf(rows: readonly SampleFields[], heading: string, name: string): Fields {
  const row = rows.find((found) => found[heading] === name);
  if (row === undefined) throw new Error(`No ${heading} is called ${name}.`);
  const fields: Record<string, string | number> = {};
  for (const [key, cell] of Object.entries(row)) {
    if (typeof cell === "string" || typeof cell === "number") fields[key] = cell;
  }
  return fields;
}

const FEEDS: readonly Feed[] = DOSED_FEEDS.map((name) => {
  const { feed, reason } = readShelfFeed(fieldsOf(FEED_ROWS, "Feed", name), `the row of ${name}`);
  if (feed === null) throw new Error(reason ?? name);
  return feed;
});

/** The phosphate is chosen before the doses: ammonium only where the recipe has it (Hoagland 2). */
function feedsFor(target: string): Feed[] {
  const left = target.startsWith("Hoagland 2") ? "Monopotassium phosphate" : "Monoammonium phosphate";
  return FEEDS.filter(({ name }) => name !== left);
}

interface Dose {
  readonly feed: Feed;
  readonly unit: "g" | "mL";
  readonly perBatch: number;
}

/** The doses that come closest, as the household can weigh them: to the step of scale and syringe. */
function measured(batch: PlannedBatch, water: Water): Dose[] {
  const { wanted } = readTarget(fieldsOf(TARGET_ROWS, "Target", batch.target), batch.target);
  const { doses } = solveDoses({ wanted, feeds: feedsFor(batch.target), water: water.amounts });
  return doses.flatMap(({ feed, perLitre, unit }) => {
    const step = unit === "g" ? SCALE_STEP_G : SYRINGE_STEP_ML;
    const perBatch = rounded(Math.round((perLitre * batch.litres) / step) * step, 2);
    return perBatch > 0 ? [{ feed, unit, perBatch }] : [];
  });
}

/** Charge a mole of citric acid gives near pH 5.8, and g/mol of its monohydrate: NIST 46 constants, CIAAW weights. */
const CITRIC_EQ_PER_MOL = 2.12;
const CITRIC_G_PER_MOL = 210.138;
/** Used up on the way from about pH 8 to 5.8 in a closed vessel: greenhouse rule of thumb, from memory. */
const SHARE_USED_UP = 0.8;
/** Below this the feeds alone bring the pH down. */
const ENOUGH_MG_CACO3_L = 20;

function acidText(water: Water, litres: number): string {
  const alkalinity = water.alkalinityMgCaCO3L ?? 0;
  if (alkalinity < ENOUGH_MG_CACO3_L) return "";
  const grams = ((alkalinity / 50.043) * SHARE_USED_UP * CITRIC_G_PER_MOL * litres) / (CITRIC_EQ_PER_MOL * 1000);
  return `citric acid monohydrate ${rounded(grams, 1)} g`;
}

/** EC in mS/cm is about the cations in meq/L over ten: rule of thumb, from memory; only to invent readings with. */
function likelyEcMsCm(reached: Amounts): number {
  const meqL =
    (reached.Ca ?? 0) / 20.039 + (reached.Mg ?? 0) / 12.1525 + (reached.K ?? 0) / 39.098 + (reached.Na ?? 0) / 22.99;
  return meqL / 10;
}

interface Readings {
  readonly ec: number | null;
  readonly pH: number | null;
  readonly verdict: string;
  readonly note: string;
}

/** Every batch at first; later some are not tested, because many readings in a row agreed. */
function readings(
  batch: PlannedBatch,
  reached: Amounts,
  { index, random }: { index: number; random: Random },
): Readings {
  const tested = index < 12 || index >= BATCH_PLAN.length - 2 ? true : index % 4 !== 3;
  const hard = batch.water === "Town tap";
  const ec = rounded(likelyEcMsCm(reached) * (hard ? 1.04 : 1.02) * (1 + 0.025 * random.normal()), 2);
  const pH = rounded((hard ? 6.05 : 5.75) + (hard ? 0.22 : 0.13) * random.normal(), 1);
  if (!tested) return { ec: null, pH: null, verdict: "", note: "Not tested" };
  const pHMissing = index === 16 || index === 33;
  if (pHMissing) return { ec, pH: null, verdict: "", note: "pH meter out of storage liquid, no reading" };
  if (pH > PH_HIGH) {
    const note = hard ? "Next morning the pH had climbed further: the carbon dioxide had left" : "";
    return { ec, pH, verdict: "pH high", note };
  }
  if (pH < PH_LOW) return { ec, pH, verdict: "pH low", note: "" };
  return { ec, pH, verdict: "as it should be", note: "" };
}

function batchRow(batch: PlannedBatch, index: number, random: Random): SampleFields {
  const water = readWater(fieldsOf(WATER_ROWS, "Water", batch.water), batch.water);
  const doses = measured(batch, water);
  const reached = mixAmounts(
    doses.map(({ feed, unit, perBatch }) => ({ feed, dose: perBatch / batch.litres, unit: `${unit}/L` as const })),
    water.amounts,
  );
  const { ec, pH, verdict, note } = readings(batch, reached, { index, random });
  const row: Record<string, SampleCell> = {
    Id: batch.id,
    Date: { day: batch.day },
    Who: batch.who,
    Litres: batch.litres,
    Water: batch.water,
    Target: batch.target,
    Doses: doses.map((dose) => doseText(dose, batch.litres)).join("; "),
    Acid: acidText(water, batch.litres),
    "Measured EC": ec,
    "Measured pH": pH,
    Verdict: verdict,
    Note: note,
  };
  for (const symbol of ELEMENTS) {
    const mgL = reached[symbol];
    row[symbol] = mgL === undefined ? null : Number(mgL.toPrecision(6));
  }
  return row;
}

function doseText({ feed, unit, perBatch }: Dose, litres: number): string {
  return `${feed.name} ${Number((perBatch / litres).toPrecision(4))} ${unit}/L (${perBatch} ${unit})`;
}

export function batchRows(): SampleFields[] {
  const random = randomStream("readings of batches");
  return BATCH_PLAN.map((batch, index) => batchRow(batch, index, random));
}
