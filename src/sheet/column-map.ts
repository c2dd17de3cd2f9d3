/** Which column of a plant list of one's own is which, as it is kept in Settings: Plant: "Name"; Place: "Room". */

import { headingKey } from "../core/cell.ts";
import { BadInput } from "../core/errors.ts";
import { PLANTS } from "./list-tabs.ts";
import { PLANT_LIST_COLUMNS } from "./settings.ts";

/** Their heading by ours; a column that is not mapped is "" or not there. */
export type ColumnMap = Readonly<Record<string, string>>;

/** Quotes and line ends inside a heading are escaped as in JSON. */
export function columnMapText(map: ColumnMap): string {
  return PLANTS.columns
    .filter(({ heading }) => (map[heading] ?? "") !== "")
    .map(({ heading }) => `${heading}: ${JSON.stringify(map[heading])}`)
    .join("; ");
}

/** Reads what columnMapText wrote. Throws BadInput for a text that is not of this form. */
export function parseColumnMap(text: string): ColumnMap {
  const map: Record<string, string> = {};
  const rest = text.replace(/\s*([^:;"]+?)\s*:\s*("(?:[^"\\]|\\.)*")\s*(?:;|$)/g, (_, name: string, quoted: string) => {
    const ours = PLANTS.columns.find(({ heading }) => headingKey(heading) === headingKey(name));
    if (!ours) return name;
    try {
      map[ours.heading] = JSON.parse(quoted) as string;
      return "";
    } catch {
      return quoted;
    }
  });
  if (rest.trim() !== "" || map.Plant === undefined) {
    throw new BadInput(
      "column-map",
      `“${PLANT_LIST_COLUMNS}” in Settings is “${text}”. Choose your plant list again in the panel; it writes something like Plant: "Name"; Place: "Room".`,
    );
  }
  return map;
}
