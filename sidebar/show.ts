/** How numbers, days and counts are shown: rounded here and nowhere else, always with a decimal point. */

import { sayGiven, sayNumber } from "../src/core/saying.ts";

/** An amount to weigh or draw up. */
export function showDose(value: number, unit: "g" | "mL"): string {
  return `${sayNumber(value)} ${unit}`;
}

/** An amount that a tool measures, to its last figure. */
export function showMeasured(value: number, unit: "g" | "mL"): string {
  return `${sayGiven(value)} ${unit}`;
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;

/** "2026-03-01" as "1 Mar 2026"; a text that is no day comes back as it is. */
export function showDay(iso: string): string {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  const month = MONTHS[Number(found?.[2]) - 1];
  return found === null || month === undefined ? iso : `${Number(found[3])} ${month} ${found[1]}`;
}

/** A sentence with its ISO days as people say them. */
export function showDays(sentence: string): string {
  return sentence.replace(/\b\d{4}-\d{2}-\d{2}\b/g, showDay);
}

/** "1 plant", "3 plants". */
export function count(many: number, one: string, more = `${one}s`): string {
  return `${many} ${many === 1 ? one : more}`;
}
