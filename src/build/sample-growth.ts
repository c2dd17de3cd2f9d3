/** New leaves, new roots, decay taken off by hand, and remarks: what the household notices on its rounds. Invented. */

import type { CareEntry } from "./sample-care.ts";
import { day } from "./sample-cell.ts";
import { LOG_STARTS, type PlantStory, TODAY } from "./sample-household.ts";
import { type Random, randomStream } from "./sample-random.ts";
import { disturbancesOf } from "./sample-roots.ts";
import { isRoundDay, keeperOn, summer } from "./sample-season.ts";
import { TRIAL_A, TRIAL_FROM } from "./sample-trial.ts";

const DECAY = [
  "Brown hairs wiped off by hand, roots left where they were",
  "One soft root taken off, cut was clean",
  "Slime on old hairs, came off between two fingers",
  "",
];
const LEAF = ["", "", "", "Smaller than the last one", "Largest so far", "Unrolled without a mark"];
const ROOT = ["White tip through the side slot", "New root into the reservoir", "Fine hairs all along it", ""];
const REMARKS = [
  "Leaf tips brown, nothing else",
  "Turned a quarter towards the window",
  "Smells clean, water clear",
  "Two scale insects wiped off",
  "White crust on the top clay, flush next time",
  "Moved away from the radiator",
  "Float was stuck, reservoir was not empty at all",
  'Wren: "it looks thirsty but the gauge says half"',
  "Leaves dusted",
  "Old leaf yellow, taken off",
];

interface Day {
  readonly on: number;
  readonly story: PlantStory;
  readonly random: Random;
}

/** Weeks after a move from soil in which old soil roots decay and water roots come: common practice, no source. */
function afterMove({ on, story, random }: Day): CareEntry[] {
  const moved = disturbancesOf(story.plant).find(({ event, on: iso }) => event === "Move from soil" && day(iso) < on);
  if (moved === undefined) return [];
  const days = on - day(moved.on);
  if (days > 49) return [];
  const entries: CareEntry[] = [];
  const base = { day: on, plant: story.plant, who: keeperOn(on, story.place, random) };
  if (random.chance(0.45)) entries.push({ ...base, event: "Decay removed", note: random.pick(DECAY) });
  if (days > 12 && random.chance(0.3)) entries.push({ ...base, event: "New root", note: random.pick(ROOT) });
  return entries;
}

function noticed({ on, story, random }: Day): CareEntry[] {
  const base = { day: on, plant: story.plant, who: keeperOn(on, story.place, random) };
  const entries: CareEntry[] = [];
  const helped = TRIAL_A.includes(story.plant) && on >= day(TRIAL_FROM) ? 1.2 : 1;
  // Two rounds a week: 8.7 a month.
  if (random.chance(Math.min(0.9, (helped * story.leavesAMonth * (0.25 + 0.75 * summer(on)) * 0.85) / 8.7))) {
    entries.push({ ...base, event: "New leaf", note: random.pick(LEAF) });
  }
  if (random.chance(0.012)) entries.push({ ...base, event: "New root", note: random.pick(ROOT) });
  if (random.chance(0.01)) entries.push({ ...base, event: "Decay removed", note: random.pick(DECAY) });
  if (random.chance(0.014)) entries.push({ ...base, event: "Note", note: random.pick(REMARKS) });
  return entries;
}

export function growthOf(story: PlantStory): CareEntry[] {
  const random = randomStream(`growth of ${story.plant}`);
  const start = Math.max(day(LOG_STARTS), day(story.since));
  const entries: CareEntry[] = [];
  for (let on = start; on <= day(TODAY); on++) {
    if (!isRoundDay(on)) continue;
    entries.push(...noticed({ on, story, random }), ...afterMove({ on, story, random }));
  }
  return entries;
}
