/** What is said of a reservoir's salt: expected against measured, when to flush or change, how to feed. */

import { isoFromDay } from "../src/core/calendar.ts";
import { sayList, sayNumber } from "../src/core/saying.ts";
import type { SaltAnswer, SaltFigures } from "./reservoir-salt.ts";
import { count, showDay } from "./show.ts";

const ec = (value: number): string => `${value.toFixed(2)} mS/cm`;

/** After this many days a plant may take up otherwise. Common practice, no source. */
const OLD_DAYS = 14;
/** A reading this far above what all salts could give has another reason. */
const ABOVE = 1.1;

export function saySalt(answer: SaltAnswer, { measured, volumeMl, topUpEc }: SaltFigures, today: number): string[] {
  const { usedMl, allStay, uptake, expected } = answer;
  const said = [
    `Drunk and replaced since: ${sayNumber(usedMl)} mL, ${sayNumber(usedMl / volumeMl)} times what it holds.`,
    `If the plant took up water alone, it would read ${ec(allStay)} when full.`,
  ];
  if (measured === null) {
    said.push("Measure the EC, and it can be told what the plant takes up.");
  } else if (measured.ecMsCm > ABOVE * allStay) {
    said.push(
      `It reads ${ec(measured.ecMsCm)}, more than could stay behind. Was it full and stirred, and are all top-ups in the log?`,
    );
  } else if (uptake === null) {
    said.push(`It reads ${ec(measured.ecMsCm)}, less than its last top-up alone would leave. Check the figures above.`);
  } else {
    const share = topUpEc > 0 ? `, ${sayNumber((100 * uptake) / topUpEc)} % of what a top-up brings` : "";
    const old = today - measured.day;
    said.push(
      `Measured ${ec(measured.ecMsCm)} on ${showDay(isoFromDay(measured.day))}: with the water the plant takes up about ${ec(uptake)}${share}.`,
      `So it should read ${ec(expected)} when full now${old > OLD_DAYS ? `, but that reading is ${old} days old: measure again` : ""}.`,
    );
  }
  return said;
}

export function sayCeiling(answer: SaltAnswer, figures: SaltFigures, today: number): string {
  const { ceilingDay, flushMl } = answer;
  const { ceiling, measured } = figures;
  const top = ec(ceiling);
  if (ceilingDay === null) return `Topped up like this it never reaches the ceiling of ${top}.`;
  const how =
    flushMl === null
      ? "Change the solution then: this plain water does not bring it back to what it was filled with."
      : `Flush with ${sayNumber(Math.ceil(flushMl / 10) * 10)} mL of plain water then, or change the solution.`;
  if (ceilingDay <= today && measured === null) {
    return `It may have reached the ceiling of ${top}, if the plant took up water alone. Measure it. ${how.replace(" then", " if so")}`;
  }
  if (ceilingDay <= today) return `It has reached the ceiling of ${top}. ${how.replace(" then", " now")}`;
  const earliest = measured === null ? ", at the earliest" : "";
  return `It reaches the ceiling of ${top} on ${showDay(isoFromDay(ceilingDay))}${earliest}. ${how}`;
}

/** The plan in a sentence; its days stand in the table. */
export function sayPlan({ plan }: SaltAnswer, { ceiling, everyDays, measured }: SaltFigures): string {
  const times = (kind: string): number => plan.filter((step) => step.kind === kind).length;
  const [fed, plain, change] = [times("fed"), times("plain"), times("change")];
  const parts = [
    fed > 0 ? `${fed} with feed` : "",
    plain > 0 ? `${plain} with plain water` : "",
    change > 0 ? `${count(change, "whole change")}` : "",
  ].filter((part) => part !== "");
  const careful = measured === null ? " Without a reading this is the careful side." : "";
  return `To stay at or below ${ec(ceiling)}, one every ${count(everyDays, "day")}: ${sayList(parts, "and")}.${careful}`;
}
