/** What stays behind in a reservoir when a plant drinks: ions, or the EC as their sum, by mass balance. */

import { checkNumber } from "./reading.ts";

export interface Use {
  /** Level in the full reservoir at the start and in the water that replaces what is drunk; one unit for both. */
  readonly fill: number;
  readonly topUp: number;
  /** Water drunk and replaced since, and what the full reservoir holds; one unit for both. */
  readonly used: number;
  readonly volume: number;
}

/**
 * Level in the full reservoir of an ion that the plant leaves behind whole, after `used` has been drunk and replaced:
 * c = c0 + ct W / V (mass balance). An ion that is taken up stays below it. Throws BadInput for a volume of 0 or less.
 */
export function levelAfterUse({ fill, topUp, used, volume }: Use): number {
  checkNumber(volume, { what: "The volume of the reservoir", min: Number.MIN_VALUE });
  return fill + (topUp * used) / volume;
}
