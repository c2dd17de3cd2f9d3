/** What the reports of Stryker say, and which survivors have their reason in `survivors/`. */

import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";

/** Where reports, sandboxes and what is known from earlier runs are kept. */
export const KEPT = ".cache/mutation";
/** One file for each of the source: `survivors/core/goals.json`. */
const REASONS = "test/mutation/survivors";

interface Mutant {
  readonly status: string;
  readonly replacement?: string;
  readonly location: { readonly start: Place; readonly end: Place };
}
interface Place {
  readonly line: number;
  readonly column: number;
}
interface Report {
  readonly files: Readonly<Record<string, { readonly source: string; readonly mutants: readonly Mutant[] }>>;
}
/** One change that no test noticed: where it stands, what was there, what came in its place, and why that may be. */
interface Survivor {
  readonly file: string;
  readonly line: string;
  readonly was: string;
  readonly became: string;
  readonly why: string;
}

const KILLED = new Set(["Killed", "Timeout"]);
const ALIVE = new Set(["Survived", "NoCoverage"]);
const LONGEST = 100;

function short(text: string): string {
  return text.replace(/\s+/g, " ").trim().slice(0, LONGEST);
}

/** The text between two places of a source; lines and columns are counted from 1. */
function between(lines: readonly string[], { start, end }: Mutant["location"]): string {
  const cut = lines.slice(start.line - 1, end.line);
  const last = cut.length - 1;
  return cut
    .map((line, at) => line.slice(at === 0 ? start.column - 1 : 0, at === last ? end.column - 1 : undefined))
    .join("\n");
}

function key({ file, line, was, became }: Survivor): string {
  return [file, line, was, became].join("\u0000");
}

function reasons(): ReadonlyMap<string, string> {
  const known = new Map<string, string>();
  for (const name of readdirSync(REASONS, { encoding: "utf8", recursive: true })) {
    if (!name.endsWith(".json")) continue;
    const listed = JSON.parse(readFileSync(path.join(REASONS, name), "utf8")) as readonly Survivor[];
    for (const one of listed) known.set(key(one), one.why);
  }
  return known;
}

interface Scores {
  readonly tallies: ReadonlyMap<string, { killed: number; late: number; alive: number }>;
  readonly survivors: readonly Survivor[];
}

const RANKS = ["NoCoverage", "Survived", "Timeout", "Killed"];

/** Every change of today's sources that some run tried; it counts as noticed when one of the runs noticed it. */
function tried(): ReadonlyMap<string, readonly Mutant[]> {
  const files = new Map<string, Map<string, Mutant>>();
  for (const name of readdirSync(KEPT).filter((each) => each.endsWith(".report.json"))) {
    const report = JSON.parse(readFileSync(path.join(KEPT, name), "utf8")) as Report;
    for (const [file, { source, mutants }] of Object.entries(report.files)) {
      if (!existsSync(file) || readFileSync(file, "utf8") !== source) continue;
      const known = files.get(file) ?? new Map<string, Mutant>();
      files.set(file, known);
      for (const mutant of mutants) {
        const { start, end } = mutant.location;
        const place = [start.line, start.column, end.line, end.column, mutant.replacement].join(" ");
        const before = known.get(place);
        if (!before || RANKS.indexOf(mutant.status) > RANKS.indexOf(before.status)) known.set(place, mutant);
      }
    }
  }
  return new Map([...files].map(([file, known]) => [file, [...known.values()]]));
}

/** Where in these files (in all when none is named) changes went unnoticed, as Stryker takes places. */
export function unnoticed(files: readonly string[]): string[] {
  return [...tried()].flatMap(([file, mutants]) =>
    files.length > 0 && !files.includes(file)
      ? []
      : mutants
          .filter(({ status }) => ALIVE.has(status))
          .map(({ location: { start, end } }) => `${file}:${start.line}:${start.column - 1}-${end.line}:${end.column}`),
  );
}

function read(): Scores {
  const known = reasons();
  const tallies = new Map<string, { killed: number; late: number; alive: number }>();
  const survivors: Survivor[] = [];
  for (const [file, mutants] of tried()) {
    const lines = readFileSync(file, "utf8").split("\n");
    for (const { status, location, replacement = "" } of mutants) {
      for (const group of ["all", path.dirname(file), file]) {
        const tally = tallies.get(group) ?? { killed: 0, late: 0, alive: 0 };
        tallies.set(group, tally);
        if (KILLED.has(status)) tally.killed++;
        if (status === "Timeout") tally.late++;
        if (ALIVE.has(status)) tally.alive++;
      }
      if (!ALIVE.has(status)) continue;
      const line = short(lines[location.start.line - 1] ?? "");
      const found = { file, line, was: short(between(lines, location)), became: short(replacement) };
      survivors.push({ ...found, why: known.get(key({ ...found, why: "" })) ?? "" });
    }
  }
  return { tallies, survivors };
}

/** A line a folder and file: changes, share noticed, of which by running out of time, survivors with a reason. */
export function table(): string {
  const { tallies, survivors } = read();
  const rows = [...tallies].sort(([a], [b]) => (a < b ? -1 : 1));
  return rows
    .filter(([, { killed, alive }]) => killed + alive > 0)
    .map(([group, { killed, late, alive }]) => {
      const share = (count: number): string => `${((100 * count) / (killed + alive)).toFixed(1)} %`;
      const own = survivors.filter(({ file }) => group === "all" || file === group || path.dirname(file) === group);
      const explained = own.filter(({ why }) => why !== "").length;
      return `| \`${group}\` | ${killed + alive} | ${share(killed)} | ${share(late)} | ${explained} of ${alive} |`;
    })
    .join("\n");
}

/** The survivors of these files (of all when none is named) that have no reason yet, ready to be given one. */
export function unexplained(files: readonly string[]): string {
  const open = read().survivors.filter(({ file, why }) => why === "" && (files.length === 0 || files.includes(file)));
  return JSON.stringify(open, undefined, 1);
}
