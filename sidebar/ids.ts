/** Ids for rows: made here once per record, so that a press that is sent again writes nothing twice. */

/** Where ids come from; the browser's own generator, or a known row of ids in a test. */
export type NewId = () => string;

/**
 * A UUID of version 7 (RFC 9562, 5.7), lower case: 48 bits of Unix time in ms, the rest random. The time lets the
 * household hear how long ago a row was begun, which the log's days cannot say.
 */
export function idMadeAt(unixMs: number): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const time = Math.floor(unixMs).toString(16).padStart(12, "0");
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x70;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = time + Array.from(bytes.subarray(6), (byte) => byte.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

const TIMED = /^([0-9a-f]{8})-([0-9a-f]{4})-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

/** When a row with this id was begun, Unix time in ms; null for an id that does not say. */
export function timeOfId(id: string): number | null {
  const found = TIMED.exec(id);
  return found === null ? null : Number.parseInt(`${found[1]}${found[2]}`, 16);
}

const MINUTE_MS = 60_000;
/** Beyond this a row was begun on another day, or by a clock that is wrong. */
const MOST_MINUTES = 20 * 60;

/** "an hour ago"; null when the id does not say, or what it says cannot be today. */
export function agoWords(id: string, nowMs: number): string | null {
  const begun = timeOfId(id);
  if (begun === null) return null;
  const minutes = Math.round((nowMs - begun) / MINUTE_MS);
  if (minutes < -1 || minutes > MOST_MINUTES) return null;
  if (minutes < 2) return "just now";
  if (minutes < 50) return `${minutes} minutes ago`;
  const hours = Math.round(minutes / 60);
  return hours < 2 ? "an hour ago" : `${hours} hours ago`;
}
