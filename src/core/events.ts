/** Which events disturb roots: the built-in list and a table of one's own over it. */

import { nameKey } from "./cell.ts";
import { BadInput } from "./errors.ts";

export interface EventKind {
  readonly event: string;
  readonly disturbsRoots: boolean;
}

/** The event of a row that does nothing but take an earlier one back. */
export const TAKEN_BACK = "Taken back";

/** Taking decayed hairs off by hand leaves the living roots alone, so it is no disturbance. Common practice, no source. */
export const BUILT_IN_EVENTS: readonly EventKind[] = [
  { event: "Repot", disturbsRoots: true },
  { event: "Pot up", disturbsRoots: true },
  { event: "Root trim", disturbsRoots: true },
  { event: "Rinse out of pot", disturbsRoots: true },
  { event: "Move from soil", disturbsRoots: true },
  { event: "Division", disturbsRoots: true },
  { event: "Top up", disturbsRoots: false },
  { event: "Solution change", disturbsRoots: false },
  { event: "Flush in place", disturbsRoots: false },
  { event: "Decay removed", disturbsRoots: false },
  { event: "New leaf", disturbsRoots: false },
  { event: "New root", disturbsRoots: false },
  { event: "Reading", disturbsRoots: false },
  { event: "Note", disturbsRoots: false },
  { event: TAKEN_BACK, disturbsRoots: false },
];

/** Answers for any spelling of an event; names are normalised once for each spelling. */
export interface EventRule {
  /** The event as the list has it and whether it disturbs roots, or null when the list does not have it. */
  find(event: string): EventKind | null;
}

/**
 * A rule from the built-in list, overridden and extended event by event by `table`. Throws BadInput when the
 * table says both yes and no of one event.
 */
export function eventRule(table: Iterable<EventKind> = []): EventRule {
  const kinds = new Map<string, EventKind>(BUILT_IN_EVENTS.map((kind) => [nameKey(kind.event), kind]));
  const own = new Map<string, boolean>();
  for (const { event, disturbsRoots } of table) {
    const key = nameKey(event);
    if (key === "") continue;
    const before = own.get(key);
    if (before !== undefined && before !== disturbsRoots) {
      throw new BadInput(
        "event-twice",
        `The list of events says both yes and no of "${event.trim()}". Leave one of the two rows.`,
      );
    }
    own.set(key, disturbsRoots);
    kinds.set(key, { event: event.trim(), disturbsRoots });
  }
  const bySpelling = new Map<string, EventKind | null>();
  return {
    find(event) {
      let kind = bySpelling.get(event);
      if (kind === undefined) {
        kind = kinds.get(nameKey(event)) ?? null;
        bySpelling.set(event, kind);
      }
      return kind;
    },
  };
}
