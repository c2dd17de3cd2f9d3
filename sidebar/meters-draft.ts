/** What is being typed about a reading in a standard, and the row it makes. */

import type { Loaded, RequestFor } from "../src/app/contract.ts";
import type { MeterKind } from "../src/core/drift.ts";
import { RISE_PER_DEGREE } from "../src/core/meter.ts";
import { sayNumber } from "../src/core/saying.ts";
import { isRecord, textOf } from "./drafts.ts";
import type { NewId } from "./ids.ts";
import { type EcUnit, meterOf, typedEc, unitOf } from "./meter.ts";
import { type Typed, typedDay, typedNumber } from "./typed.ts";

export interface MetersDraft {
  /** Of the row, made once and kept until it is in the log. */
  readonly id: string;
  readonly meter: MeterKind;
  /** A standard of the list, or "other". */
  readonly standard: string;
  readonly other: string;
  readonly reading: string;
  readonly unit: EcUnit | "";
  readonly temp: string;
  readonly calibrated: boolean;
  /** ISO day, "" for today. */
  readonly day: string;
  readonly note: string;
}

/**
 * Standards as they are sold. 1413 µS/cm is 0.01 mol/L KCl at 25 °C (EPA Method 120.1), 12.88 mS/cm 0.1 mol/L (from
 * memory); the others, and the pH buffers, are common practice, no source.
 */
export const STANDARDS: Readonly<Record<MeterKind, readonly { readonly value: string; readonly words: string }[]>> = {
  EC: [
    { value: "1.413", words: "1413 µS/cm" },
    { value: "0.084", words: "84 µS/cm" },
    { value: "0.447", words: "447 µS/cm" },
    { value: "2.77", words: "2.77 mS/cm" },
    { value: "12.88", words: "12.88 mS/cm" },
  ],
  pH: [
    { value: "7.01", words: "pH 7.01" },
    { value: "7", words: "pH 7.00" },
    { value: "6.86", words: "pH 6.86" },
    { value: "4.01", words: "pH 4.01" },
    { value: "9.18", words: "pH 9.18" },
    { value: "10.01", words: "pH 10.01" },
  ],
};

export const OTHER = "other";

export function freshMeters(newId: NewId, meter: MeterKind = "EC"): MetersDraft {
  const standard = STANDARDS[meter][0]?.value ?? OTHER;
  return {
    id: newId(),
    meter,
    standard,
    other: "",
    reading: "",
    unit: "",
    temp: "",
    calibrated: false,
    day: "",
    note: "",
  };
}

export function readMeters(kept: unknown): MetersDraft | null {
  if (!isRecord(kept) || !/^[a-z0-9-]{8,64}$/.test(textOf(kept, "id"))) return null;
  const unit = textOf(kept, "unit");
  const meter = textOf(kept, "meter") === "pH" ? "pH" : "EC";
  const standard = textOf(kept, "standard");
  return {
    id: textOf(kept, "id"),
    meter,
    standard: STANDARDS[meter].some(({ value }) => value === standard) ? standard : OTHER,
    other: textOf(kept, "other"),
    reading: textOf(kept, "reading"),
    unit: unit === "ppm" || unit === "mS/cm" ? unit : "",
    temp: textOf(kept, "temp"),
    calibrated: kept.calibrated === true,
    day: textOf(kept, "day"),
    note: textOf(kept, "note"),
  };
}

export interface MetersNumbers {
  readonly standard: Typed;
  readonly reading: Typed;
  readonly temp: Typed;
}

export function metersNumbers(draft: MetersDraft, loaded: Pick<Loaded, "meterScale">): MetersNumbers {
  const { meter, standard } = draft;
  const typed = standard === OTHER ? draft.other : standard;
  const scale = meterOf(loaded);
  const pH = { min: 0, max: 14 };
  return {
    standard:
      meter === "EC"
        ? typedNumber(typed, { what: "The standard", unit: "mS/cm", min: 0.001, max: 20 })
        : typedNumber(typed, { what: "The standard", ...pH, min: 1 }),
    reading:
      meter === "EC"
        ? typedEc(draft.reading, unitOf(scale, draft.unit), scale)
        : typedNumber(draft.reading, { what: "The reading", ...pH }),
    temp: typedNumber(draft.temp, { what: "The temperature", unit: "°C", min: 0, max: 50 }),
  };
}

/** What a meter without temperature correction shows in an EC standard at this temperature; null near 25 °C. */
export function uncorrected(draft: MetersDraft, { standard, temp }: MetersNumbers): string | null {
  if (draft.meter !== "EC" || standard.value === null || temp.value === null || Math.abs(temp.value - 25) < 1)
    return null;
  const shows = standard.value * (1 + RISE_PER_DEGREE * (temp.value - 25));
  return `A meter that does not correct for temperature should show ${sayNumber(shows)} mS/cm in it at ${sayNumber(temp.value)} °C. If yours does not, choose “Another” and type that as the standard.`;
}

/** The request for what is typed now, or the sentence that says what is missing. */
export function makeMeters(draft: MetersDraft, who: string, loaded: Loaded): RequestFor<"log meter"> | string {
  if (who === "") return "Type your name first, so that the log can say who did this.";
  const { standard, reading, temp } = metersNumbers(draft, loaded);
  const problem = standard.problem ?? reading.problem ?? temp.problem;
  if (problem !== null) return problem;
  if (standard.value === null) return "Type the value that is printed on the standard.";
  if (reading.value === null) return "Type what the meter showed in the standard.";
  const day = typedDay(draft.day, loaded.today);
  if (day === null) return "Choose the date.";
  return {
    ask: "log meter",
    who,
    entry: {
      id: draft.id,
      day,
      meter: draft.meter,
      standard: standard.value,
      reading: reading.value,
      tempC: temp.value,
      calibrated: draft.calibrated,
      note: draft.note.trim(),
    },
  };
}
