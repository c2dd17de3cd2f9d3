/** Two stock bottles for a recipe: calcium apart from sulfate and phosphate, and nothing stronger than what dissolves. */

import { amountsPerUnit, measureUnit } from "./dose.ts";
import { type Amounts, ATOMIC_WEIGHTS, type ElementSymbol, SYMBOLS } from "./elements.ts";
import { BadInput } from "./errors.ts";
import type { Feed } from "./feeds.ts";
import { atomsIn, gramsPerMole } from "./formula.ts";
import { nitrogenShares } from "./mixture.ts";
import { partOf } from "./order.ts";
import { SALTS, type Salt, saltOf } from "./salts.ts";
import { sayGiven, sayList, sayNumber } from "./saying.ts";

export interface BottlesTask {
  /** g or mL of each feed in a litre of the finished solution. */
  readonly doses: readonly { readonly feed: Feed; readonly perLitre: number }[];
  /** How many times stronger than the finished solution: 100 means 10 mL of each bottle in a litre. */
  readonly factor: number;
  readonly bottleLitres: number;
  /** mg/L in the water the bottles are filled with. */
  readonly water: Amounts;
}

export interface BottlePart {
  readonly feed: Feed;
  /** g or mL for the whole bottle. */
  readonly amount: number;
  readonly unit: "g" | "mL";
}

export interface Bottle {
  readonly name: "A" | "B";
  readonly parts: readonly BottlePart[];
  /** The salt that comes closest to falling out, also one that forms only in the bottle; null where none is known. */
  readonly tightest: Salt | null;
  /** That salt as a share of what dissolves at room temperature. */
  readonly share: number;
}

export interface Bottles {
  readonly a: Bottle;
  readonly b: Bottle;
  /** mL of each bottle for a litre of solution. */
  readonly mlPerLitre: number;
  /** Nothing stands against making them. */
  readonly fits: boolean;
  /** The greatest factor at which both bottles stay below half of what dissolves; Infinity where nothing is known of it. */
  readonly mostFactor: number;
  /** Feeds that cannot go into either: their own bottle, or dry. */
  readonly apart: readonly Feed[];
  /** Sentences on what does not fit, and on what is not known. */
  readonly notices: readonly string[];
}

/** Half of what dissolves at 20 °C stays dissolved in a cold cupboard too [common practice, no source]. */
const SAFE_SHARE = 0.5;
/** Gypsum, log10 of the ion product at 25 °C [phreeqc.dat]; concentrations are taken for activities, which errs on the safe side. */
const LOG_K_GYPSUM = -4.58;

/** mol in a litre of the bottle: each element but nitrogen, and nitrogen by form. */
type Moles = Readonly<Partial<Record<ElementSymbol | "nitrate" | "ammonium" | "urea", number>>>;

function molesOf(parts: readonly { readonly feed: Feed; readonly perLitre: number }[]): Moles {
  const moles: Partial<Record<ElementSymbol | "nitrate" | "ammonium" | "urea", number>> = {};
  const add = (key: keyof Moles, amount: number) => {
    moles[key] = (moles[key] ?? 0) + amount;
  };
  for (const { feed, perLitre } of parts) {
    const amounts = amountsPerUnit(feed, measureUnit(feed) === "mL" ? "mL/L" : "g/L");
    for (const symbol of SYMBOLS) {
      const mol = ((amounts[symbol] ?? 0) * perLitre) / 1000 / ATOMIC_WEIGHTS[symbol];
      if (symbol !== "N") {
        add(symbol, mol);
        continue;
      }
      // Unstated nitrogen counts as both, so that no salt it may form is overlooked.
      const { nitrate, ammonium, urea, unstated } = nitrogenShares(feed);
      add("nitrate", mol * (nitrate + unstated));
      add("ammonium", mol * (ammonium + unstated));
      add("urea", mol * urea);
    }
  }
  return moles;
}

/** g/L of a salt that could form at most from what is dissolved. */
function couldForm(salt: Salt, moles: Moles): number {
  const atoms = atomsIn(salt.formula);
  let units = Number.POSITIVE_INFINITY;
  for (const symbol of salt.holds) {
    if (symbol === "N") continue;
    units = Math.min(units, (moles[symbol] ?? 0) / (atoms.get(symbol) as number));
  }
  for (const form of ["nitrate", "ammonium", "urea"] as const) {
    const count = salt.nitrogen[form];
    if (count !== undefined) units = Math.min(units, (moles[form] ?? 0) / count);
  }
  return units * gramsPerMole(salt.formula);
}

type Concentrate = { readonly feed: Feed; readonly perLitre: number };

function tightestOf(parts: readonly Concentrate[]): { salt: Salt | null; share: number } {
  const moles = molesOf(parts);
  let salt: Salt | null = null;
  let share = 0;
  for (const one of SALTS) {
    if (one.solubilityGPerL === null) continue;
    const part = couldForm(one, moles) / one.solubilityGPerL;
    if (part > share) {
      salt = one;
      share = part;
    }
  }
  return { salt, share };
}

/** Puts what may stand in either bottle where the tighter of the two stays loosest; all ways are tried, up to 2¹⁰. */
function shareOut(a: readonly Concentrate[], b: readonly Concentrate[], free: readonly Concentrate[]) {
  const tried = free.slice(0, 10);
  let best = { a: [...a, ...free], b: [...b], worst: Number.POSITIVE_INFINITY };
  for (let bits = 0; bits < 2 ** tried.length; bits++) {
    const inB = (k: number) => k < tried.length && ((bits >> k) & 1) === 1;
    const one = [...a, ...free.filter((_, k) => !inB(k))];
    const other = [...b, ...free.filter((_, k) => inB(k))];
    const worst = Math.max(tightestOf(one).share, tightestOf(other).share);
    if (worst < best.worst - 1e-12) best = { a: one, b: other, worst };
  }
  return best;
}

/**
 * Two bottles for a recipe at a concentration factor. Bottle A holds calcium, bottle B sulfate and phosphate; what is
 * neither goes where there is more room. Every salt that could form in a bottle is held against its published
 * solubility. Throws BadInput for a factor of 1 or less, a bottle of no volume, and as amountsPerUnit does.
 */
export function splitIntoBottles({ doses, factor, bottleLitres, water }: BottlesTask): Bottles {
  if (!(factor > 1 && Number.isFinite(factor))) {
    throw new BadInput("out-of-bounds", `The factor is ${sayGiven(factor)}. Give a number above 1, like 100.`);
  }
  if (!(bottleLitres > 0 && Number.isFinite(bottleLitres))) {
    throw new BadInput("out-of-bounds", `The bottle holds ${sayGiven(bottleLitres)} L. Give a number above 0.`);
  }
  const strong = doses
    .filter(({ perLitre }) => perLitre > 0)
    .map(({ feed, perLitre }) => ({ feed, perLitre: perLitre * factor }));
  const of = (...parts: string[]) => strong.filter(({ feed }) => parts.includes(partOf(feed)));
  const apart = of("silicate", "calcium with sulfate or phosphate").map(({ feed }) => feed);
  const out = shareOut(of("calcium"), of("sulfate or phosphate"), of("plain"));
  const bottle = (name: "A" | "B", parts: readonly Concentrate[]): Bottle => {
    const { salt, share } = tightestOf(parts);
    return {
      name,
      parts: parts.map(({ feed, perLitre }) => ({ feed, amount: perLitre * bottleLitres, unit: measureUnit(feed) })),
      tightest: salt,
      share,
    };
  };
  const a = bottle("A", out.a);
  const b = bottle("B", out.b);
  const notices: string[] = [];
  const worst = Math.max(a.share, b.share);
  const mostFactor = (factor * SAFE_SHARE) / worst;
  for (const { name, tightest, share } of [a, b]) {
    if (share <= SAFE_SHARE || tightest === null) continue;
    notices.push(
      `Bottle ${name} is too strong: ${tightest.name} would stand at ${sayNumber(share * 100)} % of what dissolves at room temperature, and half is safe. Make it at most ${Math.floor(mostFactor)} times as strong.`,
    );
  }
  // What a liquid concentrate brings along takes up room.
  for (const { name, parts } of [a, b]) {
    const millilitres = parts.reduce((sum, { amount, unit }) => sum + (unit === "mL" ? amount : 0), 0);
    if (millilitres <= 1000 * bottleLitres) continue;
    notices.push(
      `The liquid feeds for bottle ${name} alone are ${sayNumber(millilitres)} mL, more than the bottle holds. Choose a smaller factor.`,
    );
  }
  const fits = notices.length === 0;
  for (const feed of apart) {
    notices.push(
      partOf(feed) === "silicate"
        ? `${feed.name} is a silicate: it gels with either bottle. Keep it in a bottle of its own and add it first.`
        : `${feed.name} holds calcium together with sulfate or phosphate: it cannot be kept as a concentrate. Dose it by itself.`,
    );
  }
  const unknown = [...out.a, ...out.b].filter(({ feed }) => !feed.liquid && saltOf(feed)?.solubilityGPerL == null);
  if (unknown.length > 0) {
    const names = sayList(
      unknown.map(({ feed }) => feed.name),
      "and",
    );
    notices.push(
      `How much of ${names} dissolves is not published here. Look at the label, and watch the bottle for a sediment.`,
    );
  }
  const calciumMol = (water.Ca ?? 0) / 1000 / ATOMIC_WEIGHTS.Ca;
  const sulfateMol = molesOf(out.b).S ?? 0;
  if (calciumMol * sulfateMol > 10 ** LOG_K_GYPSUM) {
    notices.push(
      `The calcium in this water may fall out as gypsum in bottle B. Fill bottle B with distilled or other low-mineral water.`,
    );
  }
  return { a, b, mlPerLitre: 1000 / factor, fits, mostFactor, apart, notices };
}
