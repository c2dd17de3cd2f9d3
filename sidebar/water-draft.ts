/** The draft of "Know a water": the report as typed, what was answered and chosen, and the row it becomes. */

import type { Loaded, RequestFor } from "../src/app/contract.ts";
import { WATER_NUMBERS } from "../src/app/requests.ts";
import { sayList } from "../src/core/saying.ts";
import { WATER_LINES, type WaterLine, type WaterLines } from "../src/core/water-lines.ts";
import { isRecord, textOf, textsOf } from "./drafts.ts";
import { typedDay } from "./typed.ts";
import { sayLine, splitLines, type TypedReport } from "./water-report.ts";

export const COMMON_UNITS = ["mg/L", "mmol/L", "meq/L"] as const;

export interface WaterDraft {
  /** Of the press, made at the first key and kept until the report is saved; "" before. */
  readonly id: string;
  readonly text: string;
  /** What numbers without a unit are in; "" to be asked line by line. */
  readonly unit: "" | (typeof COMMON_UNITS)[number];
  /** Line as typed → words of the reading that was chosen. */
  readonly answers: Readonly<Record<string, string>>;
  /** Positions of the lines that are being corrected. */
  readonly open: readonly number[];
  readonly name: string;
  /** ISO day, "" for today. */
  readonly day: string;
  readonly source: string;
  readonly note: string;
  /** True from when the report is on the tab until something of it is changed. */
  readonly saved: boolean;
  /** Keys of the two waters to blend, and the share of the first in percent. */
  readonly one: string;
  readonly other: string;
  readonly sharePercent: number;
  /** Key of the water to treat, and how. */
  readonly treated: string;
  readonly treatment: string;
}

export function freshWater(): WaterDraft {
  return {
    ...{ id: "", text: "", unit: "", answers: {}, open: [] },
    ...{ name: "", day: "", source: "", note: "", saved: false },
    ...{ one: "", other: "", sharePercent: 50, treated: "", treatment: "" },
  };
}

export function readWaterDraft(kept: unknown): WaterDraft | null {
  if (!isRecord(kept) || !/^([a-z0-9-]{8,64})?$/.test(textOf(kept, "id", "damaged!"))) return null;
  const { sharePercent, open } = kept;
  return {
    id: textOf(kept, "id"),
    text: textOf(kept, "text"),
    unit: COMMON_UNITS.find((unit) => unit === kept.unit) ?? "",
    answers: textsOf(kept.answers),
    open: Array.isArray(open) ? open.filter((at): at is number => Number.isInteger(at)) : [],
    name: textOf(kept, "name"),
    day: textOf(kept, "day"),
    source: textOf(kept, "source"),
    note: textOf(kept, "note"),
    saved: kept.saved === true,
    one: textOf(kept, "one"),
    other: textOf(kept, "other"),
    sharePercent: typeof sharePercent === "number" && sharePercent >= 0 && sharePercent <= 100 ? sharePercent : 50,
    treated: textOf(kept, "treated"),
    treatment: textOf(kept, "treatment"),
  };
}

/** A line of the text in other words; the line stays open while it is corrected. */
export function correctLine(draft: WaterDraft, at: number, words: string): WaterDraft {
  const lines = splitLines(draft.text);
  lines[at] = words.replace(/[\r\n]+/g, " ");
  return { ...openLine(draft, at), text: lines.join("\n") };
}

export function openLine(draft: WaterDraft, at: number): WaterDraft {
  return draft.open.includes(at) ? draft : { ...draft, open: [...draft.open, at] };
}

export function closeLine(draft: WaterDraft, at: number): WaterDraft {
  return { ...draft, open: draft.open.filter((one) => one !== at) };
}

export function takeOutLine(draft: WaterDraft, at: number): WaterDraft {
  const text = splitLines(draft.text)
    .filter((_, index) => index !== at)
    .join("\n");
  return { ...draft, text, open: draft.open.flatMap((one) => (one === at ? [] : [one > at ? one - 1 : one])) };
}

const columns = new Set<string>(WATER_NUMBERS);

/** What the tab has no column for; it goes into the note, so that nothing is lost. */
export function besideTheColumns(water: WaterLines): WaterLine[] {
  return WATER_LINES.filter((line) => water[line] !== undefined && !columns.has(line));
}

function disinfectantOf(water: WaterLines): "" | "none" | "chlorine" | "chloramine" {
  const { Chloramine: bound, "Free chlorine": free } = water;
  if (bound !== undefined && bound > 0) return "chloramine";
  if (free !== undefined && free > 0) return "chlorine";
  return free === 0 && bound === 0 ? "none" : "";
}

function noteWith(note: string, beside: readonly string[]): string {
  if (beside.length === 0) return note;
  const words = `lso reported: ${sayList(beside, "and")}`;
  return note === "" ? `A${words}.` : `${note} (a${words})`;
}

/** The request for the report as it is understood now, or the sentence that says what is missing. */
export function makeWater(
  draft: WaterDraft,
  report: TypedReport,
  loaded: Pick<Loaded, "today">,
): RequestFor<"log water"> | string {
  const { water, lines } = report;
  const asked = lines.find(({ status, chosen }) => status === "ask" && chosen === null);
  if (asked !== undefined) return `Choose what “${asked.text}” means first.`;
  const unclear = lines.find(({ status }) => status === "unclear");
  if (unclear !== undefined) return `“${unclear.text}” is not understood. Correct that line or take it out.`;
  if (Object.keys(water).length === 0) return "Type or paste at least one line of a report.";
  if (draft.name.trim() === "") return "Type a name for this water.";
  const day = typedDay(draft.day, loaded.today);
  if (day === null) return "Choose the date.";
  const beside = besideTheColumns(water).map((line) => sayLine(line, water[line] ?? 0));
  return {
    ask: "log water",
    entry: {
      id: draft.id,
      water: draft.name.trim(),
      day,
      source: draft.source.trim(),
      numbers: Object.fromEntries(
        WATER_NUMBERS.flatMap((one) => (water[one] === undefined ? [] : [[one, water[one]]])),
      ),
      disinfectant: disinfectantOf(water),
      note: noteWith(draft.note.trim(), beside),
    },
  };
}
