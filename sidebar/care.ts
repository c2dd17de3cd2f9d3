/** What is being typed in "Log care", and the rows it makes: one for each plant chosen. */

import type { CareRow, Loaded, PlantRow, RequestFor } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { TAKEN_BACK } from "../src/core/events.ts";
import { REASONS, whyEarly } from "../src/core/rest-rule.ts";
import { amountProblem, amountsFor } from "./care-amounts.ts";
import { disturbs, earlyAmong } from "./care-early.ts";
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
  /** For all plants chosen; "" for as last time. */
  readonly amountMl: string;
  /** Plant → what was typed for it alone. */
  readonly amounts: Readonly<Record<string, string>>;
  readonly solution: string;
  readonly ec: string;
  readonly ecUnit: EcUnit | "";
  readonly pH: string;
  /** One of the offered reasons, "other" for the one typed, "" for none. */
  readonly why: string;
  readonly reason: string;
  readonly note: string;
  /** Id of the entry that this one corrects, "" for none. */
  readonly corrects: string;
  /** "yes" while plants are gone through one by one. */
  readonly oneByOne: string;
  /** The plant that is shown then; "" for the first. */
  readonly at: string;
}

const BLANK = {
  day: "",
  find: "",
  place: "",
  event: "Top up",
  amountMl: "",
  solution: "",
  ec: "",
  pH: "",
  why: "",
  reason: "",
  note: "",
  corrects: "",
  oneByOne: "",
  at: "",
} as const;

export function freshCare(): CareDraft {
  return { ...BLANK, chosen: {}, amounts: {}, ecUnit: "" };
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
    amounts: textsOf(kept.amounts),
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

/** What can have happened to a plant; taking back is done beside the entry itself. */
export function eventsToChoose({ events }: Pick<Loaded, "events">): Loaded["events"] {
  return events.filter(({ event }) => nameKey(event) !== nameKey(TAKEN_BACK));
}

/** Only a disturbance has a reason; an entry that is corrected keeps the one it had. */
function reasonOf(draft: CareDraft, loaded: Pick<Loaded, "events">): string {
  if (!disturbs(draft.event, loaded)) return draft.corrects === "" ? "" : draft.reason.trim();
  return REASONS.includes(draft.why) ? draft.why : draft.reason.trim();
}

/** The draft that corrects a row of the log: all it says, to be changed. */
export function correctingDraft(row: CareRow, newId: NewId): CareDraft {
  const number = (value: number | null): string => (value === null ? "" : String(value));
  const why = REASONS.find((reason) => nameKey(reason) === nameKey(row.reason));
  return {
    ...freshCare(),
    day: row.day,
    chosen: { [row.plant]: newId() },
    amounts: { [row.plant]: number(row.amountMl) },
    event: row.event,
    solution: row.solution,
    ec: number(row.ecMsCm),
    ecUnit: row.ecMsCm === null ? "" : "mS/cm",
    pH: number(row.pH),
    why: why ?? (row.reason === "" ? "" : "other"),
    reason: row.reason,
    note: row.note,
    corrects: row.id,
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
  if (draft.corrects !== "" && plants.length > 1) return "A correction is for one plant. Choose only that one.";
  if (!eventsToChoose(loaded).some(({ event }) => nameKey(event) === nameKey(draft.event))) {
    return "Choose what happened.";
  }
  const day = typedDay(draft.day, loaded.today);
  if (day === null) return "Choose the date.";
  const { amount, ec, pH } = careNumbers(draft, loaded);
  const problem = amount.problem ?? ec.problem ?? pH.problem ?? amountProblem(draft, plants);
  if (problem !== null) return problem;
  const reason = reasonOf(draft, loaded);
  if (draft.why === "other" && reason === "") return "Type the reason, or choose one of the list.";
  const early = reason === "" ? earlyAmong(draft, plants, loaded) : [];
  if (early.length > 0) return whyEarly(early);
  const amounts = amountsFor(draft, plants, loaded);
  return {
    ask: "log care",
    who,
    entries: plants.map(({ plant }) => ({
      id: draft.chosen[plant] ?? "",
      day,
      plant,
      event: draft.event,
      amountMl: amounts.get(plant) ?? null,
      solution: draft.solution.trim(),
      ecMsCm: ec.value,
      pH: pH.value,
      reason,
      note: draft.note.trim(),
      ...(draft.corrects === "" ? {} : { corrects: draft.corrects }),
    })),
  };
}
