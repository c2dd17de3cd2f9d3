/** What is chosen and typed in "Reservoirs": a place, a plant, and figures that go before those of the log. */

import { isRecord, textOf } from "./drafts.ts";
import type { EcUnit } from "./meter.ts";

/** Figures of the salt card as typed; "" takes what the log says. */
const FIGURES = {
  volumeMl: "",
  fillEc: "",
  topUpEc: "",
  measuredEc: "",
  plainEc: "",
  ceiling: "",
  everyDays: "",
} as const;

export type Figure = keyof typeof FIGURES;

export interface ReservoirDraft {
  /** "" for all places. */
  readonly place: string;
  readonly plant: string;
  readonly figures: Readonly<Record<Figure, string>>;
  readonly ecUnit: EcUnit | "";
}

export function freshReservoir(): ReservoirDraft {
  return { place: "", plant: "", figures: FIGURES, ecUnit: "" };
}

export function readReservoir(kept: unknown): ReservoirDraft | null {
  if (!isRecord(kept)) return null;
  const figures = isRecord(kept.figures) ? kept.figures : {};
  const unit = textOf(kept, "ecUnit");
  return {
    place: textOf(kept, "place"),
    plant: textOf(kept, "plant"),
    figures: Object.fromEntries(
      (Object.keys(FIGURES) as Figure[]).map((figure) => [figure, textOf(figures, figure)]),
    ) as Record<Figure, string>,
    ecUnit: unit === "ppm" || unit === "mS/cm" ? unit : "",
  };
}

/** Another plant: its figures are its own. */
export function withPlant(draft: ReservoirDraft, plant: string): ReservoirDraft {
  return { ...draft, plant, figures: FIGURES };
}
