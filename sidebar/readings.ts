/** What the meters said about a batch that is already in the log. */

import type { BatchRow, Loaded, RequestFor } from "../src/app/contract.ts";
import type { ShelfFeed } from "../src/core/feeds.ts";
import { isRecord, textOf } from "./drafts.ts";
import { type EcUnit, meterOf, typedEc, unitOf } from "./meter.ts";
import { type PHRange, pHRange, sayPH } from "./ph-range.ts";
import { type BatchCheck, checkBatch } from "./readings-check.ts";
import { showDay } from "./show.ts";
import { typedNumber } from "./typed.ts";

export interface ReadingsDraft {
  /** "" for the newest batch that still waits. */
  readonly batchId: string;
  readonly ec: string;
  readonly ecUnit: EcUnit | "";
  readonly pH: string;
  /** °C of the solution, asked for when the reading is not as expected. */
  readonly temp: string;
}

export function freshReadings(): ReadingsDraft {
  return { batchId: "", ec: "", ecUnit: "", pH: "", temp: "" };
}

export function readReadings(kept: unknown): ReadingsDraft | null {
  if (!isRecord(kept)) return null;
  const unit = textOf(kept, "ecUnit");
  return {
    batchId: textOf(kept, "batchId"),
    ec: textOf(kept, "ec"),
    ecUnit: unit === "ppm" || unit === "mS/cm" ? unit : "",
    pH: textOf(kept, "pH"),
    temp: textOf(kept, "temp"),
  };
}

/** The ids that the sheet accepts; a row typed by hand may have another, and then cannot be found by it. */
const OUR_ID = /^[a-z0-9-]{8,64}$/;

/** Mixed batches that still wait for a reading, newest first. */
export function waitingBatches(batches: readonly BatchRow[]): readonly BatchRow[] {
  return batches.filter(
    ({ id, state, measuredEcMsCm, measuredPH }) =>
      OUR_ID.test(id) && state === "mixed" && (measuredEcMsCm === null || measuredPH === null),
  );
}

/** A batch in words: day, litres, target or water. */
export function batchWords(batch: BatchRow): string {
  const day = batch.day === null ? "no date" : showDay(batch.day);
  const litres = batch.litres === null ? null : `${batch.litres} L`;
  return [day, litres, batch.target || batch.water].filter((part) => part !== null && part !== "").join(", ");
}

/**
 * The batch the readings go to, or null when none waits. Once something is typed it stays with its batch,
 * whatever the sheet brings meanwhile.
 */
export function readingsBatch(draft: ReadingsDraft, batches: readonly BatchRow[]): BatchRow | null {
  const waiting = waitingBatches(batches);
  const chosen = waiting.find(({ id }) => id === draft.batchId);
  if (chosen !== undefined) return chosen;
  if (draft.batchId !== "" && typing(draft)) return batches.find(({ id }) => id === draft.batchId) ?? null;
  return waiting[0] ?? null;
}

export function typing(draft: ReadingsDraft): boolean {
  return draft.ec.trim() !== "" || draft.pH.trim() !== "";
}

/** What the two fields hold, each with its sentence when it cannot be used. */
export function readingsNumbers(draft: ReadingsDraft, loaded: Pick<Loaded, "meterScale">) {
  const meter = meterOf(loaded);
  return {
    ec: typedEc(draft.ec, unitOf(meter, draft.ecUnit), meter),
    pH: typedNumber(draft.pH, { what: "pH", min: 0, max: 14 }),
    temp: typedNumber(draft.temp, { what: "The temperature", unit: "°C", min: 0, max: 50 }),
  };
}

/** What the reading of the EC says about its batch; null while none is typed. */
export function readingsCheck(draft: ReadingsDraft, loaded: Loaded, shelf: readonly ShelfFeed[]): BatchCheck | null {
  const batch = readingsBatch(draft, loaded.batches);
  const { ec, temp } = readingsNumbers(draft, loaded);
  if (batch === null || ec.value === null || ec.value === 0) return null;
  const meter = meterOf(loaded);
  const scale = unitOf(meter, draft.ecUnit) === "ppm" ? meter.scale : null;
  return checkBatch({ batch, ecMsCm: ec.value, meter: { scale, tempC: temp.value, corrected: null }, shelf }, loaded);
}

/** Characters that a request may carry in one text. */
const MOST_TEXT = 2000;

/** What goes into the column Verdict; "" without a reading of the EC, so that one to come still finds its cell blank. */
export function verdictText(check: BatchCheck | null, pH: number | null, range: PHRange): string {
  if (check?.check == null) return "";
  const off = pH !== null && (pH < range.low || pH > range.high);
  const said = off ? `${check.check.sentence} ${sayPH(pH, range)}` : check.check.sentence;
  // A dozen feeds with long names that explain it equally well must not keep the reading out of the log.
  return said.length > MOST_TEXT ? `${said.slice(0, MOST_TEXT - 1)}…` : said;
}

/** The request for what is typed now, or the sentence that says what is missing. */
export function makeReadings(
  draft: ReadingsDraft,
  loaded: Loaded,
  shelf: readonly ShelfFeed[],
): RequestFor<"log readings"> | string {
  const batch = readingsBatch(draft, loaded.batches);
  if (batch === null) return "This batch is no longer among the newest in the log. Choose another.";
  const { ec, pH } = readingsNumbers(draft, loaded);
  const problem = ec.problem ?? pH.problem;
  if (problem !== null) return problem;
  if (ec.value === null && pH.value === null) return "Type the EC, the pH or both.";
  const check = readingsCheck(draft, loaded, shelf);
  const verdict = verdictText(check, pH.value ?? batch.measuredPH, pHRange(loaded.settings));
  return { ask: "log readings", batchId: batch.id, ecMsCm: ec.value, pH: pH.value, verdict };
}

/** The batches once the readings are in the log; a reading that was not given leaves what was there. */
export function batchesAfter(batches: readonly BatchRow[], sent: RequestFor<"log readings">): BatchRow[] {
  return batches.map((batch) =>
    batch.id === sent.batchId
      ? {
          ...batch,
          measuredEcMsCm: sent.ecMsCm ?? batch.measuredEcMsCm,
          measuredPH: sent.pH ?? batch.measuredPH,
          verdict: batch.verdict === "" ? sent.verdict : batch.verdict,
        }
      : batch,
  );
}
