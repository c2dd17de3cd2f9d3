/** What was chosen for the acid of a batch: which, how strong, to which pH, and what was measured on the way. */

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
}

const FRESH: AcidDraft = { acid: "", strength: "", targetPH: "5.8", measuredPH: "" };

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
          }
        : null,
  });
}
