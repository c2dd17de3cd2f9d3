/** A water report as it was typed or pasted, line by line: how each line is understood, or what has to be asked. */

import { readPrinted } from "./report-number.ts";
import {
  BASIS_BEHIND_UNIT,
  BASIS_IN_UNIT,
  BASIS_PATTERN,
  basisName,
  NOT_OURS,
  TERMS,
  type Term,
  UNITS,
  type UnitWord,
} from "./report-terms.ts";
import { sayNumber } from "./saying.ts";
import { LINE_UNITS, type WaterLine, type WaterLines } from "./water-lines.ts";

export interface Reading {
  readonly line: WaterLine;
  /** In the line's own unit, LINE_UNITS. */
  readonly value: number;
  /** "Nitrate 20 mg/L as NO3 is 4.52 mg/L NO3-N". */
  readonly words: string;
}

export interface ReportLine {
  readonly text: string;
  /** "read": one reading; "ask": choose among the readings; "passed over": no line of ours; "unclear": say it anew. */
  readonly status: "read" | "ask" | "passed over" | "unclear";
  readonly readings: readonly Reading[];
  /** What was understood, what is asked, or why it is left. */
  readonly words: string;
}

/** A unit named once for the whole report: "all values in mg/L". */
const HEADING = /\b(all|values?|results?|units?|concentrations?)\b/i;
/** Charges whose figure would run into the symbol or into the number: Ca2+, Ca+2, SO4 2-, SO42-; but not a range. */
const CHARGES: readonly (readonly [RegExp, string])[] = [
  [/[²³]?[⁺⁻]/g, ""],
  [/\b(ca|mg|fe|mn)\s?(?:[23]\s?\+|\+[23])/gi, "$1"],
  [/\b(so4|hpo4|co3)\s?(?:2\s?[-−]|[-−]2)(?!\w)/gi, "$1"],
  [/\b(po4)\s?(?:3\s?[-−]|[-−]3)(?!\w)/gi, "$1"],
];
/** "mg L-1", "µS cm⁻¹", "g m-3" with a slash. */
const slashed = (text: string): string =>
  text.replace(/[\s·.]+(l|cm|m)(?:\^?[-−]1|⁻¹)(?!\d)/gi, "/$1").replace(/[\s·.]+m(?:\^?[-−]3|⁻³)(?!\d)/gi, "/m3");
/** A formula that is left beside the name, "Orthophosphate (PO4)": its figures are no measurement. */
const FORMULA = /\b(?:[a-z]+\d(?!\d|[.,]\d))+/gi;
const SUBSCRIPTS: Readonly<Record<string, string>> = { "₂": "2", "₃": "3", "₄": "4", "₅": "5" };

/**
 * Reads a report, one substance a line. `unit` is what numbers without a unit are in, as the person was asked once;
 * a line "all values in mg/L" says it as well. A line that can be read in two ways has status "ask" with both
 * readings; nothing is guessed.
 */
export function readReport(text: string, options: { readonly unit?: "mg/L" | "mmol/L" | "meq/L" } = {}): ReportLine[] {
  let common = UNITS.find((unit) => unit.said === options.unit) ?? null;
  const lines: ReportLine[] = [];
  for (const line of text.split(/\r?\n/)) {
    if (line.trim() === "") continue;
    const heading = headingUnit(slashed(line));
    if (heading !== null) {
      common = heading;
      lines.push({
        text: line.trim(),
        status: "passed over",
        readings: [],
        words: `Numbers without a unit are taken as ${heading.said}.`,
      });
    } else lines.push(readLine(line.trim(), common));
  }
  return lines;
}

function headingUnit(line: string): UnitWord | null {
  if (!HEADING.test(line) || termIn(line) !== null) return null;
  const bare = line.replace(/m3/gi, "");
  return /\d/.test(bare) ? null : (UNITS.find((unit) => unit.pattern.test(line)) ?? null);
}

function termIn(text: string): Term | null {
  // the name stands before the first number that is not part of it, so the term that begins first wins
  let best: Term | null = null;
  let at = Number.POSITIVE_INFINITY;
  for (const term of TERMS) {
    const index = text.search(term.pattern);
    if (index >= 0 && index < at) {
      best = term;
      at = index;
    }
  }
  return best;
}

function readLine(text: string, common: UnitWord | null): ReportLine {
  let plain = slashed(text)
    // one space between words; between digits it may part thousands, or two numbers when there are more of them
    .replace(/(?<!\d)[^\S\t]+|[^\S\t]+(?!\d)/g, " ")
    .replace(/[₂₃₄₅]/g, (digit) => SUBSCRIPTS[digit] ?? digit)
    // wide, so that nothing joins what stands in two cells
    .replace(/[\t;|]/g, "   ")
    .replace(/\b\d+(?:[.,]\d+)?\s?[°º]\s?c\b/gi, " ");
  for (const [charge, symbol] of CHARGES) plain = plain.replace(charge, symbol);
  plain = plain.replace(BASIS_IN_UNIT, "$1$3 as $2").replace(BASIS_BEHIND_UNIT, "$1 as $2");
  const given = (status: ReportLine["status"], words: string): ReportLine => ({ text, status, readings: [], words });
  const term = NOT_OURS.test(plain) ? null : termIn(plain);
  if (term === null) return given("passed over", "Not among the lines kept here.");
  const words = term.pattern.exec(plain)?.[0] ?? "";

  const without = plain.replace(term.pattern, "  ");
  const basis = findBasis(without);
  const { units, rest } = takeUnits(without);
  if (units.length > 1) {
    return given(
      "unclear",
      `${term.name}: two units, ${units.map((unit) => unit.said).join(" and ")}. Leave one number with its unit.`,
    );
  }
  const [stranger] = units.filter(({ kind }) => (kind === "conductivity") !== (term.line === "EC"));
  if (stranger !== undefined) {
    const instead = term.line === "EC" ? "Give it in mS/cm or µS/cm" : "Check the unit";
    return given("unclear", `${term.name} in ${stranger.said} is not known. ${instead}.`);
  }
  const numbers = readPrinted(rest.replace(FORMULA, " "));
  if (numbers.length === 0) return given("unclear", `${term.name}: there is no number in this line.`);
  if (numbers.some(({ readings }) => readings.length === 0)) {
    return given("unclear", `${term.name}: the number cannot be read. Type one number, like 12.5.`);
  }
  if (numbers.some(({ readings }) => readings.some((value) => value < 0))) {
    return given("unclear", `${term.name} is below 0. Give a number of 0 or more.`);
  }
  if (basis !== null && term.bases[basis] === undefined) {
    const known = Object.keys(term.bases).join(" or ");
    return given(
      "unclear",
      `${term.name} as ${basis} is not known. ${known === "" ? "Leave it out" : `Use ${known}`}.`,
    );
  }
  const readings: Reading[] = [];
  const add = (reading: Reading | null) => {
    if (reading !== null && !readings.some((one) => one.value === reading.value && one.line === reading.line)) {
      readings.push(reading);
    }
  };
  for (const { readings: values, note } of numbers) {
    const printed = units[0] ?? (basis === null || common?.kind === "mass" ? common : MG_L);
    for (const unit of possibleUnits(term, printed, { values, text: rest })) {
      for (const base of possibleBases(term, basis, { unit, words })) {
        for (const value of values) {
          add(convert(term, value, { unit, base, note }));
          if (term.also !== undefined)
            add(convert({ ...term, line: term.also, name: term.also }, value, { unit, base: null, note }));
          // a mole of carbonate hardness or of CaCO3 is two equivalents, one of bicarbonate is one
          if (unit?.kind === "mmol" && /hardness|alkalinity/i.test(words) && term.line === "Alkalinity") {
            add(convert({ ...term, mgPerMmol: 2 * (term.mgPerMmol ?? 0) }, value, { unit, base, note: "of CaCO3" }));
          }
        }
      }
    }
  }
  const sensible = readings.filter(({ line, value }) => value <= most(line) && (line !== "EC" || value >= LEAST_EC));
  const [only] = sensible;
  if (only === undefined) return given("unclear", `${term.name}: no water holds that. Check the unit.`);
  if (sensible.length === 1) return { text, status: "read", readings: sensible, words: only.words };
  return {
    text,
    status: "ask",
    readings: sensible,
    words: `"${text}" can be read in ${sensible.length} ways. Which one is meant?`,
  };
}

function findBasis(text: string): string | null {
  const found = BASIS_PATTERN.exec(text);
  return found === null ? null : basisName(found[1] ?? found[2] ?? found[3] ?? "");
}

/** The units in a line, and what is left of it. */
function takeUnits(text: string): { readonly units: readonly UnitWord[]; readonly rest: string } {
  let rest = text;
  const units: UnitWord[] = [];
  for (const unit of UNITS) {
    if (!unit.pattern.test(rest)) continue;
    units.push(unit);
    rest = rest.replace(unit.pattern, "  ");
  }
  return { units, rest };
}

const MG_L = UNITS.find((unit) => unit.said === "mg/L") ?? null;
const bySaid = (said: string): UnitWord[] => UNITS.filter((unit) => unit.said === said);

/** The unit that is printed, or all that could be meant. */
function possibleUnits(
  term: Term,
  printed: UnitWord | null,
  { values, text }: { readonly values: readonly number[]; readonly text: string },
): (UnitWord | null)[] {
  if (term.line === "pH") return [null];
  if (term.line === "EC") {
    if (printed?.kind === "conductivity") return [printed];
    // 100 mS/cm is twice sea water, so a larger number without a unit can only be µS/cm
    return Math.min(...values) >= 100 ? bySaid("µS/cm") : [...bySaid("mS/cm"), ...bySaid("µS/cm")];
  }
  const degrees = ["°dH", "°fH", "°e"].flatMap(bySaid);
  const isHardness = term.line === "Hardness" || term.line === "Alkalinity";
  if (isHardness && /\bdegrees?\b|°/i.test(text)) return degrees;
  if (printed !== null && printed.kind !== "conductivity") return [printed];
  const masses = ["mg/L", "mmol/L"].flatMap(bySaid);
  return isHardness ? [...masses, ...degrees, ...bySaid("gpg")] : masses;
}

/** The basis that is printed, or all that could be meant; moles, equivalents and degrees say it by themselves. */
function possibleBases(
  term: Term,
  printed: string | null,
  { unit, words }: { readonly unit: UnitWord | null; readonly words: string },
): (string | null)[] {
  if (unit === null || unit.kind !== "mass") return [null];
  if (printed !== null) return [printed];
  // calcium hardness is printed as CaCO3 by definition
  if (/hardness/i.test(words)) return ["CaCO3"];
  return term.meant.length > 0 ? [...term.meant] : [null];
}

interface How {
  readonly unit: UnitWord | null;
  readonly base: string | null;
  readonly note: string;
}

function convert(term: Term, printed: number, { unit, base, note }: How): Reading | null {
  const { line } = term;
  const value = unit === null ? printed : inOwnUnit(term, printed * unit.factor, { kind: unit.kind, base });
  if (value === null) return null;
  const basis = base === null || base === line ? "" : ` as ${base}`;
  const own = LINE_UNITS[line];
  const first = `${term.name} ${sayNumber(printed)}${unit === null ? "" : ` ${unit.said}`}${basis}`;
  const same = unit === null || (unit.said === own.split(" ")[0] && (base === null || term.bases[base] === 1));
  const as = line.includes("-") ? ` as ${line.split("-")[1]}` : own.includes("CaCO3") ? " as CaCO3" : "";
  const after = note === "" ? "." : ` (${note}).`;
  return { line, value, words: `${first}${same ? "" : ` is ${sayNumber(value)} ${own.split(" ")[0]}${as}`}${after}` };
}

function inOwnUnit(
  term: Term,
  value: number,
  { kind, base }: { kind: UnitWord["kind"]; base: string | null },
): number | null {
  switch (kind) {
    case "conductivity":
    case "mass":
      return value * (base === null ? 1 : (term.bases[base] ?? Number.NaN));
    case "mmol":
      return term.mgPerMmol === null ? null : value * term.mgPerMmol;
    case "meq":
      return term.mgPerMmol === null || term.charge === 0 ? null : (value * term.mgPerMmol) / term.charge;
    case "degree":
      return term.bases.CaCO3 === undefined ? null : value * term.bases.CaCO3;
  }
}

/** mS/cm; laboratory water, far purer than any a plant gets, is about 0.001. */
const LEAST_EC = 0.001;
/** Sea water holds about 19 g/L of chloride; beyond it a reading is a slip. */
function most(line: WaterLine): number {
  if (line === "pH") return 14;
  if (line === "EC") return 100;
  return line === "Cl" || line === "Na" ? 20_000 : 5_000;
}

/** The lines that were read, later ones in place of earlier ones; `chosen` answers the lines that were asked about. */
export function linesOf(report: readonly ReportLine[], chosen: ReadonlyMap<number, number> = new Map()): WaterLines {
  const lines: Partial<Record<WaterLine, number>> = {};
  report.forEach(({ status, readings }, i) => {
    const reading = status === "read" ? readings[0] : readings[chosen.get(i) ?? -1];
    if (reading !== undefined) lines[reading.line] = reading.value;
  });
  return lines;
}
