/** The Batch log: doses found and amounts reached by the project's own arithmetic, readings invented around them. */

import { dosesText } from "../core/dose-text.ts";
import { ELEMENTS } from "../core/elements.ts";
import { type Feed, type Fields, readShelfFeed } from "../core/feeds.ts";
import { mixAmounts } from "../core/mix.ts";
import { solveDoses } from "../core/solve.ts";
import { readTarget, readWater, type Water } from "../core/waters.ts";
import { BATCH_PLAN, type PlannedBatch } from "./sample-batch-plan.ts";
import { rounded, type SampleCell } from "./sample-cell.ts";
import { DOSED_FEEDS, FEED_ROWS } from "./sample-feeds.ts";
import { type Random, randomStream } from "./sample-random.ts";
import { likelyEc, readings } from "./sample-readings.ts";
import { TARGET_ROWS } from "./sample-targets.ts";
import { WATER_ROWS } from "./sample-waters.ts";

type SampleFields = Readonly<Record<string, SampleCell>>;

export const SCALE_STEP_G = 0.01;
export const SYRINGE_STEP_ML = 0.5;

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

/** mg/L of N that comes as ammonium. */
function ammoniumMgL(doses: readonly Dose[], litres: number): number {
  return doses.reduce(
    (sum, { feed, perBatch }) => sum + ((feed.label.nitrogen.ammonium ?? 0) * 10 * perBatch) / litres,
    0,
  );
}

function batchRow(batch: PlannedBatch, index: number, random: Random): SampleFields {
  const water = readWater(fieldsOf(WATER_ROWS, "Water", batch.water), batch.water);
  const doses = measured(batch, water);
  const reached = mixAmounts(
    doses.map(({ feed, unit, perBatch }) => ({ feed, dose: perBatch / batch.litres, unit: `${unit}/L` as const })),
    water.amounts,
  );
  const likelyEcMsCm = likelyEc(reached, ammoniumMgL(doses, batch.litres), water);
  const { ec, pH, verdict, note } = readings(batch, likelyEcMsCm, { index, random });
  const row: Record<string, SampleCell> = {
    Id: batch.id,
    Date: { day: batch.day },
    Who: batch.who,
    Litres: batch.litres,
    Water: batch.water,
    Target: batch.target,
    Doses: dosesText(
      doses.map(({ feed, unit, perBatch }) => ({ feed: feed.name, perLitre: perBatch / batch.litres, unit, perBatch })),
    ),
    "Predicted EC": rounded(likelyEcMsCm, 2),
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

export function batchRows(): SampleFields[] {
  const random = randomStream("readings of batches");
  return BATCH_PLAN.map((batch, index) => batchRow(batch, index, random));
}
