/** Conductivity meters: readings brought to 25 °C, and the ppm scales of meters. */

import { BadInput } from "./errors.ts";
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

function reading(value: number, what: string, unit: string): void {
  if (!Number.isFinite(value) || value < 0) {
    throw new BadInput("out-of-bounds", `${what} is ${sayGiven(value)} ${unit}. Give a number of 0 or more.`);
  }
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
  reading(ecMsCm, "The EC", "mS/cm");
  const { minC, maxC } = METER_TEMPERATURES;
  if (!(tempC >= minC && tempC <= maxC)) {
    throw new BadInput(
      "out-of-bounds",
      `The temperature is ${sayGiven(tempC)} °C. Give a number from ${minC} to ${maxC} °C.`,
    );
  }
  return ecMsCm / (1 + RISE_PER_DEGREE * (tempC - 25));
}

/** ppm on the meter's scale from mS/cm. */
export function tdsFromEc(ecMsCm: number, scale: number): number {
  reading(ecMsCm, "The EC", "mS/cm");
  return ecMsCm * meterScale(scale);
}

/** mS/cm from ppm on the meter's scale. */
export function ecFromTds(tdsPpm: number, scale: number): number {
  reading(tdsPpm, "The reading", "ppm");
  return tdsPpm / meterScale(scale);
}
