/** The events that can be logged, and whether each disturbs roots. */

import { BUILT_IN_EVENTS, type EventKind } from "../core/roots.ts";
import { EVENTS } from "../sheet/list-tabs.ts";
import { readRows } from "../sheet/rows.ts";
import { type Loading, openTab } from "./loading.ts";

/** The rows of Events; the built-in list when there are none. */
export function readEvents(loading: Loading): readonly EventKind[] {
  const open = openTab(loading, EVENTS, ["Event", "Disturbs roots"]);
  if (!open) return BUILT_IN_EVENTS;
  const events: EventKind[] = [];
  for (const { fields, problems, where } of readRows(open.values, EVENTS, open.columns, loading.book.workbook.dayOf)) {
    for (const { sentence } of problems) loading.say.add("Events", sentence);
    if (problems.length > 0) continue;
    const event = String(fields.Event ?? "").trim();
    const disturbs = fields["Disturbs roots"];
    if (event === "") continue;
    if (typeof disturbs !== "boolean") {
      loading.say.add("Events", `${event} in ${where} does not say whether it disturbs roots. Write yes or no.`);
    } else events.push({ event, disturbsRoots: disturbs });
  }
  return events.length > 0 ? events : BUILT_IN_EVENTS;
}
