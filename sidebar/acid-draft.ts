/** What was chosen for the acid of a batch: which, how strong, to which pH, and what was measured on the way. */

import type { ThinAcid } from "../src/core/acid-measure.ts";
import { type DraftStorage, isRecord, keptStore, textOf } from "./drafts.ts";
import type { Option } from "./field.tsx";
import type { Store } from "./store.ts";

export interface AcidDraft {
  /** As parseAcid knows it, without its strength; "" for none. */
  readonly acid: string;
  readonly strength: string;
  readonly targetPH: string;
  /** pH after the first part of the dose. */
  readonly measuredPH: string;
  /** The bottle it is thinned in before it is dosed; null where it goes in as it is. */
  readonly thin: ThinAcid | null;
}

const FRESH: AcidDraft = { acid: "", strength: "", targetPH: "5.8", measuredPH: "", thin: null };

export const ACID_OPTIONS: readonly Option[] = [
  { value: "", words: "None" },
  { value: "phosphoric acid", words: "Phosphoric acid" },
  { value: "nitric acid", words: "Nitric acid" },
  { value: "sulfuric acid", words: "Sulfuric acid" },
  { value: "citric acid", words: "Citric acid" },
  { value: "citric acid monohydrate", words: "Citric acid monohydrate" },
  { value: "potassium bicarbonate", words: "Potassium bicarbonate, to raise" },
  { value: "potassium hydroxide", words: "Potassium hydroxide, to raise" },
];

function readThin(kept: unknown): ThinAcid | null {
  if (!isRecord(kept)) return null;
  const { solute, bottleMl } = kept;
  if (typeof solute !== "number" || typeof bottleMl !== "number" || !(solute > 0 && bottleMl > 0)) return null;
  return { solute, unit: kept.unit === "g" ? "g" : "mL", bottleMl };
}

export function acidStore(storage: DraftStorage | null): Store<AcidDraft> {
  return keptStore<AcidDraft>(storage, "stillroot.acid", {
    fresh: () => FRESH,
    read: (kept) =>
      isRecord(kept)
        ? {
            acid: ACID_OPTIONS.find(({ value }) => value === kept.acid)?.value ?? "",
            strength: textOf(kept, "strength"),
            targetPH: textOf(kept, "targetPH", FRESH.targetPH),
            measuredPH: textOf(kept, "measuredPH"),
            thin: readThin(kept.thin),
          }
        : null,
  });
}

/** The acid behind the text that the log keeps, "phosphoric acid 85 %: 1.5 mL, to pH 5.8"; null where it is another. */
export function acidOfText(text: string): AcidDraft | null {
  const [, name = "", strength = "", targetPH = ""] =
    /^([a-z ]+?)(?: (\d+(?:\.\d+)?) %)?(?:, [^:]+)?: .*to pH (\d+(?:\.\d+)?)$/i.exec(text.trim()) ?? [];
  const found = ACID_OPTIONS.find(({ value }) => value !== "" && value === name.toLowerCase());
  return found === undefined ? null : { ...FRESH, acid: found.value, strength, targetPH };
}
