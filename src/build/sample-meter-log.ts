/** The Meter log of the sample household: two meters in their standards over two years. Invented. */

import { day, rounded, type SampleCell } from "./sample-cell.ts";
import { LOG_STARTS, TODAY } from "./sample-household.ts";
import { randomStream } from "./sample-random.ts";
import { keeperOn } from "./sample-season.ts";

type Row = Readonly<Record<string, SampleCell>>;

/** Looked at about so often, days. */
const EC_EVERY = 60;
const PH_EVERY = 28;
/** Lost a day since the meter was last set: a share of the reading for EC, units for pH. */
const EC_LOSS = 0.0004;
const PH_LOSS = 0.0022;

export function meterRows(): Row[] {
  const random = randomStream("meters in their standards");
  const found: { readonly on: number; readonly row: Row }[] = [];
  const log = (meter: "EC" | "pH", every: number, readingAfter: (days: number) => number, standard: number): void => {
    let set = day(LOG_STARTS);
    for (let on = set + 3; on < day(TODAY) - 5; on += every + random.whole(-4, 6)) {
      const reading = readingAfter(on - set);
      const off = meter === "EC" ? Math.abs(reading / standard - 1) > 0.03 : Math.abs(reading - standard) > 0.05;
      found.push({
        on,
        row: {
          Date: { day: on },
          Meter: meter,
          Standard: standard,
          Reading: reading,
          "Temp C": random.whole(19, 23),
          Calibrated: off ? "yes" : "no",
          Who: keeperOn(on, "Kitchen", random),
        },
      });
      if (off) set = on;
    }
  };
  log("EC", EC_EVERY, (days) => rounded(1.413 * (1 - EC_LOSS * days) + 0.006 * random.normal(), 2), 1.413);
  log("pH", PH_EVERY, (days) => rounded(7.01 + PH_LOSS * days + 0.015 * random.normal(), 2), 7.01);
  return found
    .sort((a, b) => a.on - b.on)
    .map(({ row }, index) => ({ Id: `meter-${String(index + 1).padStart(4, "0")}`, ...row }));
}
