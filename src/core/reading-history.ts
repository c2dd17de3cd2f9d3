/** EC and pH of batches over time as rows to draw: readings, limits, and marks for calibrations and new lots. */

import { spreadBand } from "./spread.ts";

export interface HistoryBatch {
  /** Days since 1970-01-01. */
  readonly day: number;
  /** mS/cm at 25 °C; null where it was not read or worked out. */
  readonly ecMsCm: number | null;
  readonly expectedMsCm: number | null;
  readonly pH: number | null;
}

export interface HistoryTask {
  readonly batches: readonly HistoryBatch[];
  readonly low: number;
  readonly high: number;
  /** Days on which a meter was set to its standard. */
  readonly calibrations: readonly number[];
  /** Days on which another lot of a feed was bought. */
  readonly lots: readonly number[];
}

/** One row of the drawing; null where there is nothing to draw. */
export interface HistoryRow {
  readonly day: number;
  readonly ecMsCm: number | null;
  readonly expectedMsCm: number | null;
  /** Where this household's meter usually reads, mS/cm; null with fewer than eight readings. */
  readonly ecLowMsCm: number | null;
  readonly ecHighMsCm: number | null;
  readonly pH: number | null;
  readonly low: number;
  readonly high: number;
  /** A meter was calibrated since the batch before; drawn on the lower limit. */
  readonly calibrated: number | null;
  /** A feed came in another lot since the batch before; drawn on the upper limit. */
  readonly newLot: number | null;
}

/** Places of the first batch on each of these days or after; days before the first batch or after the last are left out. */
function placesAfter(days: readonly number[], batches: readonly HistoryBatch[]): ReadonlySet<number> {
  const first = batches[0]?.day ?? 0;
  return new Set(
    days.flatMap((day) => {
      const place = day < first ? -1 : batches.findIndex((batch) => batch.day >= day);
      return place === -1 ? [] : [place];
    }),
  );
}

/**
 * A row for each batch, by day; a calibration or a new lot is marked at the first batch after it. The EC's band is the
 * household's own spread without what the labels allow, which differs from batch to batch.
 */
export function readingHistory({ batches, low, high, calibrations, lots }: HistoryTask): HistoryRow[] {
  const inOrder = [...batches].sort((a, b) => a.day - b.day);
  // What was not read or worked out makes no ratio above 0, and is passed over.
  const ratios = inOrder.map(({ ecMsCm, expectedMsCm }) => (ecMsCm ?? 0) / (expectedMsCm ?? 0));
  const band = spreadBand({ ratios, labelShare: 0 });
  const calibrated = placesAfter(calibrations, inOrder);
  const newLot = placesAfter(lots, inOrder);
  return inOrder.map((batch, place) => {
    const expected = band.enough ? batch.expectedMsCm : null;
    return {
      ...batch,
      low,
      high,
      ecLowMsCm: expected === null ? null : expected * band.low,
      ecHighMsCm: expected === null ? null : expected * band.high,
      calibrated: calibrated.has(place) ? low : null,
      newLot: newLot.has(place) ? high : null,
    };
  });
}
