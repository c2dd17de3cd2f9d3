/** Which top-ups are feed and which plain water, so that a reservoir keeps below a chosen ceiling. */

import { BadInput } from "./errors.ts";
import { checkNumber } from "./reading.ts";
import { needMoreThan0, walkReservoir } from "./reservoir-salt.ts";
import { sayGiven } from "./saying.ts";

export interface PlanTask {
  /** The day on which the full reservoir reads `level`. */
  readonly fromDay: number;
  /** One unit for all levels: EC in mS/cm, or an ion in mg/L. */
  readonly level: number;
  readonly fedLevel: number;
  readonly plainLevel: number;
  /** Not passed by the full reservoir after any step. */
  readonly ceiling: number;
  readonly uptakeLevel: number;
  readonly volumeMl: number;
  readonly useMlDay: number;
  /** Whole days from one top-up to the next. */
  readonly everyDays: number;
  readonly steps: number;
}

export interface PlanStep {
  readonly day: number;
  readonly kind: "fed" | "plain" | "change";
  /** What is poured in; for a change the whole reservoir. */
  readonly amountMl: number;
  /** Level when the water is lowest, just before the step; null where the reservoir runs dry before it. */
  readonly before: number | null;
  readonly after: number;
}

function refuseAbove(what: string, level: number, ceiling: number): void {
  if (level <= ceiling) return;
  throw new BadInput(
    "above-ceiling",
    `${what} reads ${sayGiven(level)}, above the ceiling of ${sayGiven(ceiling)}. Take a weaker one or a higher ceiling.`,
  );
}

/**
 * Top-ups at equal intervals, each of what was drunk: fed where the full reservoir then reads no more than the ceiling,
 * else plain, and where even that is too much the solution is changed for the fed one. Throws BadInput when the fed
 * solution alone reads more than the ceiling, or for numbers that are no plan.
 */
export function topUpPlan(task: PlanTask): PlanStep[] {
  const { fromDay, fedLevel, plainLevel, ceiling, uptakeLevel, volumeMl, useMlDay, everyDays } = task;
  needMoreThan0(useMlDay, "The use", " mL a day");
  checkNumber(everyDays, { what: "The time between top-ups", unit: "days", min: 1 });
  refuseAbove("The fed solution", fedLevel, ceiling);
  const drunkMl = useMlDay * everyDays;
  const plan: PlanStep[] = [];
  let { level } = task;
  for (let at = 1; at <= task.steps; at++) {
    const day = fromDay + at * everyDays;
    const amountMl = Math.min(drunkMl, volumeMl);
    const poured = (kind: "fed" | "plain"): PlanStep => {
      const step = { kind: "top up", day, amountMl: drunkMl, level: kind === "fed" ? fedLevel : plainLevel } as const;
      const [walked] = walkReservoir({ volumeMl, fillLevel: level, uptakeLevel }, [step]);
      const { before, after } = walked as { before: number | null; after: number };
      return { day, kind, amountMl, before, after };
    };
    const fed = poured("fed");
    const plain = poured("plain");
    const step: PlanStep =
      fed.after <= ceiling
        ? fed
        : plain.after <= ceiling
          ? plain
          : { day, kind: "change", amountMl: volumeMl, before: plain.before, after: fedLevel };
    plan.push(step);
    level = step.after;
  }
  return plan;
}
