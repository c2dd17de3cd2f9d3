/** What a feed leaves short for a target, and which feeds on the shelf or which salts would fill it. */

import { type Amounts, ELEMENT_NAMES, type ElementSymbol } from "./elements.ts";
import { type Feed, feedOf } from "./feeds.ts";
import { nitrogenShares } from "./mixture.ts";
import { SALTS, type Salt, saltOf, saltPercent } from "./salts.ts";
import { sayList, sayNumber } from "./saying.ts";
import { type Solved, solveDoses } from "./solve.ts";

export interface GapTask {
  readonly feed: Feed;
  /** mg/L wanted. */
  readonly wanted: Amounts;
  /** mg/L already in the water. */
  readonly water: Amounts;
  /** Other feeds at hand that may enter a recipe. */
  readonly shelf: readonly Feed[];
}

/** Something that fills a gap together with the feed. */
export interface Filler {
  readonly name: string;
  /** From the shelf; otherwise a salt to look for. */
  readonly onShelf: boolean;
  /** g or mL a litre beside the feed. */
  readonly perLitre: number;
  readonly unit: "g" | "mL";
  /** mg/L of the element that was short, with it. */
  readonly reached: number;
  /** Sum of ((reached − wanted) / wanted)² over all wanted elements, with it. */
  readonly misfit: number;
}

export interface Gap {
  readonly symbol: ElementSymbol;
  readonly wanted: number;
  /** mg/L with the feed alone at its best dose. */
  readonly reached: number;
  /** Best first. */
  readonly fillers: readonly Filler[];
  readonly sentence: string;
}

export interface Gaps {
  /** The feed alone, at the dose that comes closest. */
  readonly alone: Solved;
  /** Wanted elements that stay short by more than 10 %, in the usual order. */
  readonly gaps: readonly Gap[];
  /** The feed with all of the shelf, for comparison. */
  readonly withShelf: Solved;
}

const SHORT_BY = 0.1;
/** A filler takes away at least half of what is missing. */
const FILLS_SHARE = 0.5;
const MOST_FILLERS = 3;
/**
 * mg/L above which nothing is offered that brings it unasked: zinc sulfate would fill a lack of sulfur, and poison the
 * plant. Cl and Na: where FAO 29 (table 1) begins to restrict, 4 and 3 meq/L. Trace elements: about the strongest
 * recipes in use, common practice, no source.
 */
const MOST_UNASKED: Amounts = { Cl: 142, Na: 69, Fe: 6, Mn: 2, Zn: 0.5, B: 1, Cu: 0.3, Mo: 0.2 };

/** True when a mix holds too much of what nobody asked for, and more of it than before the filler. */
function upsets(reached: Amounts, before: Amounts, wanted: Amounts): boolean {
  return (Object.keys(MOST_UNASKED) as ElementSymbol[]).some((symbol) => {
    const most = Math.max(MOST_UNASKED[symbol] as number, 1.5 * (wanted[symbol] ?? 0));
    const now = reached[symbol] ?? 0;
    return now > most && now > (before[symbol] ?? 0);
  });
}

/** A pure salt as a feed of its own name. */
export function saltFeed(salt: Salt): Feed {
  const percent = saltPercent(salt);
  const total = percent.N ?? 0;
  const atoms = (salt.nitrogen.nitrate ?? 0) + (salt.nitrogen.ammonium ?? 0) + (salt.nitrogen.urea ?? 0);
  const form = (count: number | undefined) => (total > 0 ? (total * (count ?? 0)) / atoms : null);
  const { nitrate, ammonium, urea } = salt.nitrogen;
  const nitrogen = { nitrate: form(nitrate), ammonium: form(ammonium), urea: form(urea), other: null };
  return feedOf(salt.name, { basis: "w/w", percent, nitrogen }, null);
}

/** Urea is left out: in water culture there is little that breaks it down [common practice, no source]. */
const OFFERED: readonly Feed[] = SALTS.filter(({ nitrogen }) => nitrogen.urea === undefined).map(saltFeed);

/**
 * Urea counts as nitrogen but feeds slowly where no soil life breaks it down; null for a feed with none. Common
 * practice, no source.
 */
export function slowNitrogen(feed: Feed): string | null {
  const { urea, unstated } = nitrogenShares(feed);
  if (urea > 0) {
    return `${sayNumber(urea * 100)} % of the nitrogen in ${feed.name} is urea: it counts as nitrogen, but in water culture it feeds slowly and unevenly.`;
  }
  const { other } = feed.label.nitrogen;
  const slowShare = (other ?? 0) / (feed.label.percent.N ?? 1);
  if (slowShare > 0.05) {
    return `${sayNumber(slowShare * 100)} % of the nitrogen in ${feed.name} is of another form, organic or slow to dissolve: it counts as nitrogen, but in water culture it feeds slowly and unevenly.`;
  }
  if (unstated > 0.5) {
    return `The label of ${feed.name} does not say which form its nitrogen has. If it is urea, it feeds slowly in water culture.`;
  }
  return null;
}

function fillersFor(task: GapTask, symbol: ElementSymbol, before: Solved): Filler[] {
  const { feed, wanted, water, shelf } = task;
  const goal = wanted[symbol] as number;
  const missing = goal - (before.reached[symbol] ?? 0);
  const known = new Set([feed, ...shelf].map((one) => saltOf(one)?.name));
  const candidates = [
    ...shelf.filter((one) => one !== feed).map((one) => ({ one, onShelf: true })),
    ...OFFERED.filter((one) => !known.has(one.name)).map((one) => ({ one, onShelf: false })),
  ];
  const fillers: Filler[] = [];
  for (const { one, onShelf } of candidates) {
    if (!((one.label.percent[symbol] ?? 0) > 0)) continue;
    const solved = solveDoses({ wanted, feeds: [feed, one], water });
    const reached = solved.reached[symbol] ?? 0;
    const [, dose] = solved.doses;
    if (dose === undefined || !(dose.perLitre > 0) || goal - reached > (1 - FILLS_SHARE) * missing) continue;
    if (upsets(solved.reached, before.reached, wanted)) continue;
    const { perLitre, unit } = dose;
    fillers.push({ name: one.name, onShelf, perLitre, unit, reached, misfit: solved.misfit });
  }
  return fillers.sort((a, b) => a.misfit - b.misfit);
}

function sentenceOf(feed: Feed, gap: Omit<Gap, "sentence">): string {
  const { symbol, wanted, reached, fillers } = gap;
  const short = `${feed.name} leaves ${ELEMENT_NAMES[symbol]} at ${sayNumber(reached)} of ${sayNumber(wanted)} mg/L.`;
  const here = fillers.filter(({ onShelf }) => onShelf).map(({ name }) => name);
  if (here.length > 0) return `${short} From the shelf, ${sayList(here, "or")} would fill it.`;
  if (fillers.length === 0) return `${short} Nothing here fills it without upsetting the rest.`;
  return `${short} Nothing on the shelf fills it; ${sayList(
    fillers.map(({ name }) => name),
    "or",
  )} would.`;
}

/**
 * Gaps of a feed for a target. Each filler is judged by the closest mix of the feed with it alone, so that one which
 * upsets more than it fills falls behind. Throws BadInput as solveDoses does.
 */
export function findGaps(task: GapTask): Gaps {
  const { feed, wanted, water, shelf } = task;
  const alone = solveDoses({ wanted, feeds: [feed], water });
  const gaps: Gap[] = [];
  for (const symbol of Object.keys(ELEMENT_NAMES) as ElementSymbol[]) {
    const goal = wanted[symbol];
    if (goal === undefined || goal === 0) continue;
    const reached = alone.reached[symbol] ?? 0;
    if (goal - reached <= SHORT_BY * goal) continue;
    const all = fillersFor(task, symbol, alone);
    const fillers = [
      ...all.filter(({ onShelf }) => onShelf).slice(0, MOST_FILLERS),
      ...all.filter(({ onShelf }) => !onShelf).slice(0, MOST_FILLERS),
    ];
    const gap = { symbol, wanted: goal, reached, fillers };
    gaps.push({ ...gap, sentence: sentenceOf(feed, gap) });
  }
  const others = shelf.filter((one) => one !== feed);
  return { alone, gaps, withShelf: solveDoses({ wanted, feeds: [feed, ...others], water }) };
}
