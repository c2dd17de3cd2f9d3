/** EC as it is read off the meter in hand: in mS/cm, or in ppm on the meter's own scale. */

import type { Loaded } from "../src/app/contract.ts";
import { ecFromTds, METER_SCALES } from "../src/core/meter.ts";
import { typedNumber } from "./typed.ts";

/** "mS/cm", or the scale of a ppm meter as Settings give it. */
export type EcUnit = "mS/cm" | "ppm";

export interface Meter {
  /** 500, 640 or 700, or null when the household's meter shows mS/cm. */
  readonly scale: number | null;
}

export function meterOf(loaded: Pick<Loaded, "meterScale">): Meter {
  const scale = METER_SCALES.find((known) => known === loaded.meterScale);
  return { scale: scale ?? null };
}

/** The unit a field starts with: what the household's meter shows. */
export function unitOf(meter: Meter, chosen: EcUnit | ""): EcUnit {
  if (meter.scale === null) return "mS/cm";
  return chosen === "" ? "ppm" : chosen;
}

/** No reading of a solution for plants comes near; above it the unit was mixed up. */
const MOST_MS_CM = 20;

/** Reads an EC as typed. @returns mS/cm or null for blank, or the sentence that says what is wrong. */
export function typedEc(text: string, unit: EcUnit, meter: Meter): { value: number | null; problem: string | null } {
  if (unit === "mS/cm" || meter.scale === null) {
    return typedNumber(text, { what: "EC", unit: "mS/cm", min: 0, max: MOST_MS_CM });
  }
  const tds = typedNumber(text, { what: "EC", unit: "ppm", min: 0, max: MOST_MS_CM * meter.scale });
  return tds.value === null ? tds : { value: ecFromTds(tds.value, meter.scale), problem: null };
}
