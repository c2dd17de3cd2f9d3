/** The Meter log as the panel uses it: readings in a standard of each meter, how it drifts, when to calibrate again. */

import type { FieldRow, Loaded } from "../src/app/contract.ts";
import { dayFromIso } from "../src/core/calendar.ts";
import { type Drift, type MeterKind, meterDrift, type StandardReading } from "../src/core/drift.ts";
import { isBadInput } from "../src/core/errors.ts";
import { sayNumber } from "../src/core/saying.ts";
import { typedNumber } from "./typed.ts";

export interface StandardRow extends StandardReading {
  readonly kind: MeterKind;
  readonly id: string;
  readonly who: string;
  /** ISO. */
  readonly date: string;
}

export interface MeterRows {
  readonly rows: readonly StandardRow[];
  /** Sentences on rows that say too little to be counted. */
  readonly problems: readonly string[];
}

function kindOf(text: unknown): MeterKind | null {
  const key = String(text ?? "")
    .trim()
    .toLowerCase();
  return key === "ec" ? "EC" : key === "ph" ? "pH" : null;
}

/** In the tab's order. */
export function standardRows(log: readonly FieldRow[]): MeterRows {
  const rows: StandardRow[] = [];
  const problems: string[] = [];
  for (const { row, fields } of log) {
    const { Date: date, Meter, Standard: standard, Reading: reading, Calibrated } = fields;
    const kind = kindOf(Meter);
    const day = typeof date === "string" ? dayFromIso(date) : null;
    if (kind === null || day === null || typeof standard !== "number" || typeof reading !== "number") {
      problems.push(
        `Row ${row} of Meter log lacks a date, a meter (EC or pH), a standard or a reading, so it is left out.`,
      );
      continue;
    }
    if (!(standard > 0) || !(reading >= 0)) {
      problems.push(`Row ${row} of Meter log has a standard or a reading that no meter shows, so it is left out.`);
      continue;
    }
    const said = { id: String(fields.Id ?? ""), who: String(fields.Who ?? ""), date: String(date) };
    rows.push({ kind, day, standard, reading, adjusted: Calibrated === true, ...said });
  }
  return { rows, problems };
}

/** Rows of Settings: never longer than this without a look at a standard. */
const DAYS_SETTING: Readonly<Record<MeterKind, string>> = { EC: "EC calibration days", pH: "pH calibration days" };

export interface MeterState {
  readonly drift: Drift;
  /** Of this meter, newest first. */
  readonly rows: readonly StandardRow[];
}

export function meterState(kind: MeterKind, all: readonly StandardRow[], loaded: Loaded): MeterState {
  const rows = all.filter((row) => row.kind === kind);
  const days = typedNumber(loaded.settings[DAYS_SETTING[kind]] ?? "", { what: "Days", min: 1, max: 1000 }).value;
  const drift = meterDrift(rows, {
    kind,
    today: dayFromIso(loaded.today) ?? 0,
    rules: days === null ? {} : { longestDays: days },
  });
  return { drift, rows: [...rows].sort((a, b) => a.day - b.day).reverse() };
}

/** "1.38 in 1.413 mS/cm, 2.34 % low"; "7.1 in pH 7.01, 0.09 high". */
export function sayReading({ kind, standard, reading, adjusted }: StandardRow): string {
  const off = kind === "EC" ? 100 * (reading / standard - 1) : reading - standard;
  const size = kind === "EC" ? `${Number(Math.abs(off).toFixed(1))} %` : String(Number(Math.abs(off).toFixed(2)));
  const how = size === "0" || size === "0 %" ? "exact" : `${size} ${off < 0 ? "low" : "high"}`;
  const said =
    kind === "EC"
      ? `${sayNumber(reading)} in ${sayStandard(kind, standard)}`
      : `${sayNumber(reading)} in pH ${standard}`;
  return `${said}, ${how}${adjusted ? ", then set to it" : ""}`;
}

/** "1.413 mS/cm"; "pH 7.01". */
export function sayStandard(kind: MeterKind, standard: number): string {
  return kind === "EC" ? `${standard} mS/cm` : `pH ${standard}`;
}

/** What is wrong with a log, as a sentence, where core refuses it. */
export function tryState(kind: MeterKind, all: readonly StandardRow[], loaded: Loaded): MeterState | string {
  try {
    return meterState(kind, all, loaded);
  } catch (error) {
    if (isBadInput(error)) return error.message;
    throw error;
  }
}
