/** Salt in reservoirs against the closed forms and against a day-by-day mass balance written apart. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  daysToCeiling,
  flushMl,
  levelAfterUse,
  type ReservoirStep,
  uptakeFrom,
  walkReservoir,
} from "../../src/core/reservoir-salt.ts";
import { type PlanTask, topUpPlan } from "../../src/core/top-up-plan.ts";
import { drawn } from "../drawn.ts";
import { refusal } from "./refusal.ts";

/** A reservoir kept by its two amounts, water and salt, day by day; it knows nothing of levels. */
class Vessel {
  waterMl: number;
  salt: number;
  readonly fullMl: number;
  constructor(fullMl: number, level: number) {
    this.fullMl = fullMl;
    this.waterMl = fullMl;
    this.salt = fullMl * level;
  }
  /** The roots take water and with each mL of it so much salt, as long as there is any. */
  drink(mL: number, saltPerMl: number): void {
    this.waterMl -= mL;
    this.salt = Math.max(0, this.salt - mL * saltPerMl);
  }
  topUp(level: number): number {
    const mL = this.fullMl - this.waterMl;
    this.waterMl += mL;
    this.salt += mL * level;
    return mL;
  }
  /** Drop by drop: each drop drives out as much of what is mixed. */
  flush(mL: number, level: number, drops: number): void {
    for (let drop = 0; drop < drops; drop++) {
      this.salt += (mL / drops) * level;
      this.waterMl += mL / drops;
      this.salt *= this.fullMl / this.waterMl;
      this.waterMl = this.fullMl;
    }
  }
  get level(): number {
    return this.salt / this.waterMl;
  }
}

it("finds an uptake of any size, in mg/L too, and none for a level that no uptake brings about", () => {
  const steps: ReservoirStep[] = [{ kind: "top up", day: 1, amountMl: 200, level: 100 }];
  const from = (measured: number) => uptakeFrom({ volumeMl: 1000, fillLevel: 100 }, steps, measured);
  // 100 mg in a litre and 20 mg topped up, less 0.2 L of what the plant takes up: 110 mg/L are left of 50 mg/L
  expect(from(110)).toBeCloseTo(50, 6);
  expect(from(119.9)).toBeCloseTo(0.5, 6);
  // the top-up alone brings 20 mg/L
  expect(from(10)).toBeNull();
});

describe("closed form c = c0 + ct W / V for an ion that stays behind", () => {
  it("20 mg/L of sodium in half a litre, three litres of the same water drunk: 140 mg/L", () => {
    expect(levelAfterUse({ fill: 20, topUp: 20, used: 3, volume: 0.5 })).toBe(140);
  });

  it("ten top-ups of 200 mL in one litre are the same as 2 L at once", () => {
    const steps = Array.from(
      { length: 10 },
      (_, at) => ({ kind: "top up", day: at, amountMl: 200, level: 30 }) as const,
    );
    const walked = walkReservoir({ volumeMl: 1000, fillLevel: 12, uptakeLevel: 0 }, steps);
    expect(walked[9]?.after).toBeCloseTo(12 + (30 * 2000) / 1000, 10);
    // Before the first top-up 12 mg in 0.8 L: 15 mg/L.
    expect(walked[0]?.before).toBeCloseTo(15, 12);
  });
});

describe("closed form exp(−F/V) for a well-mixed flush", () => {
  it("a flush of one volume with pure water leaves 1/e, of two 1/e²", () => {
    const flush = (amountMl: number) => ({ kind: "flush", day: 1, amountMl, level: 0 }) as const;
    const reservoir = { volumeMl: 500, fillLevel: 2, uptakeLevel: 0 };
    expect(walkReservoir(reservoir, [flush(500)])[0]?.after).toBeCloseTo(2 / Math.E, 12);
    expect(walkReservoir(reservoir, [flush(1000)])[0]?.after).toBeCloseTo(2 / Math.E ** 2, 12);
  });

  it("the volume to flush with is its inverse: from 2 to 1 takes 0.693 volumes", () => {
    expect(flushMl({ level: 2, wanted: 1, flushLevel: 0, volumeMl: 500 })).toBeCloseTo(500 * Math.LN2, 10);
    expect(flushMl({ level: 2, wanted: 1, flushLevel: 0.2, volumeMl: 500 })).toBeCloseTo(500 * Math.log(1.8 / 0.8), 10);
    expect(flushMl({ level: 0.9, wanted: 1, flushLevel: 0, volumeMl: 500 })).toBe(0);
    expect(flushMl({ level: 2, wanted: 0.3, flushLevel: 0.3, volumeMl: 500 })).toBeNull();
  });
});

describe("a day-by-day mass balance", () => {
  const steps = fc.array(
    fc.record({
      kind: fc.constantFrom("top up", "top up", "top up", "flush", "change"),
      share: fc.double({ min: 0.01, max: 0.95, noNaN: true }),
      level: fc.double({ min: 0, max: 3, noNaN: true }),
    }),
    { minLength: 1, maxLength: 20 },
  );

  it("gives the same levels before and after every step", () => {
    fc.assert(
      fc.property(
        steps,
        fc.double({ min: 100, max: 3000, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (given, volumeMl, fillLevel, uptakeLevel) => {
          const vessel = new Vessel(volumeMl, fillLevel);
          const expected: { before: number; after: number }[] = [];
          const planned: ReservoirStep[] = given.map(({ kind, share, level }, day): ReservoirStep => {
            if (kind === "top up") {
              for (let hour = 0; hour < 24; hour++) vessel.drink((share * volumeMl) / 24, uptakeLevel);
              const before = vessel.level;
              const amountMl = vessel.topUp(level);
              expected.push({ before, after: vessel.level });
              return { kind, day, amountMl, level };
            }
            const before = vessel.level;
            if (kind === "flush") vessel.flush(share * volumeMl, level, 20_000);
            else {
              vessel.waterMl = 0;
              vessel.salt = 0;
              vessel.topUp(level);
            }
            expected.push({ before, after: vessel.level });
            return kind === "flush" ? { kind, day, amountMl: share * volumeMl, level } : { kind: "change", day, level };
          });
          const walked = walkReservoir({ volumeMl, fillLevel, uptakeLevel }, planned);
          walked.forEach(({ before, after }, at) => {
            // Drops of 1/20,000 of a flush leave an error of about as much.
            expect(Math.abs((before as number) - (expected[at]?.before as number))).toBeLessThan(2e-3);
            expect(Math.abs(after - (expected[at]?.after as number))).toBeLessThan(1e-4);
          });
        },
      ),
      { numRuns: drawn(40) },
    );
  });

  it("the days to a ceiling are those of the vessel, topped up once a day", () => {
    const task = { level: 1, topUpLevel: 1.2, uptakeLevel: 0.5, ceiling: 2, volumeMl: 800, useMlDay: 40 };
    const vessel = new Vessel(800, 1);
    let days = 0;
    while (vessel.level < 2) {
      vessel.drink(40, 0.5);
      vessel.topUp(1.2);
      days += 1;
    }
    expect(Math.ceil((daysToCeiling(task) as number) - 1e-9)).toBe(days);
    expect(daysToCeiling({ ...task, uptakeLevel: 1.2 })).toBeNull();
    expect(daysToCeiling({ ...task, level: 2.4 })).toBe(0);
  });

  it("what a plant takes up is found again from one reading", () => {
    const vessel = new Vessel(600, 1.1);
    const steps: ReservoirStep[] = [];
    for (let day = 0; day < 30; day++) {
      vessel.drink(25, 0.7);
      steps.push({ kind: "top up", day, amountMl: vessel.topUp(1.1), level: 1.1 });
      if (day !== 20) continue;
      vessel.flush(300, 0.1, 100_000);
      steps.push({ kind: "flush", day, amountMl: 300, level: 0.1 });
    }
    const pot = { volumeMl: 600, fillLevel: 1.1 };
    expect(uptakeFrom(pot, steps, vessel.level)).toBeCloseTo(0.7, 4);
    expect(uptakeFrom(pot, steps, 3)).toBe(0);
    // 25 mL of 1.1 in 600 mL are 0.0458: no uptake leaves less than the last top-up alone.
    expect(uptakeFrom(pot, steps, 0.04)).toBeNull();
    expect(uptakeFrom(pot, [], 1)).toBeNull();
    expect(uptakeFrom(pot, [], 2)).toBeNull();
  });

  it("refuses an amount below 0", () => {
    const pot = { volumeMl: 500, fillLevel: 1, uptakeLevel: 0 };
    expect(refusal(() => walkReservoir(pot, [{ kind: "top up", day: 1, amountMl: -5, level: 1 }]))).toBe(
      "An amount is -5 mL. Give a number of 0 mL or more.",
    );
  });

  it("a reservoir drunk dry has no level before the top-up, and is full after it", () => {
    const [walked] = walkReservoir({ volumeMl: 500, fillLevel: 1, uptakeLevel: 0 }, [
      { kind: "top up", day: 1, amountMl: 500, level: 1 },
    ]);
    expect(walked).toEqual({ day: 1, before: null, after: 2 });
  });
});

describe("the plan of fed and plain top-ups", () => {
  const task: PlanTask = {
    fromDay: 100,
    level: 1.2,
    fedLevel: 1.2,
    plainLevel: 0.2,
    ceiling: 1.8,
    uptakeLevel: 0.6,
    volumeMl: 500,
    useMlDay: 25,
    everyDays: 7,
    steps: 8,
  };

  it("worked by hand: 175 mL a week add (1.2 − 0.6) 0.35 = 0.21 fed and take (0.2 − 0.6) 0.35 = 0.14 plain", () => {
    const plan = topUpPlan(task);
    expect(plan.map(({ day, kind }) => `${day} ${kind}`)).toEqual([
      "107 fed",
      "114 fed",
      "121 plain",
      "128 fed",
      "135 plain",
      "142 fed",
      "149 plain",
      "156 plain",
    ]);
    const levels = [1.41, 1.62, 1.48, 1.69, 1.55, 1.76, 1.62, 1.48];
    plan.forEach(({ after, amountMl }, at) => {
      expect(after).toBeCloseTo(levels[at] as number, 10);
      expect(amountMl).toBe(175);
    });
    // 1.2 × 500 − 0.6 × 175 = 495 in 325 mL.
    expect(plan[0]?.before).toBeCloseTo(495 / 325, 12);
  });

  it("changes the solution where plain water brings too much as well", () => {
    const plan = topUpPlan({ ...task, level: 1.75, plainLevel: 0.9, uptakeLevel: 0, steps: 3 });
    expect(plan.map(({ kind, after }) => [kind, after])).toEqual([
      ["change", 1.2],
      ["fed", expect.closeTo(1.62, 10)],
      ["change", 1.2],
    ]);
  });

  it("never passes the ceiling, feeds whenever it can, and the vessel agrees", () => {
    fc.assert(
      fc.property(
        fc.record({
          level: fc.double({ min: 0.1, max: 3, noNaN: true }),
          fedLevel: fc.double({ min: 0.5, max: 1.5, noNaN: true }),
          plainLevel: fc.double({ min: 0, max: 0.6, noNaN: true }),
          ceiling: fc.double({ min: 1.5, max: 2.5, noNaN: true }),
          uptakeLevel: fc.double({ min: 0, max: 1.4, noNaN: true }),
          useMlDay: fc.double({ min: 1, max: 60, noNaN: true }),
        }),
        (some) => {
          const whole = { ...task, ...some, steps: 12 };
          const vessel = new Vessel(whole.volumeMl, whole.level);
          for (const { kind, after } of topUpPlan(whole)) {
            vessel.drink(whole.useMlDay * whole.everyDays, whole.uptakeLevel);
            const fedWouldBe = (vessel.salt + (whole.volumeMl - vessel.waterMl) * whole.fedLevel) / whole.volumeMl;
            if (kind === "change") {
              vessel.waterMl = 0;
              vessel.salt = 0;
            }
            vessel.topUp(kind === "plain" ? whole.plainLevel : whole.fedLevel);
            expect(after).toBeCloseTo(vessel.level, 9);
            expect(after).toBeLessThanOrEqual(whole.ceiling);
            if (kind !== "fed") expect(fedWouldBe).toBeGreaterThan(whole.ceiling - 1e-9);
          }
        },
      ),
    );
  });

  it("refuses what is no plan", () => {
    expect(refusal(() => topUpPlan({ ...task, fedLevel: 1.9 }))).toBe(
      "The fed solution reads 1.9, above the ceiling of 1.8. Take a weaker one or a higher ceiling.",
    );
    expect(refusal(() => topUpPlan({ ...task, useMlDay: 0 }))).toBe("The use is 0 mL a day. Give more than 0.");
    expect(refusal(() => topUpPlan({ ...task, volumeMl: 0 }))).toBe(
      "The volume of the reservoir is 0 mL. Give more than 0.",
    );
    expect(refusal(() => topUpPlan({ ...task, everyDays: 0.5 }))).toMatch(/^The time between top-ups is 0\.5 days\./);
  });
});

describe("levels that are just met", () => {
  const toTheMark: ReservoirStep[] = [{ kind: "top up", day: 1, amountMl: 500, level: 1 }];
  it("tells nothing of the uptake where nothing was drunk", () => {
    expect(uptakeFrom({ volumeMl: 1000, fillLevel: 1.5 }, [], 1.5)).toBeNull();
  });
  it("takes the least uptake that leaves only what the last top-up brings", () => {
    expect(uptakeFrom({ volumeMl: 1000, fillLevel: 1.5 }, toTheMark, 0.5)).toBeCloseTo(3, 9);
  });
  it("needs neither days nor water", () => {
    const steady = { topUpLevel: 1, uptakeLevel: 1, volumeMl: 1000, useMlDay: 50 };
    expect(daysToCeiling({ ...steady, level: 2, ceiling: 2 })).toBe(0);
    expect(flushMl({ level: 1, wanted: 1, flushLevel: 1, volumeMl: 1000 })).toBe(0);
  });
  it("names the volume that is refused", () => {
    expect(() => levelAfterUse({ fill: 1, topUp: 1, used: 1, volume: 0 })).toThrow(
      /^The volume of the reservoir is 0\. Give more than 0\.$/,
    );
  });
});

it("a fed solution that reads just the ceiling is poured", () => {
  const task = { fromDay: 0, level: 1, fedLevel: 1, plainLevel: 0, ceiling: 1, uptakeLevel: 1 } as const;
  const [step] = topUpPlan({ ...task, volumeMl: 1000, useMlDay: 100, everyDays: 5, steps: 1 });
  expect(step).toMatchObject({ kind: "fed", after: 1 });
});
