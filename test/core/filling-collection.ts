/** A made-up collection whose pots fill with roots on known days, with the slips of a household in its log. Written apart from what it tries. */

import type { CareRow } from "../../src/core/fills.ts";

export interface SimulatedPot {
  readonly plant: string;
  /** The day on which the roots have taken the room they will take; null for a pot that stays quiet. */
  readonly filledOn: number | null;
}

export interface Collection {
  readonly pots: readonly SimulatedPot[];
  readonly rows: readonly CareRow[];
  readonly firstDay: number;
  readonly lastDay: number;
}

/** 32-bit xorshift (Marsaglia 2003, J. Stat. Softw. 8, 14), so that a seed gives the same collection everywhere. */
function stream(seed: number) {
  let state = (seed * 2_654_435_761) >>> 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 4_294_967_296;
  };
  for (let i = 0; i < 16; i++) next();
  const between = (low: number, high: number) => low + (high - low) * next();
  // Box and Muller 1958.
  const normal = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  return { next, between, normal, chance: (share: number) => next() < share };
}

export interface Household {
  readonly seed: number;
  readonly quiet: number;
  readonly filling: number;
  readonly days: number;
  /** Day of the year on which the log begins, 0 for the shortest day. */
  readonly startsAt: number;
}

const MEMBERS = ["Ada", "Bo", "Cem"];
/** Days on the same solution, give or take four; some households only ever top up. */
const CHANGED_AFTER = [35, 60, Number.POSITIVE_INFINITY] as const;

/**
 * Each pot drinks a little every day: its own mean, more in summer than in winter (±25 %, the same for all, with ±5 % of its
 * own), 10 % of day-to-day scatter, up to 6 % growth a year, and a third more in one hot week that all share. In a
 * filling pot the roots take a rising share of the reservoir and the use rises with them along a logistic curve with
 * its middle four weeks before the known day: by then (88 to 98 % of the way) the use has risen by 60 to 120 % and 30 to
 * 45 % of the room is gone. Somebody goes round on Wednesdays and Sundays, or every second day in every other home, with
 * a chance of 85 % to look at a pot, and tops up when less than 45 % is left: to the mark give or take 4 % of the room.
 * A third of the
 * homes change the solution every five weeks, a third every two months: what was drunk before is then not known. Half
 * of the quiet pots are repotted once, drink half as much after it, and take four to seven weeks to drink as before.
 * Amounts are read off a jug with 5 % of error and to 5 mL. 4 % of top-ups are not written down, 3 % are written down
 * twice by two members, and a holiday of 12 to 18 days goes by with every reservoir filled on the day before it.
 * All of it common practice, no source.
 */
export function simulate({ seed, quiet, filling, days, startsAt }: Household): Collection {
  const random = stream(seed);
  const firstDay = 20_000;
  const lastDay = firstDay + days;
  const holidayFrom = firstDay + Math.round(random.between(0.2, 0.8) * days);
  const holidayTo = holidayFrom + Math.round(random.between(12, 18));
  const hotFrom = firstDay + Math.round(random.between(0.1, 0.9) * days);
  const isRound = (day: number) => (seed % 2 === 0 ? day % 2 === 0 : day % 7 === 0 || day % 7 === 3);
  const changedAfter = CHANGED_AFTER[seed % CHANGED_AFTER.length] as number;
  const rows: CareRow[] = [];
  const pots: SimulatedPot[] = [];
  for (let at = 0; at < quiet + filling; at++) {
    const plant = `Pot ${at + 1}`;
    const filledOn = at < quiet ? null : firstDay + Math.round(random.between(105, days - 28));
    pots.push({ plant, filledOn });
    const fullMl = random.between(200, 900);
    // A reservoir lasts one to two weeks when its pot is quiet.
    const meanMlDay = (0.55 * fullMl) / random.between(6, 12);
    const [swing, growth, pace] = [0.25 + 0.05 * random.normal(), random.between(0, 0.06), random.between(7, 14)];
    const [riseShare, rootShare] = [random.between(0.6, 1.2), random.between(0.3, 0.45)];
    // Half of the quiet pots are repotted once, and take four to seven weeks to drink as before.
    const repotOn = filledOn === null && random.chance(0.5) ? firstDay + Math.round(random.between(20, days)) : null;
    const recoveryDays = random.between(28, 49);
    let levelMl = fullMl;
    let freshFrom = firstDay - Math.round(random.between(0, 35));
    for (let day = firstDay; day <= lastDay; day++) {
      const filled = filledOn === null ? 0 : 1 / (1 + Math.exp(-(day - (filledOn - 28)) / pace));
      const season = 1 - swing * Math.cos((2 * Math.PI * (startsAt + day - firstDay)) / 365.25);
      const hot = day >= hotFrom && day < hotFrom + 7 ? 4 / 3 : 1;
      const grown = 1 + (growth * (day - firstDay)) / 365.25;
      const since = repotOn === null || day < repotOn ? Number.POSITIVE_INFINITY : day - repotOn;
      const recovered = Math.min(1, 0.5 + (0.5 * since) / recoveryDays);
      const scatter = Math.max(0, 1 + 0.1 * random.normal());
      const roomMl = fullMl * (1 - rootShare * filled);
      levelMl = Math.max(
        0,
        levelMl - meanMlDay * season * hot * grown * (1 + riseShare * filled) * recovered * scatter,
      );
      if (day === repotOn) {
        levelMl = roomMl;
        freshFrom = day;
        rows.push({ day, plant, event: "Repot", amountMl: null, who: "Bo" });
        continue;
      }
      const away = day > holidayFrom && day < holidayTo;
      const looked = day === holidayFrom || day === holidayTo || (!away && isRound(day) && random.chance(0.85));
      if (!looked) continue;
      if (day - freshFrom >= changedAfter) {
        freshFrom = day + Math.round(random.between(-4, 4));
        levelMl = roomMl;
        rows.push({ day, plant, event: "Solution change", amountMl: Math.round(roomMl / 5) * 5, who: "Ada" });
        continue;
      }
      if (levelMl > 0.45 * roomMl && day !== holidayFrom) continue;
      const upTo = roomMl * (1 + 0.04 * random.normal());
      const poured = Math.max(upTo - levelMl, 0);
      levelMl += poured;
      const amountMl = Math.max(5, Math.round((poured * (1 + 0.05 * random.normal())) / 5) * 5);
      const who = MEMBERS[Math.floor(random.next() * MEMBERS.length)] as string;
      if (random.chance(0.04)) continue;
      rows.push({ day, plant, event: "Top up", amountMl, who });
      if (random.chance(0.03)) {
        const other = MEMBERS[(MEMBERS.indexOf(who) + 1) % MEMBERS.length] as string;
        rows.push({ day, plant, event: "Top up", amountMl, who: other });
      }
    }
  }
  return { pots, rows, firstDay, lastDay };
}
