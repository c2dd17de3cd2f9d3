/**
 * The text in the Doses column of the Batch log, for people and for the add-on:
 *
 *     doses := dose ("; " dose)*
 *     dose  := name " " number " " unit "/L (" number " " unit ")"      unit := "g" | "mL"
 *     name  := text without ; and " and without spaces or line ends at its ends, or "text in quotes" with "" for "
 *
 * as in: Calcium nitrate 1.25 g/L (12.5 g); Epsom salt 0.5 g/L (5 g). The first number is per litre, the one
 * in brackets for the whole batch. Numbers have six significant figures, finer than any scale at hand.
 */

import { BadInput, isBadInput } from "./errors.ts";

export interface LoggedDose {
  readonly feed: string;
  /** g or mL, as `unit` says. */
  readonly perLitre: number;
  readonly unit: "g" | "mL";
  readonly perBatch: number;
}

const FIGURES = 6;

/** Plain decimals, "0.00001" rather than "1e-5". */
export function numberText(value: number): string {
  const rounded = Number(value.toPrecision(FIGURES));
  const text = String(rounded);
  return text.includes("e") ? rounded.toFixed(20).replace(/\.?0+$/, "") : text;
}

/** A name that may stand beside semicolons: in quotes where it needs them. */
export function nameText(name: string): string {
  return /[;"]|^\s|\s$|^$/.test(name) ? `"${name.split('"').join('""')}"` : name;
}

export function dosesText(doses: readonly LoggedDose[]): string {
  return doses
    .map(
      ({ feed, perLitre, unit, perBatch }) =>
        `${nameText(feed)} ${numberText(perLitre)} ${unit}/L (${numberText(perBatch)} ${unit})`,
    )
    .join("; ");
}

const DOSE = /^([\s\S]+) (\d+(?:\.\d+)?) (g|mL)\/L \((\d+(?:\.\d+)?) (g|mL)\)$/;

/** The name behind what nameText wrote. */
export function nameOfText(text: string): string {
  return text.startsWith('"') ? text.slice(1, -1).split('""').join('"') : text;
}

/** Cuts at semicolons outside quotes. */
export function parts(text: string): string[] {
  const cut: string[] = [];
  let start = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    if (text[at] === '"') quoted = !quoted;
    if (text[at] !== ";" || quoted) continue;
    cut.push(text.slice(start, at));
    start = at + 1;
  }
  cut.push(text.slice(start));
  return cut.map((part) => part.replace(/^ /, ""));
}

function parseDose(part: string): LoggedDose {
  const found = DOSE.exec(part);
  const [, name = "", perLitre, unit, perBatch, unitAgain] = found ?? [];
  if (!found || unit !== unitAgain) {
    throw new BadInput(
      "doses",
      `“${part}” is not a dose. A dose looks like this: Calcium nitrate 1.25 g/L (12.5 g); the next one follows after a semicolon.`,
    );
  }
  return {
    feed: nameOfText(name),
    perLitre: Number(perLitre),
    unit: unit === "mL" ? "mL" : "g",
    perBatch: Number(perBatch),
  };
}

/** Reads what dosesText wrote. Throws BadInput for a text that is not of this form, quoting the part that is not. */
export function parseDoses(text: string): LoggedDose[] {
  return parts(text).map(parseDose);
}

/** The same, dose by dose: one that cannot be read comes as its text and the sentence that says so. */
export function readDoses(text: string): (LoggedDose | { readonly part: string; readonly sentence: string })[] {
  return parts(text).map((part) => {
    try {
      return parseDose(part);
    } catch (error) {
      if (!isBadInput(error)) throw error;
      return { part, sentence: error.message };
    }
  });
}
