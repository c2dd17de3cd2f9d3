/** Two years of care of one plant: what it drinks, when somebody comes by, and what is written down. Invented. */

import { batchFor } from "./sample-batch-plan.ts";
import { day, rounded } from "./sample-cell.ts";
import { LOG_STARTS, type PlantStory, TODAY } from "./sample-household.ts";
import { type Random, randomStream } from "./sample-random.ts";
import { disturbancesOf, FILLS_FROM } from "./sample-roots.ts";
import { isRoundDay, keeperOn, summer } from "./sample-season.ts";

export interface CareEntry {
  readonly day: number;
  readonly plant: string;
  readonly event: string;
  readonly amountMl?: number;
  readonly solution?: string;
  readonly ecMsCm?: number;
  readonly pH?: number;
  readonly who: string;
  readonly reason?: string;
  readonly note?: string;
}

/** Reservoir a quarter to a third of the pot: common practice, no source. */
const RESERVOIR_SHARE = 0.28;
const FILLING_DAYS = 75;
/** A plant that came bare-rooted out of soil gets weak solution for some weeks: common practice, no source. */
const WEAK_DAYS = 35;

interface State {
  /** mL in the reservoir, and what it holds when full and free of roots. */
  levelMl: number;
  fullMl: number;
  fillsFrom: number;
  lastDisturbed: number;
  movedOn: number;
  changedOn: number;
  changeDue: number;
  changes: number;
}

/** 0 while roots leave the reservoir free, 1 when they have filled it as far as they will. */
function filled(state: State, on: number): number {
  return Math.min(1, Math.max(0, (on - state.fillsFrom) / FILLING_DAYS));
}

function roomMl(state: State, on: number): number {
  return state.fullMl * (1 - 0.45 * filled(state, on));
}

/** mL drunk on one day: more in summer, with age and with a reservoir full of roots, less after a disturbance. */
function drinkMl(story: PlantStory, state: State, on: number, random: Random): number {
  const age = 1 + 0.12 * ((on - day(LOG_STARTS)) / 365);
  const recovery = Math.min(1, 0.5 + 0.5 * ((on - state.lastDisturbed) / 28));
  const mean = story.drinkMlDay * (0.72 + 0.56 * summer(on)) * age * (1 + 0.95 * filled(state, on)) * recovery;
  return Math.max(0, mean * (1 + 0.12 * random.normal()));
}

export function careOf(story: PlantStory): CareEntry[] {
  const random = randomStream(`care of ${story.plant}`);
  const since = day(story.since);
  const start = Math.max(day(LOG_STARTS), since);
  const fullMl = Math.round((story.potMl * RESERVOIR_SHARE) / 10) * 10;
  const fillsFrom = FILLS_FROM[story.plant];
  const state: State = {
    levelMl: fullMl * random.between(0.4, 1),
    fullMl,
    fillsFrom: fillsFrom === undefined ? Number.POSITIVE_INFINITY : day(fillsFrom),
    lastDisturbed: Number.NEGATIVE_INFINITY,
    movedOn: Number.NEGATIVE_INFINITY,
    changedOn: start,
    changeDue: start + random.whole(3, 34),
    changes: random.whole(0, 1),
  };
  const disturbances = disturbancesOf(story.plant);
  const entries: CareEntry[] = disturbances
    .filter(({ on }) => day(on) < start)
    .map(({ on, event, note }) => ({ day: day(on), plant: story.plant, event, who: "Ines", note }));
  for (let on = start; on <= day(TODAY); on++) {
    state.levelMl = Math.max(0, state.levelMl - drinkMl(story, state, on, random));
    const who = keeperOn(on, story.place, random);
    const today = disturbances.find((disturbance) => day(disturbance.on) === on);
    if (today !== undefined) {
      const { event, reason, note } = today;
      entries.push({ day: on, plant: story.plant, event, who, reason, note });
      disturb(state, event, on);
      entries.push(...change({ story, state, on, who, random }));
    } else if (isRoundDay(on) || random.chance(0.05)) {
      entries.push(...visit({ story, state, on, who, random }));
    }
  }
  return entries;
}

function disturb(state: State, event: string, on: number): void {
  state.lastDisturbed = on;
  if (event === "Move from soil") state.movedOn = on;
  if (event === "Pot up") {
    state.fullMl = Math.round((state.fullMl * 1.3) / 10) * 10;
    state.fillsFrom = Number.POSITIVE_INFINITY;
  }
}

interface Visit {
  readonly story: PlantStory;
  readonly state: State;
  readonly on: number;
  readonly who: string;
  readonly random: Random;
}

function visit({ story, state, on, who, random }: Visit): CareEntry[] {
  const { plant } = story;
  if (on >= state.changeDue) {
    const flush: CareEntry = {
      day: on,
      plant,
      event: "Flush in place",
      amountMl: Math.round((state.fullMl * 1.5) / 50) * 50,
      solution: on < day("2025-04-27") ? "Town tap" : "Low-mineral water",
      who,
    };
    return [...(state.changes % 2 === 0 ? [flush] : []), ...change({ story, state, on, who, random })];
  }
  const room = roomMl(state, on);
  if (state.levelMl > room * 0.4) return [];
  const amountMl = Math.max(10, Math.round((room - state.levelMl) / 10) * 10);
  state.levelMl = room;
  const base: CareEntry = {
    day: on,
    plant,
    event: "Top up",
    amountMl,
    solution: batchFor(story.plant, on).id,
    who,
    ...weak(state, on),
  };
  if (!random.chance(0.07)) return [base];
  return [{ ...base, ...reading({ story, state, on, who, random }) }];
}

function weak(state: State, on: number): { note?: string } {
  return on - state.movedOn <= WEAK_DAYS ? { note: "Half solution, half low-mineral water" } : {};
}

function change({ story, state, on, who, random }: Visit): CareEntry[] {
  const amountMl = Math.round(roomMl(state, on) / 10) * 10;
  const before = reading({ story, state, on, who, random });
  state.levelMl = amountMl;
  state.changedOn = on;
  state.changeDue = on + random.whole(32, 44);
  state.changes += 1;
  const entry: CareEntry = {
    day: on,
    plant: story.plant,
    event: "Solution change",
    amountMl,
    solution: batchFor(story.plant, on).id,
    who,
    ...weak(state, on),
  };
  if (!random.chance(0.35)) return [entry];
  return [
    { day: on, plant: story.plant, event: "Reading", ...before, who, note: "Old solution, before the change" },
    entry,
  ];
}

/** What a meter shows in the reservoir: the batch, and the salts left behind by what was drunk since the change. */
function reading({ story, state, on, random }: Visit): { ecMsCm: number; pH: number } {
  const days = on - state.changedOn;
  const ecMsCm =
    batchFor(story.plant, state.changedOn).nominalEcMsCm * (1 + 0.013 * days) * (1 + 0.05 * random.normal());
  const pH = 5.75 + 0.012 * days + 0.18 * random.normal();
  return { ecMsCm: rounded(Math.max(0.1, ecMsCm), 2), pH: rounded(Math.min(7.4, Math.max(5, pH)), 1) };
}
