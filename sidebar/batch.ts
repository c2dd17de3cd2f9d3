/** What is being put together in "Mix a batch": read from the draft, worked out at every key. */

import { nameKey } from "../src/core/cell.ts";
import type { Cost } from "../src/core/cost.ts";
import { measureUnit } from "../src/core/dose.ts";
import type { Amounts } from "../src/core/elements.ts";
import type { Feed } from "../src/core/feeds.ts";
import { sayList } from "../src/core/saying.ts";
import type { NotReached } from "../src/core/solve.ts";
import type { StockOf } from "../src/core/tool-text.ts";
import type { BatchDraft } from "./batch-draft.ts";
import { repeatResult } from "./batch-repeat.ts";
import { chosenFeeds, type Shelf } from "./batch-shelf.ts";
import { type Chosen, type Result, typedDoses, typedResult } from "./batch-typed.ts";
import { type Choice, chosen, namedWater, PURE_WATER } from "./choices.ts";
import { goalsOf } from "./goals-draft.ts";
import type { Way } from "./measuring-ways.ts";
import { findDoses, type Measured } from "./mix-doses.ts";
import { ecOfWater } from "./mix-state.ts";
import type { PastBatch } from "./past-batch.ts";
import type { HouseTools } from "./tools.ts";
import { type Typed, typedNumber } from "./typed.ts";

export interface DoseLine {
  readonly feed: string;
  /** Of `unit` for each litre. */
  readonly perLitre: number;
  readonly unit: "g" | "mL";
  /** Of `unit` for the batch: measured out where tools are known; null without litres. */
  readonly perBatch: number | null;
  /** What measures `perBatch` to its last figure; null where it is a number to be rounded as it is shown. */
  readonly measuredBy: Way["kind"] | null;
  /** How to measure it, where g or mL alone do not say it; "" otherwise. */
  readonly how: string;
  /** The stock solution it is dosed from; null where it is measured as it is. */
  readonly stock: Way["stock"];
}

export interface Worked {
  readonly litres: Typed;
  readonly water: Choice | null;
  readonly target: Choice | null;
  readonly feeds: readonly Feed[];
  /** What is still to be chosen or typed before there is a result: "Choose a water." */
  readonly missing: string | null;
  /** Why there is no result although everything was chosen. */
  readonly problem: string | null;
  /** One for each chosen feed with a dose, also those of 0; empty while something is missing. */
  readonly lines: readonly DoseLine[];
  /** mg/L; null while something is missing. */
  readonly reached: Amounts | null;
  /** mg/L that are aimed at, after strength and ratios; null without a target. */
  readonly aimed: Amounts | null;
  /** How measuring fares; null where doses are typed or not measured. */
  readonly measured: Measured | null;
  /** Sentences on what holds the mix back, and on tools that are missing. */
  readonly notices: readonly string[];
  readonly cost: Cost | null;
  /** What cannot be reached and why. */
  readonly notReached: readonly NotReached[];
  /** Chosen feeds that are not in `lines`, as their dose is blank or cannot be read. */
  readonly uncounted: readonly string[];
  /** Set where an old batch is repeated of which something changed since: its numbers are those of the log. */
  readonly asLogged: PastBatch | null;
  /** Feed → what is wrong with the dose typed for it. */
  readonly doses: Readonly<Record<string, Typed>>;
}

/** More than this a person does not mix at once; it also settles what "1.234" means. */
const MOST_LITRES = 1000;

/** What a batch depends on; the date and the note are typed without working it out anew. */
function keyOf(draft: BatchDraft): string {
  const { mode, water, target, feeds, litres, doses, units, measureBy, stocks, dry, goals, past, corrects } = draft;
  return JSON.stringify([
    mode,
    water,
    target,
    feeds,
    litres,
    doses,
    units,
    measureBy,
    stocks,
    dry,
    goals,
    past?.id,
    corrects,
  ]);
}

let last: { readonly key: string; readonly shelf: Shelf; readonly worked: Worked } | null = null;

/** Works the batch out, once for the same draft and shelf. */
export function work(draft: BatchDraft, shelf: Shelf): Worked {
  const key = keyOf(draft);
  if (last?.key !== key || last.shelf !== shelf) last = { key, shelf, worked: workOut(draft, shelf) };
  return last.worked;
}

function workOut(draft: BatchDraft, shelf: Shelf): Worked {
  const water = chosen(shelf.waters, draft.water);
  const target = chosen(shelf.targets, draft.target);
  const feeds = chosenFeeds(draft, shelf);
  const doses = draft.mode === "doses" ? typedDoses(draft, feeds) : {};
  const basis = {
    litres: typedNumber(draft.litres, { what: "The batch", unit: "L", min: 0, max: MOST_LITRES }),
    water,
    target,
    feeds,
    doses,
    lines: [],
    reached: null,
    aimed: target?.amounts ?? null,
    measured: null,
    notices: [],
    cost: null,
    notReached: [],
    uncounted: [],
    asLogged: null,
    problem: null,
  };
  if (draft.mode === "repeat" && draft.past !== null) {
    return { ...basis, missing: null, ...repeated(draft.past, draft, shelf, basis.litres.value || null) };
  }
  const toChoose = [
    ...(water === null ? ["a water"] : []),
    ...(target === null && needsTarget(draft) ? ["a target"] : []),
    ...(feeds.length === 0 ? ["at least one feed"] : []),
  ];
  if (water === null || toChoose.length > 0) return { ...basis, missing: `Choose ${sayList(toChoose, "and")}.` };
  try {
    return { ...basis, ...result(draft, shelf, { water, target, feeds, doses, litres: basis.litres }) };
  } catch (error) {
    if (error instanceof Error) return { ...basis, missing: null, problem: error.message };
    throw error;
  }
}

/** Water and target are those of the old batch, also where they are no longer in the sheet. */
function repeated(past: PastBatch, draft: BatchDraft, shelf: Shelf, litres: number | null): Partial<Worked> {
  const gone = (name: string): Choice | null => (name === "" ? null : { key: "", name, amounts: {} });
  const water = namedWater(shelf.waters, past.water) ?? gone(past.water);
  const target = chosen(shelf.targets, nameKey(past.target)) ?? gone(past.target);
  // What is corrected was measured already.
  const by = draft.corrects === "" ? draft.measureBy : "any";
  const measuring = { tools: shelf.tools, by, stocks: stocksOf(draft, shelf.tools) } as const;
  const { asLogged, ...found } = repeatResult(past, litres, { shelf, measuring, water: water?.amounts ?? {} });
  const aimed = target === null || target.key === "" ? null : target.amounts;
  return { ...found, water: water ?? PURE_WATER, target, aimed, asLogged: asLogged ? past : null };
}

/** Ratios with a strength are a goal of their own. */
function needsTarget({ mode, goals }: BatchDraft): boolean {
  if (mode !== "target") return false;
  const { strength, ratios } = goalsOf(goals);
  return strength === null || ratios.length === 0;
}

function result(draft: BatchDraft, shelf: Shelf, { water, target, feeds, doses, litres }: Chosen): Result {
  if (draft.mode === "doses") return typedResult(draft, { water, target, feeds, doses, litres });
  const goals = goalsOf(draft.goals);
  const stocks = stocksOf(draft, shelf.tools);
  const found = findDoses({
    wanted: target?.amounts ?? {},
    feeds,
    water: water.amounts,
    litres: litres.value === 0 ? null : litres.value,
    measuring: { tools: shelf.tools, by: draft.measureBy, stocks },
    goals,
    ecOf: ecOfWater(water, shelf.waterRows),
    packOf: shelf.packOf,
    onHandOf: shelf.onHandOf,
  });
  const { measured } = found;
  return {
    missing: null,
    lines: found.doses.map(({ feed, perLitre, perBatch }, at) => {
      const way = measured?.ways[at] ?? null;
      const how = way === null || perBatch === null || perBatch === 0 ? "" : way.words(perBatch);
      return {
        feed: feed.name,
        perLitre,
        unit: measureUnit(feed),
        perBatch,
        measuredBy: way?.kind ?? null,
        how,
        stock: way?.stock ?? null,
      };
    }),
    reached: found.reached,
    aimed: found.aimed,
    notReached: found.notReached,
    measured,
    notices: [...(found.unmeasured === null ? [] : [found.unmeasured]), ...found.notices],
    cost: found.cost,
  };
}

/** Stocks of this batch go before those in Settings; what is weighed dry has none. */
function stocksOf(draft: BatchDraft, tools: HouseTools): StockOf[] {
  const dry = new Set(draft.dry.map(nameKey));
  return [...draft.stocks, ...tools.stocks].filter(({ feed }) => !dry.has(nameKey(feed)));
}
