/** The desk of "Meters": the draft of a reading in a standard, the button that logs it, and the one that takes it back. */

import type { FieldRow, MeterEntry } from "../src/app/contract.ts";
import { keptStore } from "./drafts.ts";
import { freshMeters, type MetersDraft, makeMeters, readMeters } from "./meters-draft.ts";
import { sayStandard } from "./meters-log.ts";
import type { RecordsStore } from "./panel-state.ts";
import { clearWhenEdited, createSender, FOUND_OTHERWISE, type Sender } from "./sending.ts";
import type { Store } from "./store.ts";
import { createTakingBack } from "./taking-back.ts";
import type { DeskLinks, PanelWorld } from "./world.ts";

export interface MetersDesk {
  readonly draft: Store<MetersDraft>;
  readonly sender: Sender;
  readonly takeBack: Sender;
  /** Draws the batches on their tab. */
  readonly chart: Sender;
  /** Chooses the row that `takeBack` is about, and sends. */
  takeBackRow(id: string): void;
}

/** The tab with the new row, until the sheet is read again. */
function withRow(rows: readonly FieldRow[], entry: MeterEntry, who: string): FieldRow[] {
  if (rows.some(({ fields }) => fields.Id === entry.id)) return [...rows];
  const row = 1 + Math.max(1, ...rows.map((one) => one.row));
  const fields: FieldRow["fields"] = {
    Id: entry.id,
    Date: entry.day,
    Meter: entry.meter,
    Standard: entry.standard,
    Reading: entry.reading,
    Calibrated: entry.calibrated,
    Who: who,
  };
  return [...rows, { row, fields }];
}

export function createMetersDesk(world: PanelWorld, links: DeskLinks & { readonly records: RecordsStore }): MetersDesk {
  const { loaded, records } = links;
  const draft = keptStore<MetersDraft>(world.storage, "stillroot.meters", {
    fresh: () => freshMeters(world.newId),
    read: readMeters,
  });
  const sender = createSender<"log meter">(world.ask, world.after, {
    make: () => {
      const all = loaded.get();
      return all === null ? "The sheet has not been read yet." : makeMeters(draft.get(), links.who(), all);
    },
    settle: (reply, { entry, who }) => {
      records.change((now) => (now === null ? null : { ...now, meterLog: withRow(now.meterLog, entry, who) }));
      // The meter and its day stay: a pH meter is checked in a second buffer right after.
      draft.change((now) =>
        now.id === entry.id ? { ...freshMeters(world.newId, now.meter), day: now.day, temp: now.temp } : now,
      );
      links.keepName();
      const sentence = `Logged the ${entry.meter} meter in ${sayStandard(entry.meter, entry.standard)}.`;
      return { sentence: reply.differing.length > 0 ? FOUND_OTHERWISE : sentence, notes: reply.differing };
    },
  });
  clearWhenEdited(draft, sender);

  const takeBack = createTakingBack(world, links, {
    log: "Meter log",
    gone: (id) =>
      records.change((now) =>
        now === null ? null : { ...now, meterLog: now.meterLog.filter(({ fields }) => fields.Id !== id) },
      ),
  });
  const chart = createSender<"draw chart">(world.ask, world.after, {
    make: () => ({ ask: "draw chart" }),
    settle: ({ sentence }) => ({ sentence }),
  });
  return { draft, sender, chart, takeBack: takeBack.sender, takeBackRow: takeBack.row };
}
