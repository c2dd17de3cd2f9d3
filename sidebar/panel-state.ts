/** The panel's state as a whole: what was loaded, and the desks that each send one kind of request. */

import type { Loaded, Records } from "../src/app/contract.ts";
import { type AcidDraft, acidStore } from "./acid-draft.ts";
import type { BatchCard } from "./batch-card.ts";
import { type BatchDesk, createBatchDesk } from "./batch-desk.ts";
import { type BatchesDesk, createBatchesDesk } from "./batches-desk.ts";
import { createBoardsSender } from "./boards-card.tsx";
import { type CareDesk, createCareDesk } from "./care-desk.ts";
import { type ClaimDesk, createClaimDesk } from "./claim-desk.ts";
import { keptStore } from "./drafts.ts";
import { createExportDesk, createImportDesk, type ExportDesk, type ImportDesk } from "./export-desk.ts";
import { createFeedDesk, type FeedDesk } from "./feed-desk.ts";
import { createLatestDesk, type LatestDesk } from "./latest-desk.ts";
import { createMetersDesk, type MetersDesk } from "./meters-desk.ts";
import { createMoveDesk, type MoveDesk } from "./move-desk.ts";
import { createReadingsDesk, type ReadingsDesk } from "./readings-desk.ts";
import { createReservoirDesk, type ReservoirDesk } from "./reservoir-desk.ts";
import { createSender, type Sender } from "./sending.ts";
import { createSetupDesk, type SetupDesk } from "./setup-desk.ts";
import { createSitterDesk, type SitterDesk } from "./sitter-desk.ts";
import { createStockDesk, type StockDesk } from "./stock-desk.ts";
import { createStore, type Store } from "./store.ts";
import { createToolsDesk, type ToolsDesk } from "./tools-desk.ts";
import { createTrialDesk, type TrialDesk } from "./trial-desk.ts";
import { createWaterDesk, type WaterDesk } from "./water-desk.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

/** Null until a section needed them. */
export type RecordsStore = Store<Records | null>;

export interface Panel {
  /** null until the sheet was read for the first time. */
  readonly loaded: Store<Loaded | null>;
  readonly loading: Sender;
  /** null until a section needed them; read again with the sheet. */
  readonly records: Store<Records | null>;
  readonly recordsLoading: Sender;
  /** Key of the section on show. */
  readonly section: Store<string>;
  readonly batch: BatchDesk;
  readonly batches: BatchesDesk;
  /** The card on show in place of the sections; null for none. */
  readonly card: Store<BatchCard | null>;
  readonly acid: Store<AcidDraft>;
  readonly tools: ToolsDesk;
  readonly readings: ReadingsDesk;
  readonly care: CareDesk;
  readonly latest: LatestDesk;
  readonly move: MoveDesk;
  readonly reservoir: ReservoirDesk;
  readonly meters: MetersDesk;
  readonly claims: ClaimDesk;
  readonly trials: TrialDesk;
  readonly water: WaterDesk;
  readonly feed: FeedDesk;
  readonly stock: StockDesk;
  readonly boards: Sender;
  readonly sitter: SitterDesk;
  readonly exporting: ExportDesk;
  readonly importing: ImportDesk;
  readonly setup: SetupDesk;
}

export function createPanel(world: PanelWorld): Panel {
  const loaded = createStore<Loaded | null>(null);
  const records = createStore<Records | null>(null);
  const recordsLoading = createSender<"records">(world.ask, world.after, {
    make: () => ({ ask: "records" }),
    settle: (reply) => {
      records.set(reply);
      return { sentence: "The records were read.", notes: reply.problems };
    },
  });
  const loading = createSender<"load">(world.ask, world.after, {
    make: () => ({ ask: "load" }),
    settle: (reply) => {
      loaded.set(reply);
      if (records.get() !== null) recordsLoading.press();
      return { sentence: "The sheet was read." };
    },
  });
  const section = keptStore<string>(world.storage, "stillroot.section", {
    fresh: () => "",
    read: (kept) => (typeof kept === "string" ? kept : null),
  });
  const setup = createSetupDesk(world, { loaded, reload: () => loading.press() });
  const links: DeskLinks = {
    loaded,
    who: () => (loaded.get()?.who.trim() || setup.name.get()?.trim()) ?? "",
    keepName: () => {
      if (loaded.get()?.who.trim() === "") setup.nameSender.press();
    },
    reload: () => loading.press(),
  };
  const readings = createReadingsDesk(world, loaded);
  const acid = acidStore(world.storage);
  const care = createCareDesk(world, links);
  return {
    loaded,
    loading,
    records,
    recordsLoading,
    section,
    acid,
    readings,
    setup,
    boards: createBoardsSender(world),
    sitter: createSitterDesk(world, loaded),
    tools: createToolsDesk(world, loaded),
    batch: createBatchDesk(world, { ...links, acid, records, logged: readings.choose }),
    exporting: createExportDesk(world, loaded),
    importing: createImportDesk(world, loaded, () => loading.press()),
    batches: createBatchesDesk(world, { ...links, logged: readings.choose, reload: loading.press }),
    card: createStore<BatchCard | null>(null),
    latest: createLatestDesk(world, links),
    move: createMoveDesk(world, links),
    care,
    reservoir: createReservoirDesk(world, { loaded, care, section }),
    meters: createMetersDesk(world, { ...links, records }),
    claims: createClaimDesk(world, { ...links, records }),
    trials: createTrialDesk(world, { ...links, records }),
    water: createWaterDesk(world, links),
    feed: createFeedDesk(world, links),
    stock: createStockDesk(world, { ...links, records }),
  };
}
