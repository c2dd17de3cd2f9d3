/** Ids for rows: made here once per record, so that a press that is sent again writes nothing twice. */

/** Where ids come from; the browser's own generator, or a known row of ids in a test. */
export type NewId = () => string;

/** A random UUID (RFC 9562, version 4), lower case. */
export const randomId: NewId = () => {
  if (typeof crypto.randomUUID === "function") return crypto.randomUUID();
  // randomUUID is missing where the page did not come over a secure connection; random bytes are not.
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
};
