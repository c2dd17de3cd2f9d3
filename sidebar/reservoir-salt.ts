/** The salt of one reservoir: what the log says of its filling and top-ups, what follows, and the plan under a ceiling. */

import type { PlantRow } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { isBadInput } from "../src/core/errors.ts";
import { fillKind } from "../src/core/fills.ts";
import { daysToCeiling, flushMl, type ReservoirStep, uptakeFrom, walkReservoir } from "../src/core/reservoir-salt.ts";
import { type PlanStep, topUpPlan } from "../src/core/top-up-plan.ts";
import type { PouredRow, ReservoirLog } from "./reservoir-log.ts";
import type { Pot } from "./reservoir-pot.ts";
import { type Levels, type Poured, UNKNOWN } from "./reservoir-poured.ts";

/** A reservoir is a quarter to a third of the pot: common practice, no source. */
export const RESERVOIR_SHARE = 0.28;
/** A flush without its amount in the log: one and a half times the reservoir, common practice, no source. */
const FLUSH_VOLUMES = 1.5;
const PLAN_STEPS = 8;
/** Days that a sum of fractions may be short by. */
const ROUNDING = 1e-6;

/** One step since the last change, with what was poured as far as it is known. */
interface LoggedStep {
  readonly kind: "top up" | "flush";
  readonly day: number;
  /** Null where it was not written down. */
  readonly amountMl: number | null;
  readonly poured: Poured;
}

export interface SaltLog {
  readonly freshDay: number;
  readonly fill: Poured;
  readonly steps: readonly LoggedStep[];
  /** What went in with the last top-up of known EC; it is taken for those without. */
  readonly lastTopUp: Poured;
  readonly measured: { readonly day: number; readonly ecMsCm: number } | null;
  readonly volumeMl: number | null;
}

/** What the log says of a reservoir since it was filled afresh; null for a plant that never was. */
export function saltLog(log: ReservoirLog, pot: Pot, plant: PlantRow, levels: Levels): SaltLog | null {
  if (pot.state === null) return null;
  const { freshDay } = pot.state;
  const mine = log.rows.filter((row) => nameKey(row.plant) === nameKey(plant.plant) && row.day >= freshDay);
  const on = (day: number, kinds: readonly string[]): PouredRow | undefined =>
    mine.find((row) => row.day === day && kinds.includes(fillKind(row.event, log.events) ?? ""));
  const name = (row: PouredRow | undefined): Poured => (row === undefined ? UNKNOWN : levels(row.solution, row.day));
  const steps = pot.fills
    .filter(({ day }) => day > freshDay && day <= log.today)
    .map(({ day, topUpMl, flushed }): LoggedStep => {
      if (!flushed) return { kind: "top up", day, amountMl: topUpMl, poured: name(on(day, ["top up"])) };
      const row = on(day, ["flush"]);
      return { kind: "flush", day, amountMl: row?.amountMl ?? null, poured: name(row) };
    });
  const known = steps.filter(({ kind, poured }) => kind === "top up" && poured.ecMsCm !== null);
  const [reading] = mine
    .filter(({ day, event, ecMsCm }) => ecMsCm !== null && day > freshDay && fillKind(event, log.events) !== "change")
    .sort((a, b) => b.day - a.day);
  return {
    freshDay,
    fill: name(on(freshDay, ["change"]) ?? on(freshDay, ["disturbance"]) ?? on(freshDay, ["top up", "flush"])),
    steps,
    lastTopUp: known[known.length - 1]?.poured ?? UNKNOWN,
    measured: reading === undefined ? null : { day: reading.day, ecMsCm: reading.ecMsCm as number },
    volumeMl: plant.potMl === null ? null : Math.round((plant.potMl * RESERVOIR_SHARE) / 10) * 10,
  };
}

/** Figures to work with; the log's own where nothing was typed. */
export interface SaltFigures {
  readonly volumeMl: number;
  readonly fillEc: number;
  readonly topUpEc: number;
  readonly plainEc: number;
  readonly ceiling: number;
  readonly everyDays: number;
  readonly useMlDay: number;
  readonly measured: { readonly day: number; readonly ecMsCm: number } | null;
}

export interface Ion {
  readonly ion: "Na" | "Cl";
  readonly fill: number;
  readonly now: number;
}

export interface SaltAnswer {
  readonly usedMl: number;
  /** In the full reservoir after the last step, if the plant took up nothing but water. */
  readonly allStay: number;
  readonly uptake: number | null;
  /** With that uptake; as allStay where it is not known. */
  readonly expected: number;
  readonly ions: readonly Ion[];
  /** The day on which the full reservoir reads the ceiling; null for never. */
  readonly ceilingDay: number | null;
  /** mL of plain water that bring it back to what it was filled with; null where plain water cannot. */
  readonly flushMl: number | null;
  readonly plan: readonly PlanStep[];
  /** Why there is no plan. */
  readonly problem: string | null;
}

function stepsOf(log: SaltLog, figures: SaltFigures, level: (poured: Poured) => number): ReservoirStep[] {
  let lastDay = log.freshDay;
  return log.steps.map(({ kind, day, amountMl, poured }): ReservoirStep => {
    const since = day - lastDay;
    lastDay = day;
    if (kind === "flush") {
      return { kind, day, amountMl: amountMl ?? FLUSH_VOLUMES * figures.volumeMl, level: level(poured) };
    }
    return {
      kind,
      day,
      amountMl: Math.min(amountMl ?? figures.useMlDay * since, figures.volumeMl),
      level: level(poured),
    };
  });
}

/** Na and Cl stay behind nearly whole; told only where the water of the filling and of every step is known. */
function ionsOf(log: SaltLog, figures: SaltFigures): Ion[] {
  return (["Na", "Cl"] as const).flatMap((ion): Ion[] => {
    const fill = log.fill[ion];
    const known = log.steps.every(({ poured }) => poured[ion] !== null);
    if (fill === null || !known) return [];
    const steps = stepsOf(log, figures, (poured) => poured[ion] as number);
    const walked = walkReservoir({ volumeMl: figures.volumeMl, fillLevel: fill, uptakeLevel: 0 }, steps);
    return [{ ion, fill, now: walked[walked.length - 1]?.after ?? fill }];
  });
}

/** Works out the salt of a reservoir; throws BadInput for figures that are none, such as a volume of 0. */
export function saltAnswer(log: SaltLog, figures: SaltFigures, today: number): SaltAnswer {
  const { volumeMl, fillEc, topUpEc, plainEc, ceiling, useMlDay, everyDays, measured } = figures;
  const steps = stepsOf(log, figures, ({ ecMsCm }) => ecMsCm ?? topUpEc).map((step, at) =>
    step.kind === "flush" && log.steps[at]?.poured.ecMsCm === null ? { ...step, level: plainEc } : step,
  );
  const pot = { volumeMl, fillLevel: fillEc };
  const end = (uptakeLevel: number) => {
    const walked = walkReservoir({ ...pot, uptakeLevel }, steps);
    return walked[walked.length - 1]?.after ?? fillEc;
  };
  const read = measured === null ? [] : steps.filter(({ day }) => day <= measured.day);
  const uptake = measured === null ? null : uptakeFrom(pot, read, measured.ecMsCm);
  const uptakeLevel = uptake ?? 0;
  const expected = end(uptakeLevel);
  const left = daysToCeiling({ level: expected, topUpLevel: topUpEc, uptakeLevel, ceiling, volumeMl, useMlDay });
  const lastDay = log.steps[log.steps.length - 1]?.day ?? log.freshDay;
  let plan: readonly PlanStep[] = [];
  let problem: string | null = null;
  try {
    plan = topUpPlan({
      fromDay: Math.max(lastDay, today - everyDays),
      level: expected,
      fedLevel: topUpEc,
      plainLevel: plainEc,
      ceiling,
      uptakeLevel,
      volumeMl,
      useMlDay,
      everyDays,
      steps: PLAN_STEPS,
    });
  } catch (error) {
    if (!isBadInput(error)) throw error;
    problem = error.message;
  }
  return {
    usedMl: steps.reduce((sum, step) => sum + (step.kind === "top up" ? step.amountMl : 0), 0),
    allStay: end(0),
    uptake,
    expected,
    ions: ionsOf(log, figures),
    ceilingDay: left === null ? null : lastDay + Math.floor(left + ROUNDING),
    flushMl: flushMl({ level: Math.max(expected, ceiling), wanted: fillEc, flushLevel: plainEc, volumeMl }),
    plan,
    problem,
  };
}
