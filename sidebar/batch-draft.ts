/** The draft of a batch: what was chosen and typed, and the id of its row. */

import type { RequestFor } from "../src/app/contract.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { StockOf } from "../src/core/tool-text.ts";
import type { Worked } from "./batch.ts";
import { type BatchChemistry, withAcid } from "./batch-chemistry.ts";
import { isRecord, textOf, textsOf } from "./drafts.ts";
import { type GoalsDraft, NO_GOALS, readGoals } from "./goals-draft.ts";
import type { NewId } from "./ids.ts";
import { type MeasureBy, stockMl } from "./measuring-ways.ts";
import { type PastBatch, readPast } from "./past-batch.ts";
import { showMeasured } from "./show.ts";
import { typedDay } from "./typed.ts";

export interface BatchDraft {
  /** Of the row, made once and kept until it is in the log. */
  readonly id: string;
  /** "target": doses are worked out; "doses": they are typed; "repeat": they are those of `past`. */
  readonly mode: "target" | "doses" | "repeat";
  /** The old batch that is repeated or corrected; null for none. */
  readonly past: PastBatch | null;
  /** Id of the row that this batch replaces once it is logged; "" for none. */
  readonly corrects: string;
  /** Only planned: it is logged as mixed later. */
  readonly planned: boolean;
  /** Keys of the choices. */
  readonly water: string;
  readonly target: string;
  /** Names of the chosen feeds. */
  readonly feeds: readonly string[];
  readonly litres: string;
  /** Feed → dose and unit as typed. */
  readonly doses: Readonly<Record<string, string>>;
  readonly units: Readonly<Record<string, string>>;
  /** ISO day, "" for today. */
  readonly day: string;
  readonly note: string;
  readonly measureBy: MeasureBy;
  /** Stock solutions taken for this batch and those that follow, beside those in Settings. */
  readonly stocks: readonly StockOf[];
  /** Feeds that are weighed dry although Settings name a stock of them. */
  readonly dry: readonly string[];
  /** Feed → g that dissolve in a litre, from its label. */
  readonly solubility: Readonly<Record<string, string>>;
  readonly goals: GoalsDraft;
  /** True from when the row is in the log until another batch is begun. */
  readonly logged: boolean;
}

export function freshBatch(newId: NewId): BatchDraft {
  return {
    id: newId(),
    mode: "target",
    past: null,
    corrects: "",
    planned: false,
    water: "",
    target: "",
    feeds: [],
    litres: "",
    doses: {},
    units: {},
    day: "",
    note: "",
    measureBy: "scale",
    stocks: [],
    dry: [],
    solubility: {},
    goals: NO_GOALS,
    logged: false,
  };
}

function readStocks(kept: unknown): StockOf[] {
  if (!Array.isArray(kept)) return [];
  return kept.flatMap((one: unknown) => {
    if (!isRecord(one) || typeof one.solute !== "number" || typeof one.bottleMl !== "number") return [];
    const { solute, bottleMl } = one;
    const unit = one.unit === "mL" ? ("mL" as const) : ("g" as const);
    return solute > 0 && bottleMl > 0 ? [{ feed: textOf(one, "feed"), solute, unit, bottleMl }] : [];
  });
}

const names = (kept: unknown): string[] =>
  Array.isArray(kept) ? kept.filter((name): name is string => typeof name === "string") : [];

export function readBatch(kept: unknown): BatchDraft | null {
  if (!isRecord(kept) || !/^[a-z0-9-]{8,64}$/.test(textOf(kept, "id"))) return null;
  const past = readPast(kept.past);
  return {
    id: textOf(kept, "id"),
    mode: kept.mode === "doses" || (kept.mode === "repeat" && past !== null) ? kept.mode : "target",
    past,
    corrects: past === null ? "" : textOf(kept, "corrects"),
    planned: kept.planned === true,
    water: textOf(kept, "water"),
    target: textOf(kept, "target"),
    feeds: names(kept.feeds),
    litres: textOf(kept, "litres"),
    doses: textsOf(kept.doses),
    units: textsOf(kept.units),
    day: textOf(kept, "day"),
    note: textOf(kept, "note"),
    measureBy: kept.measureBy === "spoons" || kept.measureBy === "any" ? kept.measureBy : "scale",
    stocks: readStocks(kept.stocks),
    dry: names(kept.dry),
    solubility: textsOf(kept.solubility),
    goals: readGoals(kept.goals),
    logged: kept.logged === true,
  };
}

/** The next batch: the choices stay, as most people mix the same again; what belongs to one batch goes. */
export function nextBatch(draft: BatchDraft, newId: NewId): BatchDraft {
  const mode = draft.mode === "repeat" ? "target" : draft.mode;
  return { ...draft, mode, id: newId(), day: "", note: "", logged: false, planned: false, past: null, corrects: "" };
}

/** A correction keeps what the meters said about the batch, which does not change with what was written down wrongly. */
function measuredBefore({ corrects, past, planned }: BatchDraft) {
  if (corrects === "" || past === null || planned) return {};
  const { measuredEcMsCm, measuredPH } = past;
  return measuredEcMsCm === null && measuredPH === null ? {} : { measured: { ecMsCm: measuredEcMsCm, pH: measuredPH } };
}

/** The log keeps a stock as what it holds of its feed, so the note says how it was measured. */
function stockNote({ lines }: Worked): string {
  return lines
    .flatMap(({ feed, perBatch, stock }) =>
      stock === null || perBatch === null || perBatch === 0
        ? []
        : [
            `${feed}: ${showMeasured(stockMl(perBatch, stock.perMl), "mL")} of a stock of ${sayNumber(stock.solute)} ${stock.unit} in ${sayNumber(stock.bottleMl)} mL.`,
          ],
    )
    .join(" ");
}

/** The request for what is worked out now, or the sentence that says what is missing. */
export function makeBatch(
  draft: BatchDraft,
  worked: Worked,
  { who, today, chemistry }: { who: string; today: string; chemistry: BatchChemistry },
): RequestFor<"log batch"> | string {
  if (who === "") return "Type your name first, so that the log can say who did this.";
  const wrongDose = Object.values(worked.doses).find(({ problem }) => problem !== null)?.problem ?? null;
  const problem = worked.missing ?? worked.problem ?? wrongDose ?? worked.litres.problem;
  if (problem !== null) return problem;
  const litres = worked.litres.value;
  if (litres === null || litres === 0) return "Type how many litres you mix.";
  const undosed = worked.feeds.filter(({ name }) => !worked.lines.some(({ feed }) => feed === name));
  if (undosed.length > 0) return `Type the dose of ${undosed[0]?.name}, or take that feed out of the choice.`;
  const doses = worked.lines
    .filter(({ perLitre }) => perLitre > 0)
    .map(({ feed, perLitre, unit, perBatch }) => ({ feed, perLitre, unit, perBatch: perBatch ?? perLitre * litres }));
  if (doses.length === 0) return "There is nothing to weigh: every dose is 0.";
  const day = typedDay(draft.day, today);
  if (day === null) return "Choose the date.";
  return {
    ask: "log batch",
    who,
    batch: {
      id: draft.id,
      day,
      litres,
      water: worked.water?.name ?? "",
      target: worked.target?.name ?? "",
      doses,
      ...(draft.planned ? { state: "planned" as const } : {}),
      ...(draft.corrects === "" ? {} : { corrects: draft.corrects }),
      ...measuredBefore(draft),
      reached: withAcid(worked.reached ?? {}, chemistry.adds),
      predictedEcMsCm: chemistry.predictedEcMsCm,
      acid: chemistry.acid,
      note: [draft.note.trim(), stockNote(worked)].filter((part) => part !== "").join(" "),
    },
  };
}

/** Takes a feed into the choice, or out of it. */
export function chooseFeed(draft: BatchDraft, name: string, on: boolean): BatchDraft {
  const others = draft.feeds.filter((feed) => feed !== name);
  return { ...draft, feeds: on ? [...others, name] : others };
}

/**
 * Going over to typing doses starts from what was worked out, so that a person can change one of them;
 * what was typed before stays.
 */
export function switchMode(draft: BatchDraft, mode: BatchDraft["mode"], worked: Worked): BatchDraft {
  if (mode === draft.mode || mode === "repeat") return draft;
  if (mode === "target" || Object.keys(draft.doses).length > 0) return { ...draft, mode };
  return fillDoses({ ...draft, mode }, worked);
}

/** Types the doses that were worked out, rounded as they are shown, over what was typed before. */
export function fillDoses(draft: BatchDraft, worked: Worked): BatchDraft {
  const doses: Record<string, string> = { ...draft.doses };
  const units: Record<string, string> = { ...draft.units };
  for (const { feed, perLitre, unit } of worked.lines) {
    doses[feed] = sayNumber(perLitre);
    units[feed] = unit === "mL" ? "mL/L" : "g/L";
  }
  return { ...draft, doses, units };
}
