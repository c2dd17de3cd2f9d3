/** What a reading says about its batch, in this household's own spread; and what cannot be checked any more. */

import type { BatchRow, Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { type LoggedDose, parseDoses } from "../src/core/dose-text.ts";
import { isBadInput } from "../src/core/errors.ts";
import type { ShelfFeed } from "../src/core/feeds.ts";
import { rebuildBatch, usualLitres } from "../src/core/logged-batch.ts";
import { type Mixture, mixtureOf } from "../src/core/mixture.ts";
import { mixtureEc } from "../src/core/mixture-ec.ts";
import { type Check, checkReading, type MeterUse } from "../src/core/slips.ts";
import { waterChoices } from "./choices.ts";

export interface BatchCheck {
  /** Null where the reading cannot be compared with anything. */
  readonly check: Check | null;
  /** Whole sentences: why there is no check, or what it leaves out. */
  readonly unchecked: readonly string[];
}

/** Volumes that this household fills besides, taken into account by how often. */
const OTHER_VOLUMES = 2;

function dosesOf(text: string): LoggedDose[] | string {
  if (text.trim() === "") return "The log has no doses for this batch.";
  try {
    return parseDoses(text);
  } catch (error) {
    if (isBadInput(error)) return error.message;
    throw error;
  }
}

/** Measured over predicted EC of all other batches, oldest first. */
export function ratiosOf(batches: readonly BatchRow[], without: string): number[] {
  return [...batches].reverse().flatMap(({ id, state, measuredEcMsCm, predictedEcMsCm }) => {
    if (id === without || state === "planned" || measuredEcMsCm === null || !(predictedEcMsCm !== null)) return [];
    return predictedEcMsCm > 0 && measuredEcMsCm > 0 ? [measuredEcMsCm / predictedEcMsCm] : [];
  });
}

/** The litres of all batches, for volumes that could have been filled by mistake. */
function otherLitres(batches: readonly BatchRow[], litres: number): number[] {
  const all = batches.flatMap((batch) => (batch.litres === null ? [] : [batch.litres]));
  return [...new Set([litres / 2, litres * 2, ...usualLitres(all, litres, OTHER_VOLUMES)])];
}

export interface CheckGiven {
  readonly batch: BatchRow;
  /** As typed, mS/cm. */
  readonly ecMsCm: number;
  readonly meter: MeterUse;
  readonly shelf: readonly ShelfFeed[];
}

/** Never throws for what stands in the sheet: what cannot be checked comes back as sentences. */
export function checkBatch(
  { batch, ecMsCm, meter, shelf }: CheckGiven,
  { batches, waters }: Pick<Loaded, "batches" | "waters">,
): BatchCheck {
  const doses = dosesOf(batch.doses);
  const water = waterChoices(waters).find(({ key, name }) => [key, nameKey(name)].includes(nameKey(batch.water)));
  const logged = { doses: typeof doses === "string" ? [] : doses, reached: batch.reached, acid: batch.acid };
  const rebuilt = rebuildBatch(logged, shelf, water?.amounts ?? null);
  const unchecked = typeof doses === "string" ? [`${doses} So no slip with a feed can be checked.`] : rebuilt.unchecked;
  const litres = batch.litres ?? 0;
  try {
    const now = mixtureEc(mixtureOf(rebuilt.doses, rebuilt.rest));
    const predicted = batch.predictedEcMsCm;
    if (predicted === null && unchecked.length > 0 && Object.keys(batch.reached).length === 0) {
      return { check: null, unchecked: ["The log has no EC to expect for this batch.", ...unchecked] };
    }
    // So that the EC to expect is the one that was shown and logged, with the acid and the water's alkalinity in it.
    const scale = predicted !== null && predicted > 0 && now > 0 ? predicted / now : 1;
    const check = checkReading({
      measuredMsCm: ecMsCm,
      doses: rebuilt.doses,
      water: rebuilt.rest,
      litres,
      ecOf: (mixture: Mixture) => scale * mixtureEc(mixture),
      history: ratiosOf(batches, batch.id),
      meter,
      otherLitres: litres > 0 ? otherLitres(batches, litres) : [],
    });
    return { check, unchecked: check.verdict === "as expected" ? [] : unchecked };
  } catch (error) {
    if (isBadInput(error)) return { check: null, unchecked: [error.message] };
    throw error;
  }
}
