/** The card of a batch, to print or to send: what to measure, in which order, with its cautions and what to expect. */

import type { BatchRow } from "../src/app/contract.ts";
import { ACID_CAUTION, BASE_CAUTION } from "../src/core/acid-dose.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { DoseLine, Worked } from "./batch.ts";
import type { ChemistryOf } from "./batch-chemistry.ts";
import { repeatResult } from "./batch-repeat.ts";
import type { Shelf } from "./batch-shelf.ts";
import { namedWater } from "./choices.ts";
import { stockMl } from "./measuring-ways.ts";
import { stepsOf } from "./mix-state.ts";
import { orderAcidOf, pastOf } from "./past-batch.ts";
import { showDay, showDose, showMeasured } from "./show.ts";

export interface BatchCard {
  /** "8 L of “Rooting, weak”". */
  readonly title: string;
  /** "Planned", "Mixed", "Not in the log yet". */
  readonly state: string;
  readonly day: string;
  readonly who: string;
  readonly water: string;
  readonly doses: readonly { readonly feed: string; readonly amount: string; readonly how: string }[];
  readonly acid: string;
  readonly ec: string;
  readonly pH: string;
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
  readonly note: string;
}

/** In every card; common practice, no source. */
const ALWAYS =
  "Weigh dry salts away from food. Label every bottle. Keep feeds and solutions from children and pets. The product’s label comes first.";

function titleOf(litres: number, target: string): string {
  return `${sayNumber(litres)} L${target === "" ? "" : ` of “${target}”`}`;
}

function doseOf(line: DoseLine): BatchCard["doses"][number] {
  const { feed, perBatch, unit, measuredBy, how, stock } = line;
  const amount = perBatch ?? 0;
  if (stock !== null) {
    const bottle = `${sayNumber(stock.solute)} ${stock.unit} in ${sayNumber(stock.bottleMl)} mL`;
    return { feed, amount: showMeasured(stockMl(amount, stock.perMl), "mL"), how: `of the stock, ${bottle}` };
  }
  return {
    feed,
    amount: measuredBy === null ? showDose(amount, unit) : showMeasured(amount, unit),
    how,
  };
}

const weighed = (lines: readonly DoseLine[]): BatchCard["doses"] =>
  lines.filter(({ perLitre }) => perLitre > 0).map(doseOf);

/** What stands on the card of the batch that is being put together; null until it can be mixed. */
export function cardOfDraft(
  worked: Worked,
  shelf: Pick<Shelf, "waterRows" | "tools">,
  { chemistry, acid, ec, day, who, note, state }: CardExtras,
): BatchCard | null {
  const litres = worked.litres.value;
  const order = stepsOf(worked, { acid: chemistry?.plan?.order ?? orderAcidOf(acid), ...shelf });
  if (litres === null || order === null || worked.lines.length === 0) return null;
  const standing = chemistry?.acid?.standing ?? chemistry?.mix.standing ?? null;
  const now = chemistry?.acid?.targetPH ?? (standing === null ? null : (chemistry?.mix.now.pH ?? null));
  return {
    title: titleOf(litres, worked.target?.name ?? ""),
    state,
    day: showDay(day),
    who,
    water: worked.water?.name ?? "",
    doses: weighed(worked.lines),
    acid,
    ec,
    pH:
      now === null || standing === null
        ? ""
        : `${now.toFixed(1)} when mixed, about ${standing.pH.toFixed(1)} once it has stood`,
    steps: order.steps.map(({ text }) => text),
    cautions: [
      ...(order.apart === null ? [] : [order.apart]),
      ...new Set([...order.steps.map(({ caution }) => caution).filter((one) => one !== ""), ...acidCaution(acid)]),
      ALWAYS,
    ],
    note,
  };
}

interface CardExtras {
  readonly chemistry: ChemistryOf | null;
  /** As the log would have it; "" for none. */
  readonly acid: string;
  readonly ec: string;
  /** ISO day. */
  readonly day: string;
  readonly who: string;
  readonly note: string;
  readonly state: string;
}

function acidCaution(acid: string): string[] {
  if (acid === "") return [];
  return [/potassium/i.test(acid) ? BASE_CAUTION : ACID_CAUTION];
}

/** The card of a batch in the log, with the amounts as they were logged; or the sentence that says why there is none. */
export function cardOfRow(row: BatchRow, shelf: Shelf): BatchCard | string {
  const past = pastOf(row);
  if (typeof past === "string") return past;
  const { lines: logged, feeds } = repeatResult(past, past.litres, {
    shelf,
    measuring: { tools: shelf.tools, by: "any", stocks: [] },
    water: {},
  });
  // The log keeps six figures; four are finer than any scale at hand.
  const lines = (logged ?? []).map((line): DoseLine => {
    return { ...line, perBatch: Number((line.perBatch ?? 0).toPrecision(4)), measuredBy: "tool" };
  });
  const worked = {
    lines,
    feeds,
    litres: { value: past.litres, problem: null },
    water: namedWater(shelf.waters, past.water),
  };
  const acid = orderAcidOf(past.acid);
  const order = stepsOf(worked, { acid, ...shelf });
  const { predictedEcMsCm, measuredEcMsCm, measuredPH } = past;
  const [, aimed = ""] = /to pH (\d+(?:\.\d+)?)$/.exec(past.acid) ?? [];
  const measured = measuredEcMsCm === null ? "" : `, measured ${measuredEcMsCm.toFixed(2)}`;
  return {
    title: titleOf(past.litres, past.target),
    state: row.state === "planned" ? "Planned" : "Mixed",
    day: past.day === "" ? "" : showDay(past.day),
    who: row.who,
    water: past.water,
    doses: weighed(lines),
    acid: past.acid,
    ec:
      predictedEcMsCm === null
        ? measured.replace(/^, /, "")
        : `${predictedEcMsCm.toFixed(2)} mS/cm at 25 °C${measured}`,
    pH: [...(aimed === "" ? [] : [aimed]), ...(measuredPH === null ? [] : [`measured ${sayNumber(measuredPH)}`])].join(
      ", ",
    ),
    steps: [
      ...(order?.steps.map(({ text }) => text) ?? []),
      ...(past.acid === "" || acid !== null
        ? []
        : [`Acid or base: ${past.acid}. Four fifths first, then read the pH.`]),
    ],
    cautions: [...(order?.apart == null ? [] : [order.apart]), ...acidCaution(past.acid), ALWAYS],
    note: row.note,
  };
}

/** The card as plain text, to be sent. */
export function cardText(card: BatchCard): string {
  const { title, state, day, who, water, doses, acid, ec, pH, steps, cautions, note } = card;
  return [
    `${title} (${state.toLowerCase()})`,
    [day, who, water].filter((part) => part !== "").join(", "),
    "",
    ...doses.map(({ feed, amount, how }) => `${feed}: ${amount}${how === "" ? "" : ` (${how})`}`),
    ...(acid === "" ? [] : [`Acid or base: ${acid}`]),
    ...(ec === "" ? [] : [`EC to expect: ${ec}`]),
    ...(pH === "" ? [] : [`pH to expect: ${pH}`]),
    "",
    ...steps.map((step, at) => `${at + 1}. ${step}`),
    "",
    ...cautions,
    ...(note === "" ? [] : ["", note]),
  ].join("\n");
}
