/** `npm run bench`: how long the shipped script takes, beside the aims; exits with 1 when an aim is missed. */

import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync } from "node:fs";
import vm from "node:vm";
import { buildSync } from "esbuild";
import { madeLog } from "./log.ts";

const CODE = readFileSync("dist/Code.js", "utf8");
/** 2026-11-25 as days since 1970-01-01. */
const AS_OF = 20782;
const DAY_MS = 86_400_000;

type Call = (...args: unknown[]) => unknown;

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] as number;
}

function time(times: number, work: () => unknown): number {
  work();
  return median(
    Array.from({ length: times }, () => {
      const started = performance.now();
      work();
      return performance.now() - started;
    }),
  );
}

/** A realm as bare as the host's, with the one service the formulas ask for. */
function freshRealm(): vm.Context {
  const realm = vm.createContext({
    SpreadsheetApp: { getActive: () => ({ getSpreadsheetTimeZone: () => "Etc/UTC" }) },
  });
  return realm;
}

function loadTime(): number {
  // A script compiled anew each time, as a call on the host does it.
  return median(
    Array.from({ length: 31 }, (_, at) => {
      const realm = freshRealm();
      const source = `${CODE}\n// ${at}`;
      const started = performance.now();
      vm.runInContext(source, realm);
      return performance.now() - started;
    }),
  );
}

const realm = freshRealm();
vm.runInContext(CODE, realm);
const shipped = (name: string): Call => vm.runInContext(name, realm) as Call;
const dateInRealm = vm.runInContext("(ms) => new Date(ms)", realm) as (ms: number) => unknown;

function restTime(plantCount: number, rowCount: number): { ms: number; answers: unknown[] } {
  const { plants, rows } = madeLog(plantCount, rowCount);
  const log = [
    ["Date", "Plant", "Event"],
    ...rows.map(({ day, plant, event }) => [dateInRealm(day * DAY_MS), plant, event]),
  ];
  const keys = plants.map((plant) => [plant]);
  const asOf = dateInRealm(AS_OF * DAY_MS);
  const rest = shipped("ROOT_REST");
  const answers = rest(keys, log, asOf) as unknown[][];
  return { ms: time(rowCount > 20_000 ? 9 : 21, () => rest(keys, log, asOf)), answers: answers.map((row) => row[0]) };
}

/** Drinking and all that is due, over a whole log. */
function potTime(name: string, plantCount: number, rowCount: number): number {
  const { plants, rows } = madeLog(plantCount, rowCount);
  const log = [
    ["Date", "Plant", "Event", "Amount mL", "Who"],
    ...rows.map(({ day, plant, event }, at) => [dateInRealm(day * DAY_MS), plant, event, 20 + (at % 90), "Ines"]),
  ];
  const keys = plants.map((plant) => [plant]);
  const asOf = dateInRealm(AS_OF * DAY_MS);
  const formula = shipped(name);
  return time(7, () => formula(keys, log, asOf));
}

function nativeTime(plantCount: number, rowCount: number): { ms: number; answers: unknown[] } {
  mkdirSync(".cache/bench", { recursive: true });
  buildSync({
    entryPoints: ["test/bench/native.ts"],
    outfile: ".cache/bench/native.cjs",
    bundle: true,
    platform: "node",
    format: "cjs",
    logLevel: "error",
    define: { "process.env.NODE_ENV": '"production"' },
  });
  const printed = execFileSync("node", [".cache/bench/native.cjs", String(plantCount), String(rowCount)], {
    encoding: "utf8",
    maxBuffer: 64 << 20,
  });
  return JSON.parse(printed) as { ms: number; answers: unknown[] };
}

function solveTime(): number {
  const elements = ["N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "Zn", "B", "Cu", "Mo"];
  const target = [elements, [210, 31, 235, 200, 48.6, 64, 2, 0.5, 0.05, 0.5, 0.02, 0.011]];
  const headings = ["Feed", "Basis", "Origin", "Analysis published", ...elements];
  // Twelve feeds, each holding three elements in shares that no other has.
  const feeds = [
    headings,
    ...elements.map((symbol, at) => [
      `Feed for ${symbol}`,
      "w/w",
      "mineral",
      true,
      ...elements.map((_, to) => (to === at ? 12 : to === (at + 5) % 12 ? 4 + at / 7 : to === (at + 7) % 12 ? 2 : "")),
    ]),
  ];
  const solve = shipped("FEED_SOLVE");
  return time(301, () => solve(target, feeds));
}

/** Percent by formula weight [CIAAW 2021]; the last is a mix of trace elements, invented. */
const BENCH_FEEDS = [
  ["Feed", "N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "Zn", "B", "Cu", "Mo"],
  ["Calcium nitrate 4-hydrate", 11.863, "", "", 16.972, "", "", "", "", "", "", "", ""],
  ["Potassium nitrate", 13.854, "", 38.672, "", "", "", "", "", "", "", "", ""],
  ["Monopotassium phosphate", "", 22.761, 28.731, "", "", "", "", "", "", "", "", ""],
  ["Magnesium sulfate 7-hydrate", "", "", "", "", 9.861, 13.008, "", "", "", "", "", ""],
  ["Potassium sulfate", "", "", 44.874, "", "", 18.398, "", "", "", "", "", ""],
  ["Monoammonium phosphate", 12.177, 26.927, "", "", "", "", "", "", "", "", "", ""],
  ["Magnesium nitrate 6-hydrate", 10.925, "", "", "", 9.479, "", "", "", "", "", "", ""],
  ["Trace mix", "", "", "", "", 1.2, "", 7, 2, 0.4, 1.3, 0.1, 0.06],
];

/** 8 feeds and 12 elements, 10 litres, a scale in steps of 0.1 g; another target each time. */
function measuredTime(): number {
  const elements = ["N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "Zn", "B", "Cu", "Mo"];
  const solve = shipped("FEED_SOLVE");
  let at = 0;
  return time(51, () => {
    at += 1;
    const strength = 0.5 + (at % 50) / 100;
    const wanted = [210, 31, 235, 200, 48.6, 64, 2, 0.5, 0.05, 0.5, 0.02, 0.011].map((mgL) => mgL * strength);
    return solve([elements, wanted], BENCH_FEEDS, "", 10, 0.1);
  });
}

/** A hard tap water with all its lines, worked out whole: pairs, indices, EC. */
function stateTime(): number {
  const ions = ["Ca", "Mg", "Na", "K", "Alkalinity", "SO4", "Cl", "NO3"];
  const state = shipped("WATER_STATE");
  let at = 0;
  return time(501, () => {
    at += 1;
    // Another water each time, so that nothing is answered from before.
    return state([ions, [85 + at / 50, 43, 92, 2.9, 297, 89, 131, 20]], 7 + (at % 50) / 50);
  });
}

interface Row {
  what: string;
  measured: string;
  aim: string;
  met: boolean;
}
const table: Row[] = [];
function row(what: string, measured: number, unit: string, aim: { atMost?: number; atLeast?: number }): void {
  const { atMost, atLeast } = aim;
  table.push({
    what,
    measured: `${measured >= 100 ? measured.toFixed(0) : measured.toPrecision(3)} ${unit}`,
    aim: atMost !== undefined ? `≤ ${atMost} ${unit}` : atLeast !== undefined ? `≥ ${atLeast} ${unit}` : "",
    met: measured <= (atMost ?? Number.POSITIVE_INFINITY) && measured >= (atLeast ?? Number.NEGATIVE_INFINITY),
  });
}

row("dist/Code.js, minified", Buffer.byteLength(CODE) / 1000, "kB", { atMost: 120 });
row("load in a fresh realm, median of 31", loadTime(), "ms", { atMost: 10 });
row("FEED_SOLVE, 12 feeds × 12 elements", solveTime(), "ms", { atMost: 1 });
row("FEED_SOLVE on steps of 0.1 g, 8 feeds × 12 elements", measuredTime(), "ms", { atMost: 50 });
row("WATER_STATE, a whole water", stateTime(), "ms", { atMost: 0.3 });
const rest = [
  [200, 10_000],
  [200, 100_000],
  [2_000, 10_000],
  [2_000, 100_000],
].map(([plants, rows]) => {
  const timed = restTime(plants as number, rows as number);
  const aim = plants === 2_000 && rows === 100_000 ? { atMost: 200 } : {};
  row(`ROOT_REST, ${plants} plants × ${rows} log rows`, timed.ms, "ms", aim);
  return timed;
});
const growth = (rest[3] as { ms: number }).ms / (rest[2] as { ms: number }).ms;
row("growth of ROOT_REST from 10,000 to 100,000 rows (linear is 10)", growth, "times", { atMost: 13 });

row("POT_USE, 2000 plants × 100000 log rows", potTime("POT_USE", 2_000, 100_000), "ms", { atMost: 400 });
row("POT_DUE, 2000 plants × 100000 log rows", potTime("POT_DUE", 2_000, 100_000), "ms", { atMost: 1_000 });

const ours = rest[2] as { ms: number; answers: unknown[] };
const native = nativeTime(2_000, 10_000);
row("native, one MAXIFS a plant, 2000 × 10000", native.ms, "ms", {});
row("ROOT_REST faster than native at 2000 × 10000", native.ms / ours.ms, "times", { atLeast: 50 });
const differ = ours.answers.filter((days, at) => {
  // Where nothing matches, the engine's MAXIFS leaves an empty cell.
  const last = native.answers[at];
  return days === "" ? last !== "" : last !== AS_OF - (days as number);
}).length;
if (differ > 0) throw new Error(`${differ} plants differ between ROOT_REST and the native formulas.`);

console.log("| what | measured | aim | met |\n| --- | --- | --- | --- |");
for (const { what, measured, aim, met } of table) {
  console.log(`| ${what} | ${measured} | ${aim} | ${aim === "" ? "" : met ? "yes" : "NO"} |`);
}
process.exit(table.every(({ met }) => met) ? 0 : 1);
