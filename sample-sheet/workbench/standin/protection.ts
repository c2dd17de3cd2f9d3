/** Protection of the host: a range that warns before it is edited, or is closed to others. */

import { type Book, type Range, tabById } from "./book.ts";
import { imitate } from "./gate.ts";
import type { Area, GridProtection } from "./grid.ts";

type Protection = GoogleAppsScript.Spreadsheet.Protection;

export const PROTECTION_TYPE = {
  RANGE: "RANGE",
  SHEET: "SHEET",
} as unknown as typeof GoogleAppsScript.Spreadsheet.ProtectionType;

export interface ProtectionParts {
  readonly book: Book;
  readonly tabId: number;
  readonly id: number;
  readonly rangeOf: (area: Area) => Range;
}

export function makeProtection({ book, tabId, id, rangeOf }: ProtectionParts): Protection {
  const tab = () => tabById(book, tabId);
  const now = (): GridProtection => {
    const found = tab()
      .protections()
      .find((each) => each.id === id);
    if (!found) throw new Error("The protection no longer exists.");
    return found;
  };
  const change = (name: string, patch: Partial<GridProtection>): Protection => {
    book.gate.reach(`Protection.${name}`, "write", () => tab().putProtection({ ...now(), ...patch }));
    return protection;
  };
  const protection: Protection = imitate<Protection>()("Protection", {
    getDescription: () => now().description,
    setDescription: (description: string) => change("setDescription", { description }),
    isWarningOnly: () => now().warningOnly,
    setWarningOnly: (warningOnly: boolean) => change("setWarningOnly", { warningOnly }),
    getProtectionType: () => PROTECTION_TYPE.RANGE,
    getRange: () => rangeOf(now().area),
    setRange: (range: Range) =>
      change("setRange", {
        area: {
          row: range.getRow(),
          column: range.getColumn(),
          rows: range.getNumRows(),
          columns: range.getNumColumns(),
        },
      }),
    remove: () => {
      book.gate.reach("Protection.remove", "write", () => tab().removeProtection(id));
    },
  });
  return protection;
}
