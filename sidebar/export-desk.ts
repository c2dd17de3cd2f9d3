/** The desk of the export and of bringing one back. */

import type { Loaded } from "../src/app/contract.ts";
import { PAGE_ROWS } from "../src/app/requests.ts";
import type { AskSheet } from "./calls.ts";
import { type ReadFile, readZip, zipOf } from "./export-file.ts";
import { RECORD_TABS, readTabs } from "./export-read.ts";
import { planImport, type TabPlan } from "./import-plan.ts";
import { createJob, type Job } from "./job.ts";
import { count } from "./show.ts";
import { createStore, type Store } from "./store.ts";
import type { PanelWorld } from "./world.ts";

export interface MadeZip {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface ExportDesk {
  readonly job: Job;
  /** null until it was made. */
  readonly zip: Store<MadeZip | null>;
}

export interface ImportDesk {
  /** Reads the file that was chosen and sets out what it would write. */
  choose(bytes: Uint8Array): void;
  readonly look: Job;
  readonly plan: Store<readonly TabPlan[] | null>;
  readonly withSettings: Store<boolean>;
  readonly write: Job;
}

export function createExportDesk(world: PanelWorld, loaded: Store<Loaded | null>): ExportDesk {
  const zip = createStore<MadeZip | null>(null);
  const job = createJob(world, async (ask, say) => {
    zip.set(null);
    const tabs = await readTabs(ask, say);
    if (tabs.length === 0) return "There are no tabs to export yet. Choose “Set up tabs” from the menu first.";
    say("packing");
    zip.set({ name: `stillroot-${loaded.get()?.today ?? "export"}.zip`, bytes: zipOf(tabs) });
    const rows = tabs.reduce((sum, each) => sum + each.rows.length, 0);
    return { sentence: `${count(rows, "row")} of ${count(tabs.length, "tab")} are ready to be saved.` };
  });
  return { job, zip };
}

/** Rows that a plan would write, settings only where they are wanted. */
export function rowsToWrite(plan: readonly TabPlan[], withSettings: boolean): readonly TabPlan[] {
  return plan.filter(({ tab, rows }) => rows.length > 0 && (tab !== "Settings" || withSettings));
}

const OWN_LIST =
  "Plants come from a list of your own here, which is never changed, so the plants of the file are left out. Add them there by hand.";

export function createImportDesk(world: PanelWorld, loaded: Store<Loaded | null>, reload: () => void): ImportDesk {
  let file: ReadFile | null = null;
  let bytes: Uint8Array | null = null;
  const plan = createStore<readonly TabPlan[] | null>(null);
  const withSettings = createStore(false);

  const ownList = () => (loaded.get()?.settings["Plant list tab"] ?? "").trim() !== "";

  const look = createJob(world, async (ask, say) => {
    plan.set(null);
    if (bytes === null) return "Choose the zip first.";
    file = readZip(bytes, RECORD_TABS);
    const planned = planImport(file.tabs, await readTabs(ask, say)).map((each) =>
      each.tab === "Plants" && ownList() && each.rows.length > 0
        ? { ...each, rows: [], notes: [...each.notes, OWN_LIST] }
        : each,
    );
    const sheet = loaded.get();
    // Into an empty sheet everything goes; where a household already lives, its settings stay unless it says so.
    withSettings.set((sheet?.care.rows.length ?? 0) === 0 && (sheet?.plants.length ?? 0) === 0);
    plan.set(planned);
    const rows = planned.reduce((sum, each) => sum + (each.tab === "Settings" ? 0 : each.rows.length), 0);
    const sentence =
      rows === 0
        ? "Every row of this file is in the sheet already."
        : `${count(rows, "row")} of this file ${rows === 1 ? "is" : "are"} not in the sheet yet. Nothing has been written.`;
    return { sentence, notes: file.problems };
  });

  const write = createJob(world, async (ask, say) => {
    const planned = plan.get();
    if (planned === null) return "Choose the zip first.";
    const wanted = rowsToWrite(planned, withSettings.get());
    if (wanted.length === 0) return "There is nothing to write.";
    let written = 0;
    const notes: string[] = [];
    for (const each of wanted) {
      const done = await writeTab(ask, each, (rows) => say(`${each.tab}, ${rows} of ${each.rows.length}`));
      written += done.written;
      notes.push(...done.differing);
    }
    plan.set(null);
    // What was said to be missing is there now.
    look.clear();
    reload();
    return { sentence: `Wrote ${count(written, "row")}. Choosing the file again would add nothing twice.`, notes };
  });

  return {
    look,
    plan,
    withSettings,
    write,
    choose: (chosen) => {
      bytes = chosen;
      write.clear();
      look.press();
    },
  };
}

async function writeTab(ask: AskSheet, { tab, headings, rows }: TabPlan, say: (rows: number) => void) {
  let written = 0;
  const differing: string[] = [];
  for (let from = 0; from < rows.length; from += PAGE_ROWS) {
    say(from);
    const page = rows.slice(from, from + PAGE_ROWS).map((row) => [...row]);
    const answer = await ask<"import rows">({ ask: "import rows", tab, headings: [...headings], rows: page });
    if (!answer.ok)
      throw new Error(`${answer.sentence} What was written so far stays; trying again adds only the rest.`);
    written += answer.reply.written;
    differing.push(...answer.reply.differing);
  }
  return { written, differing };
}
