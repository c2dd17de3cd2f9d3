/** What a spreadsheet cell can hold, told apart by positive tests. */

/**
 * Gives the calendar day (days since 1970-01-01, in the spreadsheet's own time zone) of a host's
 * date value, or null when the value is no valid date. The host supplies it; nothing here knows Date.
 */
export type DayReader = (value: unknown) => number | null;

export type Cell =
  | { readonly kind: "blank" }
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "text"; readonly value: string }
  | { readonly kind: "boolean"; readonly value: boolean }
  | { readonly kind: "day"; readonly day: number }
  | { readonly kind: "error"; readonly text: string };

const BLANK: Cell = { kind: "blank" };

/** The spreadsheet's own error texts; hosts hand them over as strings or as Error objects. */
const ERROR_TEXT = /^#(?:N\/A|VALUE!|REF!|DIV\/0!|NUM!|NAME\?|NULL!|ERROR!|SPILL!|CALC!)$/;

/** Tells what `raw` is. Blank: '', null, undefined, or a text of spaces only. Anything unknown is an error cell. */
export function readCell(raw: unknown, dayOf: DayReader): Cell {
  if (raw === "" || raw === null || raw === undefined) return BLANK;
  if (typeof raw === "number") {
    return Number.isFinite(raw) ? { kind: "number", value: raw } : { kind: "error", text: String(raw) };
  }
  if (typeof raw === "boolean") return { kind: "boolean", value: raw };
  if (typeof raw === "string") {
    const value = raw.trim();
    if (value === "") return BLANK;
    return ERROR_TEXT.test(value) ? { kind: "error", text: value } : { kind: "text", value };
  }
  const day = dayOf(raw);
  return day === null ? { kind: "error", text: "an error" } : { kind: "day", day };
}

/** A heading as it is compared: case and all spaces ignored. */
export function headingKey(text: string): string {
  return text.toLowerCase().replace(/\s+/g, "");
}

/** A name (plant, feed, event) as it is compared: case, surrounding and repeated spaces ignored. */
export function nameKey(text: string): string {
  return text.trim().replace(/\s+/g, " ").toLowerCase();
}
