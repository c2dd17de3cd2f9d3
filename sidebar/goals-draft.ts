/** Goals beyond a target row, as typed: strength, ratios, limits, weights, and which of the close mixes is preferred. */

import { ELEMENT_NAMES, ELEMENTS, type ElementSymbol } from "../src/core/elements.ts";
import type { Prefer } from "../src/core/goal-doses.ts";
import type { LimitWishes } from "../src/core/goal-limits.ts";
import type { Ratio } from "../src/core/ratios.ts";
import { isRecord, textOf, textsOf } from "./drafts.ts";
import { type Typed, typedNumber } from "./typed.ts";

export interface GoalsDraft {
  readonly strength: "" | "EC" | "N";
  /** mS/cm or mg/L. */
  readonly strengthText: string;
  /** "3:1:2", parts by weight of the elements. */
  readonly npk: string;
  readonly kCaMg: string;
  /** Percent of all nitrogen. */
  readonly ammonium: string;
  /** mg/L by element symbol. */
  readonly atMost: Readonly<Record<string, string>>;
  readonly atLeast: Readonly<Record<string, string>>;
  readonly weights: Readonly<Record<string, string>>;
  readonly prefer: Prefer["kind"];
  /** Feeds to be used up first. */
  readonly useFirst: readonly string[];
  readonly fewest: boolean;
  /** Percent that an element may be off for fewer feeds, or on average for a preference. */
  readonly tolerance: string;
}

export const NO_GOALS: GoalsDraft = {
  strength: "",
  strengthText: "",
  npk: "",
  kCaMg: "",
  ammonium: "",
  atMost: {},
  atLeast: {},
  weights: {},
  prefer: "closest",
  useFirst: [],
  fewest: false,
  tolerance: "5",
};

/** Elements with limits and weights: those of a target, then what a water or a cheap salt brings too much of. */
export const LIMITED: readonly ElementSymbol[] = [...ELEMENTS, "Na", "Cl"];

export function readGoals(kept: unknown): GoalsDraft {
  if (!isRecord(kept)) return NO_GOALS;
  const names = kept.useFirst;
  return {
    strength: kept.strength === "EC" || kept.strength === "N" ? kept.strength : "",
    strengthText: textOf(kept, "strengthText"),
    npk: textOf(kept, "npk"),
    kCaMg: textOf(kept, "kCaMg"),
    ammonium: textOf(kept, "ammonium"),
    atMost: textsOf(kept.atMost),
    atLeast: textsOf(kept.atLeast),
    weights: textsOf(kept.weights),
    prefer: kept.prefer === "cheapest" || kept.prefer === "use up" ? kept.prefer : "closest",
    useFirst: Array.isArray(names) ? names.filter((name): name is string => typeof name === "string") : [],
    fewest: kept.fewest === true,
    tolerance: textOf(kept, "tolerance", NO_GOALS.tolerance),
  };
}

export interface Goals {
  /** Nothing but the target row is asked for; fewest feeds may be. */
  readonly plain: boolean;
  readonly strength: { readonly kind: "EC" | "N"; readonly value: number } | null;
  readonly ratios: readonly Ratio[];
  readonly limits: LimitWishes;
  readonly weights: Readonly<Partial<Record<ElementSymbol, number>>>;
  readonly prefer: Prefer;
  readonly useFirst: readonly string[];
  /** Share that an element may be off for fewer feeds; null where all may be used. */
  readonly fewestWithin: number | null;
  /** What is wrong, by field; the wrong ones do not count. */
  readonly problems: Readonly<Record<string, string>>;
}

function readRatio(text: string, symbols: readonly ElementSymbol[]): Ratio | string | null {
  if (text.trim() === "") return null;
  const parts = text.split(":").map((part) => typedNumber(part, { what: "A part", min: 0, max: 1000 }).value);
  const ratio: Partial<Record<ElementSymbol, number>> = {};
  symbols.forEach((symbol, at) => {
    const part = parts[at];
    if (part !== null && part !== undefined && part > 0) ratio[symbol] = part;
  });
  if (parts.length === symbols.length && Object.keys(ratio).length === symbols.length) return ratio;
  const example = symbols.map((_, at) => [3, 1, 2][at]).join(":");
  return `“${text.trim()}” is no ratio of ${symbols.join(", ")}. Write ${symbols.length} numbers above 0 with colons between, like ${example}.`;
}

/** Reads what was typed; what cannot be read is told and left out, so that nothing is guessed. */
export function goalsOf(draft: GoalsDraft): Goals {
  const problems: Record<string, string> = {};
  const take = (field: string, { value, problem }: Typed): number | null => {
    if (problem !== null) problems[field] = problem;
    return value;
  };
  const ratio = (field: "npk" | "kCaMg", symbols: readonly ElementSymbol[]): Ratio[] => {
    const read = readRatio(draft[field], symbols);
    if (typeof read === "string") problems[field] = read;
    return read === null || typeof read === "string" ? [] : [read];
  };
  const byElement = (field: "atMost" | "atLeast" | "weights", what: string, min: number) => {
    const read: Partial<Record<ElementSymbol, number>> = {};
    for (const symbol of LIMITED) {
      const rule = { what: `${what} for ${ELEMENT_NAMES[symbol]}`, min, max: field === "weights" ? 1000 : 5000 };
      const unit = field === "weights" ? {} : { unit: "mg/L" };
      const value = take(`${field} ${symbol}`, typedNumber(draft[field][symbol] ?? "", { ...rule, ...unit }));
      if (value !== null) read[symbol] = value;
    }
    return read;
  };
  const strengthRule =
    draft.strength === "EC"
      ? { what: "The strength", unit: "mS/cm", min: 0.05, max: 20 }
      : { what: "The strength", unit: "mg/L", min: 1, max: 2000 };
  const value = draft.strength === "" ? null : take("strengthText", typedNumber(draft.strengthText, strengthRule));
  const strength = draft.strength === "" || value === null ? null : { kind: draft.strength, value };
  const ratios = [...ratio("npk", ["N", "P", "K"]), ...ratio("kCaMg", ["K", "Ca", "Mg"])];
  const ammonium = take("ammonium", typedNumber(draft.ammonium, { what: "The share", unit: "%", min: 0, max: 100 }));
  const atMost = byElement("atMost", "At most", 0);
  const atLeast = byElement("atLeast", "At least", 0);
  const weights = byElement("weights", "The weight", 0.001);
  const percent = take("tolerance", typedNumber(draft.tolerance, { what: "Off by", unit: "%", min: 0.1, max: 100 }));
  const tolerance = (percent ?? 5) / 100;
  const limits: LimitWishes = {
    atMost,
    atLeast,
    ...(ammonium === null ? {} : { ammoniumShareAtMost: ammonium / 100 }),
  };
  const limited = ammonium !== null || Object.keys(atMost).length + Object.keys(atLeast).length > 0;
  const prefer: Prefer = draft.prefer === "closest" ? { kind: "closest" } : { kind: draft.prefer, tolerance };
  return {
    plain:
      strength === null &&
      ratios.length === 0 &&
      !limited &&
      Object.keys(weights).length === 0 &&
      draft.prefer === "closest",
    strength,
    ratios,
    limits,
    weights,
    prefer,
    useFirst: draft.useFirst,
    fewestWithin: draft.fewest ? tolerance : null,
    problems,
  };
}

/** "strength by EC, 1 limit, cheapest": what is asked for beyond the target; "" for nothing. */
export function goalWords(goals: Goals): string {
  const { strength, ratios, limits, weights, prefer, fewestWithin } = goals;
  const limitCount =
    Object.keys(limits.atMost ?? {}).length +
    Object.keys(limits.atLeast ?? {}).length +
    (limits.ammoniumShareAtMost === undefined ? 0 : 1);
  const many = (n: number, one: string): string[] => (n === 0 ? [] : [`${n} ${n === 1 ? one : `${one}s`}`]);
  return [
    ...(strength === null ? [] : [`strength by ${strength.kind}`]),
    ...many(ratios.length, "ratio"),
    ...many(limitCount, "limit"),
    ...many(Object.keys(weights).length, "weight"),
    ...(prefer.kind === "closest" ? [] : [prefer.kind === "cheapest" ? "cheapest" : "use up first"]),
    ...(fewestWithin === null ? [] : ["fewest feeds"]),
  ].join(", ");
}
