/** Months by their English names. */

const MONTHS = "january february march april may june july august september october november december".split(" ");

/** 1 to 12 for "April" or its first three letters or more, whatever the case; null for anything else. */
export function monthNamed(word: string): number | null {
  const text = word.toLowerCase();
  const at = MONTHS.findIndex((month) => text.length >= 3 && month.startsWith(text));
  return at === -1 ? null : at + 1;
}
