/** Past repots and the like in a plant list of one's own: which columns hold them, and the entries they make. */

import type { Loaded, RequestFor } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { type DayOrder, orderOf, type PastEntry, pastDays } from "../src/core/list-days.ts";
import { cellWords, type ListColumn, type OwnTab, pastColumns } from "./list-guess.ts";
import { stableId } from "./stable-id.ts";

export interface PastDraft {
  /** Heading of a column of days → the event it tells of; "none" for none; not there while the guess stands. */
  readonly events: Readonly<Record<string, string>>;
  /** Heading → how 3/4/2025 is meant there. */
  readonly orders: Readonly<Record<string, string>>;
}

export interface PastColumn {
  readonly heading: string;
  readonly column: ListColumn;
  /** "" for no past disturbance. */
  readonly event: string;
  /** A text with two readings that waits for an answer; "" for none. */
  readonly ask: string;
  readonly order: DayOrder | null;
}

export interface PastRow extends PastEntry {
  readonly event: string;
}

export interface Past {
  readonly columns: readonly PastColumn[];
  /** What would be written, in the order of the list. */
  readonly rows: readonly PastRow[];
  /** Those of `rows` that the loaded log has already. */
  readonly known: number;
  readonly left: readonly string[];
  readonly undecided: number;
}

function columnOf(draft: PastDraft, column: ListColumn, guess: string): PastColumn {
  const { heading } = column;
  const chosen = draft.events[heading] ?? guess;
  const seen = orderOf(column.cells);
  const said = draft.orders[heading];
  const order = seen.order ?? (said === "day first" || said === "month first" ? said : null);
  const ask = seen.order === null && seen.either > 0 ? seen.example : "";
  return { heading, column, event: chosen === "none" ? "" : chosen, ask, order };
}

/** Everything there is to show before anything is written. */
export function pastOf(
  draft: PastDraft,
  {
    tab,
    columns,
    plantHeading,
  }: {
    readonly tab: OwnTab;
    readonly columns: readonly ListColumn[];
    readonly plantHeading: string;
  },
  loaded: Pick<Loaded, "today" | "care">,
): Past {
  const names = columns.find(({ heading }) => heading === plantHeading)?.cells ?? [];
  const found = pastColumns(columns).map(({ column, event }) => columnOf(draft, column, event));
  const rows: PastRow[] = [];
  const left: string[] = [];
  let undecided = 0;
  for (const { column, event, order } of found) {
    if (event === "") continue;
    const cells = tab.rows.map((_, at) => ({
      row: at + 2,
      plant: cellWords(names[at] ?? ""),
      cell: column.cells[at] ?? "",
    }));
    const days = pastDays(cells, { order, today: loaded.today });
    rows.push(...days.entries.map((entry) => ({ ...entry, event })));
    left.push(...days.left);
    undecided += days.undecided;
  }
  const deed = (row: Pick<PastRow, "plant" | "day" | "event">) =>
    [nameKey(row.plant), row.day, nameKey(row.event)].join("\n");
  const once = [...new Map(rows.map((row) => [deed(row), row])).values()];
  const logged = new Set(loaded.care.rows.map(deed));
  return { columns: found, rows: once, known: once.filter((row) => logged.has(deed(row))).length, left, undecided };
}

const MOST_ENTRIES = 5000;

/** The request, or the sentence that says what is missing. */
export function makePast(past: Past, who: string): RequestFor<"log past"> | string {
  const { columns, rows, undecided } = past;
  const asking = columns.find(({ event, ask, order }) => event !== "" && ask !== "" && order === null);
  if (asking !== undefined && undecided > 0) {
    return `Say first how “${asking.ask}” in “${asking.heading}” is meant.`;
  }
  if (rows.length === 0) return "There is no past day to write. Say above which column holds which.";
  if (rows.length > MOST_ENTRIES) {
    return `At most ${MOST_ENTRIES} entries can be written at once; these are ${rows.length}. Take one column at a time.`;
  }
  if (who === "") return "Type your name first, so that the log can say who brought this in.";
  return {
    ask: "log past",
    who,
    entries: rows.map(({ plant, day, event }) => ({
      // The same entry has the same Id whenever it is brought in, so that it is never written twice.
      id: stableId(nameKey(plant), day, nameKey(event)),
      day,
      plant,
      event,
    })),
  };
}
