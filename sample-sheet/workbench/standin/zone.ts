/** Date cells: a number of days since 1899-12-30 in the spreadsheet's own time zone, to and from an instant. */

const DAY_MS = 86_400_000;
/** Days from 1899-12-30 to 1970-01-01. */
const EPOCH_DAYS = 25_569;
const QUARTER_MS = 900_000;

const formats = new Map<string, Intl.DateTimeFormat>();
const offsets = new Map<string, number>();

function formatFor(zone: string): Intl.DateTimeFormat {
  let format = formats.get(zone);
  if (format === undefined) {
    format = new Intl.DateTimeFormat("en-GB", {
      timeZone: zone,
      calendar: "gregory",
      hourCycle: "h23",
      year: "numeric",
      month: "numeric",
      day: "numeric",
      hour: "numeric",
      minute: "numeric",
      second: "numeric",
    });
    formats.set(zone, format);
  }
  return format;
}

/** Zone time minus UTC at an instant, ms. */
function offsetMs(zone: string, instantMs: number): number {
  const quarter = Math.floor(instantMs / QUARTER_MS);
  const key = `${zone} ${quarter}`;
  const known = offsets.get(key);
  if (known !== undefined) return known;
  const at = quarter * QUARTER_MS;
  const part: Record<string, number> = {};
  for (const { type, value } of formatFor(zone).formatToParts(at)) part[type] = Number(value);
  const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = part;
  const offset = Date.UTC(year, month - 1, day, hour, minute, second) - at;
  if (offsets.size > 50_000) offsets.clear();
  offsets.set(key, offset);
  return offset;
}

/** The instant at which a clock in `zone` shows this serial; the first one after a gap when it never does. */
export function instantOfSerial(serial: number, zone: string): number {
  const wallMs = Math.round((serial - EPOCH_DAYS) * DAY_MS);
  const before = wallMs - offsetMs(zone, wallMs - DAY_MS);
  const after = wallMs - offsetMs(zone, wallMs + DAY_MS);
  if (before + offsetMs(zone, before) === wallMs) return before;
  if (after + offsetMs(zone, after) === wallMs) return after;
  return Math.max(before, after);
}

/** What a clock in `zone` shows at an instant, as a serial. */
export function serialOfInstant(instantMs: number, zone: string): number {
  return (instantMs + offsetMs(zone, instantMs)) / DAY_MS + EPOCH_DAYS;
}

/** Serial of a civil date, or null when there is no such day. */
export function serialOfCivil(year: number, month: number, day: number): number | null {
  const ms = Date.UTC(year, month - 1, day);
  const back = new Date(ms);
  if (back.getUTCFullYear() !== year || back.getUTCMonth() !== month - 1 || back.getUTCDate() !== day) return null;
  return ms / DAY_MS + EPOCH_DAYS;
}

export function civilOfSerial(serial: number): { year: number; month: number; day: number } {
  const date = new Date(Math.floor(serial - EPOCH_DAYS) * DAY_MS);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}
