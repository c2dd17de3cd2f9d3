/** The sitter's page as words and lines: what to pour, on which day, in which room, and what to take care of. */

import type { BatchRow } from "../src/app/contract.ts";
import { civilFromDay, dayFromIso } from "../src/core/calendar.ts";
import { parseDoses } from "../src/core/dose-text.ts";
import { isBadInput } from "../src/core/errors.ts";
import { sayNumber } from "../src/core/saying.ts";
import { count, showDay } from "./show.ts";
import type { SitterDraft, Sitting } from "./sitter-draft.ts";

const WEEKDAYS = ["Thu", "Fri", "Sat", "Sun", "Mon", "Tue", "Wed"] as const;
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;

/** "Sat 1 Aug 2026". Day 0, 1970-01-01, was a Thursday. */
export function dayWords(dayNumber: number): string {
  const { year, month, day } = civilFromDay(dayNumber);
  return `${WEEKDAYS[((dayNumber % 7) + 7) % 7]} ${day} ${MONTHS[month - 1]} ${year}`;
}

/** The day number of such words, with or without the weekday; null for any others. */
export function dayOfWords(text: string): number | null {
  const found = /(\d{1,2}) ([A-Z][a-z]{2}) (\d{4})/.exec(text);
  const months: readonly string[] = MONTHS;
  const month = months.indexOf(found?.[2] ?? "") + 1;
  if (found === null || month === 0) return null;
  const two = (value: number) => String(value).padStart(2, "0");
  return dayFromIso(`${found[3]}-${two(month)}-${two(Number(found[1]))}`);
}

export interface PageLine {
  readonly room: string;
  readonly plant: string;
  readonly what: string;
  /** Rounded to what one can pour; null: up to the mark. */
  readonly aboutMl: number | null;
}

export interface SitterPage {
  readonly title: string;
  readonly intro: readonly string[];
  readonly pouring: readonly string[];
  readonly care: readonly string[];
  readonly days: readonly { readonly day: number; readonly lines: readonly PageLine[] }[];
}

/** To 5 mL below 50, to 10 mL from there on: a jug shows no more. */
export function roundPour(amountMl: number): number {
  const step = amountMl < 50 ? 5 : 10;
  return Math.max(step, step * Math.round(amountMl / step));
}

/** Litres to have ready: a tenth more, up to the next half litre. Common practice, no source. */
export function litresReady(totalMl: number): number {
  return Math.ceil((totalMl * 1.1) / 500) / 2;
}

/** To a tenth of a litre. */
export function sayLitres(amountMl: number): string {
  return `${sayNumber(Math.max(1, Math.round(amountMl / 100)) / 10)} L`;
}

function batchLines(batch: BatchRow | null, totalMl: number): string[] {
  const need = totalMl === 0 ? [] : [`About ${sayLitres(totalMl)} are needed in all these days together.`];
  if (batch === null) return ["Pour plain water that has stood to room temperature.", ...need];
  const from = [
    batch.day === null ? "" : `mixed on ${showDay(batch.day)}`,
    batch.who === "" ? "" : `by ${batch.who}`,
    batch.target === "" ? "" : `for “${batch.target}”`,
    batch.water === "" ? "" : `from “${batch.water}”`,
  ].filter((part) => part !== "");
  const reads = [
    batch.measuredEcMsCm === null ? "" : `EC ${sayNumber(batch.measuredEcMsCm)} mS/cm`,
    batch.measuredPH === null ? "" : `pH ${sayNumber(batch.measuredPH)}`,
  ].filter((part) => part !== "");
  return [
    `Pour from the can with the batch ${from.join(" ")}.`.replace("  ", " "),
    `A litre of it holds ${perLitre(batch.doses)}.`,
    ...(reads.length === 0 ? [] : [`It read ${reads.join(" and ")} when it was mixed.`]),
    ...need,
    "If the can runs out, pour plain water and write so under Done. Do not mix a new batch and leave acids where they are: the household does that.",
  ];
}

/** "Calcium nitrate 0.5 g; Potassium nitrate 0.3 g", or the text as it stands where it is not of this form. */
function perLitre(doses: string): string {
  try {
    return parseDoses(doses)
      .map(({ feed, perLitre: amount, unit }) => `${feed} ${sayNumber(amount)} ${unit}`)
      .join("; ");
  } catch (error) {
    if (isBadInput(error)) return doses;
    throw error;
  }
}

function careLines(draft: SitterDraft): string[] {
  return [
    "Fill each reservoir to its mark and no further; roots need air. If it is still full, pour nothing and write so.",
    "Leave the plants in their pots: no repotting, rinsing or trimming, even if roots look long.",
    "The solution in the can is not drinking water. Keep it closed, labelled and away from children and animals.",
    "The sap of many houseplants irritates skin and eyes and harms animals that chew them. Wash your hands afterwards; for a broken leaf wear gloves.",
    "Keep water away from plugs and lamps. If some got there, touch nothing, do not step in it, and call for help.",
    "After each visit write a word and your letters under Done, or log it in the sheet.",
    ...(draft.reach.trim() === "" ? [] : [`You reach us at ${draft.reach.trim()}.`]),
  ];
}

export function sitterPage(draft: SitterDraft, { plan, fromDay, toDay, batch }: Sitting): SitterPage {
  const name = draft.sitter.trim();
  const visits = count(plan.visitDays.length, "visit");
  const every = Number(draft.every) === 1 ? "every day" : `every ${draft.every} days`;
  return {
    title: name === "" ? "For whoever looks after the plants" : `For ${name}, who looks after the plants`,
    intro: [`From ${dayWords(fromDay)} to ${dayWords(toDay)}: ${visits}, ${every}.`, "Thank you!"],
    pouring: batchLines(batch, plan.totalMl),
    care: careLines(draft),
    days: plan.visitDays.map((day) => ({
      day,
      lines: plan.pours
        .filter((pour) => pour.day === day)
        .map(({ plant, place, amountMl }) => ({
          room: place,
          plant,
          what: "Top up to the mark",
          aboutMl: amountMl === null ? null : roundPour(amountMl),
        })),
    })),
  };
}
