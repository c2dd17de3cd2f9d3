/** How numbers are said in sentences: three figures, never in powers of ten. */

/** For sentences only, never for arithmetic: whole from 100 up, three significant figures below. */
export function sayNumber(value: number): string {
  const size = Math.abs(value);
  if (size >= 100) return String(Math.round(value));
  if (size < 1e-6) return "0";
  return Number(value.toPrecision(3))
    .toFixed(9)
    .replace(/\.?0+$/, "");
}

/** A number as it was given, in quotes-free plain form: 0.00001 rather than 1e-5. */
export function sayGiven(value: number): string {
  const size = Math.abs(value);
  if (size < 1e-6 && size >= 1e-12) return value.toFixed(15).replace(/0+$/, "");
  return String(value);
}

/** Joins words as one says them: "N", "N or S", "N, S or Cl". */
export function sayList(words: readonly string[], last: "or" | "and"): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} ${last} ${words[words.length - 1]}`;
}

/** Said when something was being written and its outcome did not come back. */
export const MAY_HAVE_SAVED = "It may have saved this all the same. Trying again is safe: nothing is written twice.";
