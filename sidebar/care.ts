/** What is being typed in "Log care", and the rows it makes: one for each plant chosen. */

import type { CareEntry, Loaded, PlantRow, RequestFor } from "../src/app/contract.ts";
import { dayFromIso } from "../src/core/calendar.ts";
import { nameKey } from "../src/core/cell.ts";
import { isRecord, textOf, textsOf } from "./drafts.ts";
import type { NewId } from "./ids.ts";
import { type EcUnit, meterOf, typedEc, unitOf } from "./meter.ts";
import { count } from "./show.ts";
import { typedDay, typedNumber } from "./typed.ts";

export interface CareDraft {
  /** ISO day, "" for today. */
  readonly day: string;
  /** Plant → the id of its row, made when the plant was chosen. */
  readonly chosen: Readonly<Record<string, string>>;
  readonly find: string;
  readonly place: string;
  readonly event: string;
  readonly amountMl: string;
  readonly solution: string;
  readonly ec: string;
  readonly ecUnit: EcUnit | "";
  readonly pH: string;
  readonly reason: string;
  readonly note: string;
}

const BLANK = {
  day: "",
  find: "",
  place: "",
  event: "",
  amountMl: "",
  solution: "",
  ec: "",
  pH: "",
  reason: "",
  note: "",
} as const;

export function freshCare(): CareDraft {
  return { ...BLANK, chosen: {}, ecUnit: "" };
}

export function readCare(kept: unknown): CareDraft | null {
  if (!isRecord(kept)) return null;
  const texts = Object.fromEntries(Object.keys(BLANK).map((key) => [key, textOf(kept, key)])) as Record<
    keyof typeof BLANK,
    string
  >;
  const unit = textOf(kept, "ecUnit");
  return {
    ...texts,
    ecUnit: unit === "ppm" || unit === "mS/cm" ? unit : "",
    chosen: textsOf(kept.chosen),
  };
}

/** Plants that can be chosen: each name once, in the sheet's order. */
export function plantsOnce(plants: readonly PlantRow[]): readonly PlantRow[] {
  const seen = new Set<string>();
  return plants.filter(({ plant }) => {
    const key = nameKey(plant);
    if (key === "" || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

export function placesOf(plants: readonly PlantRow[]): readonly string[] {
  const places = new Map<string, string>();
  for (const { place } of plants)
    if (nameKey(place) !== "" && !places.has(nameKey(place))) places.set(nameKey(place), place.trim());
  return [...places.values()].sort((a, b) => a.localeCompare(b));
}

/** The plants of the chosen place whose name or kind holds every word typed. */
export function shownPlants(
  draft: Pick<CareDraft, "find" | "place">,
  plants: readonly PlantRow[],
): readonly PlantRow[] {
  const words = nameKey(draft.find)
    .split(" ")
    .filter((word) => word !== "");
  const place = nameKey(draft.place);
  return plantsOnce(plants).filter((row) => {
    if (place !== "" && nameKey(row.place) !== place) return false;
    const text = nameKey(`${row.plant} ${row.kind}`);
    return words.every((word) => text.includes(word));
  });
}

/** How long a plant's roots have been left alone, in words. */
export function restWords(restDays: number | null): string {
  if (restDays === null) return "no root disturbance on record";
  return restDays === 0 ? "roots disturbed today" : `${count(restDays, "day")} at rest`;
}

export function choosePlants(draft: CareDraft, names: readonly string[], on: boolean, newId: NewId): CareDraft {
  const chosen: Record<string, string> = { ...draft.chosen };
  for (const name of names) {
    if (!on) delete chosen[name];
    else if (chosen[name] === undefined) chosen[name] = newId();
  }
  return { ...draft, chosen };
}

/** Plants of the draft that the sheet still has; one that was renamed meanwhile is no longer chosen. */
export function chosenPlants(draft: CareDraft, plants: readonly PlantRow[]): readonly PlantRow[] {
  return plantsOnce(plants).filter(({ plant }) => draft.chosen[plant] !== undefined);
}

/** What the number fields hold, each with its sentence when it cannot be used. */
export function careNumbers(draft: CareDraft, loaded: Pick<Loaded, "meterScale">) {
  const meter = meterOf(loaded);
  return {
    amount: typedNumber(draft.amountMl, { what: "Amount", unit: "mL", min: 0, max: 100_000 }),
    ec: typedEc(draft.ec, unitOf(meter, draft.ecUnit), meter),
    pH: typedNumber(draft.pH, { what: "pH", min: 0, max: 14 }),
  };
}

/** At most this many rows in one request, as the contract has it. */
const MOST_ROWS = 500;

/** The request for what is typed now, or the sentence that says what is missing. */
export function makeCare(draft: CareDraft, who: string, loaded: Loaded): RequestFor<"log care"> | string {
  const plants = chosenPlants(draft, loaded.plants);
  if (who === "") return "Type your name first, so that the log can say who did this.";
  if (plants.length === 0) return "Choose at least one plant.";
  if (plants.length > MOST_ROWS) return `Choose at most ${MOST_ROWS} plants at once; ${plants.length} are chosen.`;
  if (draft.event === "") return "Choose what happened.";
  const day = typedDay(draft.day, loaded.today);
  if (day === null) return "Choose the date.";
  const { amount, ec, pH } = careNumbers(draft, loaded);
  const problem = amount.problem ?? ec.problem ?? pH.problem;
  if (problem !== null) return problem;
  return {
    ask: "log care",
    who,
    entries: plants.map(({ plant }) => ({
      id: draft.chosen[plant] ?? "",
      day,
      plant,
      event: draft.event,
      amountMl: amount.value,
      solution: draft.solution.trim(),
      ecMsCm: ec.value,
      pH: pH.value,
      reason: draft.reason.trim(),
      note: draft.note.trim(),
    })),
  };
}

/**
 * The draft once its rows are in the log: their plants are no longer chosen. What belongs to one act is cleared,
 * unless it was changed while the request was under way, or `keep` is set since the log holds something else.
 * Event, solution and date stay, for the next plants of the same round.
 */
export function careDone(
  draft: CareDraft,
  sent: CareDraft,
  { ids, keep }: { ids: ReadonlySet<string>; keep: boolean },
): CareDraft {
  const chosen = Object.fromEntries(Object.entries(draft.chosen).filter(([, id]) => !ids.has(id)));
  const cleared = (key: "amountMl" | "ec" | "pH" | "reason" | "note"): string =>
    draft[key] === sent[key] && !keep ? "" : draft[key];
  return {
    ...draft,
    chosen,
    amountMl: cleared("amountMl"),
    ec: cleared("ec"),
    pH: cleared("pH"),
    reason: cleared("reason"),
    note: cleared("note"),
  };
}

/** The loaded plants once `entries` are in the log: rest is counted anew where roots were disturbed. */
export function plantsAfter(loaded: Loaded, entries: readonly CareEntry[]): readonly PlantRow[] {
  const disturbs = new Set(
    loaded.events.filter(({ disturbsRoots }) => disturbsRoots).map(({ event }) => nameKey(event)),
  );
  const today = dayFromIso(loaded.today);
  const byPlant = new Map(
    entries.filter(({ event }) => disturbs.has(nameKey(event))).map((entry) => [nameKey(entry.plant), entry]),
  );
  return loaded.plants.map((row) => {
    const entry = byPlant.get(nameKey(row.plant));
    const day = entry === undefined ? null : dayFromIso(entry.day);
    if (entry === undefined || day === null || today === null || day > today) return row;
    const restDays = today - day;
    return row.restDays !== null && row.restDays < restDays ? row : { ...row, restDays, lastEvent: entry.event };
  });
}
