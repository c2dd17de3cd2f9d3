/** The sections of the panel, in the order of its list. A new one is one line here. */

import type { ComponentType } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { CareSection } from "./care-section.tsx";
import { ClaimSection } from "./claim-section.tsx";
import { FeedSection } from "./feed-section.tsx";
import { GrowthSection } from "./growth-section.tsx";
import { MetersSection } from "./meters-section.tsx";
import { MixSection } from "./mix-section.tsx";
import type { Panel } from "./panel-state.ts";
import { ReservoirSection } from "./reservoir-section.tsx";
import { SetupSection } from "./setup-section.tsx";
import { SheetSection } from "./sheet-section.tsx";
import { SitterSection } from "./sitter-section.tsx";
import { StockSection } from "./stock-section.tsx";
import { TrialSection } from "./trial-section.tsx";
import { WaterSection } from "./water-section.tsx";

export interface Section {
  /** Kept with the drafts, so it never changes. */
  readonly key: string;
  readonly title: string;
  readonly Body: ComponentType<{ readonly panel: Panel; readonly loaded: Loaded }>;
}

export interface SectionGroup {
  /** Said to those who hear the panel. */
  readonly name: string;
  readonly sections: readonly Section[];
}

export const FIRST: Section = { key: "mix", title: "Mix a batch", Body: MixSection };

/** Each group begins a line of the list. */
export const SECTION_GROUPS: readonly SectionGroup[] = [
  {
    name: "Every day",
    sections: [
      FIRST,
      { key: "care", title: "Log care", Body: CareSection },
      { key: "reservoirs", title: "Reservoirs", Body: ReservoirSection },
    ],
  },
  {
    name: "What goes in",
    sections: [
      { key: "water", title: "Know a water", Body: WaterSection },
      { key: "feed", title: "Know a feed", Body: FeedSection },
      { key: "stock", title: "Keep stock", Body: StockSection },
    ],
  },
  {
    name: "Readings and what they teach",
    sections: [
      { key: "meters", title: "Meters", Body: MetersSection },
      { key: "claims", title: "Claims", Body: ClaimSection },
      { key: "trials", title: "Trials", Body: TrialSection },
      { key: "growth", title: "Growth", Body: GrowthSection },
    ],
  },
  {
    name: "Being away, and the sheet",
    sections: [
      { key: "sitter", title: "Go away", Body: SitterSection },
      { key: "sheet", title: "Sheet", Body: SheetSection },
      { key: "setup", title: "Set up", Body: SetupSection },
    ],
  },
];

export const SECTIONS: readonly Section[] = SECTION_GROUPS.flatMap(({ sections }) => sections);
