/** Conductivity meters: readings brought to 25 °C, and the ppm scales of meters. */

import { BadInput } from "./errors.ts";
import { checkNumber } from "./reading.ts";
import { sayGiven } from "./saying.ts";

/** Share by which conductivity rises for each degree, relative to 25 °C [EPA Method 120.1, 0.01 M KCl]. */
export const RISE_PER_DEGREE = 0.0191;

/** Liquid water as one meets it; the linear rule is measured for 21 to 25 °C and drifts a few percent at the ends. */
export const METER_TEMPERATURES = { minC: 0, maxC: 50 };

/**
 * ppm for each mS/cm on the scales printed on meters: the nominal 500, 640 and 700 [common practice, no source].
 * At the 1413 µS/cm standard the salts behind them give 497 (sodium chloride), 640 and 708 (the 442 mixture); the
 * true factor of the 442 mixture runs from 600 at 0.084 mS/cm to 880 at 12.88 mS/cm, so ppm is a scale, not a weight.
 */
export const METER_SCALES = [500, 640, 700] as const;

export type MeterScale = (typeof METER_SCALES)[number];

/** No water conducts 1000 mS/cm; on the largest scale that is 700,000 ppm. */
const MOST_MS_CM = 1000;
const MOST_PPM = 700 * MOST_MS_CM;

function checkEc(ecMsCm: number): void {
  checkNumber(ecMsCm, { what: "The EC", unit: "mS/cm", min: 0, max: MOST_MS_CM });
}

/** The scale that a number names. Throws BadInput for any other. */
export function meterScale(scale: number): MeterScale {
  for (const known of METER_SCALES) if (known === scale) return known;
  throw new BadInput(
    "unknown-scale",
    `The scale is ${sayGiven(scale)}. Give 500, 640 or 700, as printed on the meter.`,
  );
}

/** EC at 25 °C, mS/cm, from an uncompensated reading at `tempC` (0 to 50 °C): κ25 = κt / (1 + 0.0191 (t − 25)) [EPA 120.1]. */
export function ecAt25(ecMsCm: number, tempC: number): number {
  checkEc(ecMsCm);
  const { minC, maxC } = METER_TEMPERATURES;
  checkNumber(tempC, { what: "The temperature", unit: "°C", min: minC, max: maxC });
  return ecMsCm / (1 + RISE_PER_DEGREE * (tempC - 25));
}

/** ppm on the meter's scale from mS/cm. */
export function tdsFromEc(ecMsCm: number, scale: number): number {
  checkEc(ecMsCm);
  return ecMsCm * meterScale(scale);
}

/** mS/cm from ppm on the meter's scale. */
export function ecFromTds(tdsPpm: number, scale: number): number {
  checkNumber(tdsPpm, { what: "The reading", unit: "ppm", min: 0, max: MOST_PPM });
  return tdsPpm / meterScale(scale);
}
