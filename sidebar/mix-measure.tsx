/** What measuring costs the batch in words a grower weighs, and stock solutions where the tools are too coarse. */

import type { JSX } from "preact";
import { ELEMENT_NAMES } from "../src/core/elements.ts";
import { sayGiven, sayList, sayNumber } from "../src/core/saying.ts";
import { bottleSteps } from "../src/core/stock.ts";
import type { Worked } from "./batch.ts";
import type { BatchDraft } from "./batch-draft.ts";
import { Button } from "./button.tsx";
import { TextField } from "./field.tsx";
import type { Measured } from "./mix-doses.ts";
import { count } from "./show.ts";
import { leaveStock, type OfferLine, offersFor, takeStocks } from "./stock-offers.ts";
import type { Store } from "./store.ts";
import type { HouseTools } from "./tools.ts";

/** How many elements are named before the rest is counted. */
const NAMED = 3;

/** Whole sentences on how far the measured doses are from the best possible. */
export function gapSentences({ off, offAtBest, moved, proven }: Measured): string[] {
  const percent = (share: number): string => `${sayNumber(100 * share)} %`;
  const named = moved.slice(0, NAMED).map(({ symbol, bestMgL, mgL }) => {
    return `${ELEMENT_NAMES[symbol]} comes to ${sayNumber(mgL)} instead of ${sayNumber(bestMgL)} mg/L`;
  });
  const rest = moved.length - named.length;
  const all =
    rest > 0 ? [...named, `${count(rest, "other element moves", "other elements move")} by more than 1 %`] : named;
  const first =
    moved.length === 0
      ? "With what you can measure, no element moves by more than 1 % from the best these feeds can do."
      : `With what you can measure, ${sayList(all, "and")}.`;
  const average =
    moved.length === 0
      ? []
      : [
          `On average an element is off by ${percent(off)}; with any amount measurable it would be ${percent(offAtBest)}.`,
        ];
  return [first, ...average, ...(proven ? ["No other amounts you can measure come closer over all."] : [])];
}

function Offer(props: { readonly line: OfferLine; readonly draft: Store<BatchDraft> }): JSX.Element {
  const { coarse, offer, asksSolubility, solubility } = props.line;
  const { stock, reason } = offer;
  const name = coarse.feed.name;
  const typed = props.draft.get().solubility[name] ?? "";
  return (
    <li>
      <p>{coarse.why}</p>
      {stock === null ? (
        <p>{reason}</p>
      ) : (
        <p>
          Stock solution: <strong>{`${sayGiven(stock.solute)} ${stock.unit} in ${stock.bottleMl} mL`}</strong> of
          low-mineral water; this batch then takes about <strong>{sayGiven(stock.doseMl)} mL</strong> of it.
          {stock.shareOfSolubility !== null &&
            ` It is at ${sayNumber(100 * stock.shareOfSolubility)} % of what dissolves at room temperature.`}
        </p>
      )}
      {asksSolubility && (
        <TextField
          label="Grams that dissolve in a litre, from the label"
          number
          value={typed}
          problem={solubility.problem}
          onType={(text) => props.draft.change((now) => ({ ...now, solubility: { ...now.solubility, [name]: text } }))}
        />
      )}
    </li>
  );
}

export function TooCoarsePart(props: {
  readonly measured: Measured;
  readonly tools: HouseTools;
  readonly draft: Store<BatchDraft>;
}): JSX.Element | null {
  const { measured, tools, draft } = props;
  if (measured.coarse.length === 0) return null;
  const lines = offersFor(measured.coarse, tools, draft.get().solubility);
  const offered = lines.filter(({ offer }) => offer.stock !== null);
  return (
    <div class="notice" data-part="too coarse">
      <h4>Too little to measure well</h4>
      <ul class="offers">
        {lines.map((line) => (
          <Offer key={line.coarse.feed.name} line={line} draft={draft} />
        ))}
      </ul>
      {offered.length > 0 && (
        <Button look="second" press={() => draft.change((now) => takeStocks(now, lines))}>
          {offered.length === 1 ? "Dose it from the stock solution" : "Dose these from stock solutions"}
        </Button>
      )}
    </div>
  );
}

/** The stocks that this batch is dosed from: how each is made, and the way back to weighing. */
export function StocksPart(props: { readonly worked: Worked; readonly draft: Store<BatchDraft> }): JSX.Element | null {
  const used = props.worked.lines.flatMap(({ stock }) => (stock === null ? [] : [stock]));
  if (used.length === 0) return null;
  return (
    <>
      {used.map((stock) => (
        <details class="quiet" key={stock.feed}>
          <summary>
            The stock of {stock.feed}: {sayGiven(stock.solute)} {stock.unit} in {sayGiven(stock.bottleMl)} mL
          </summary>
          <ol class="steps">
            {bottleSteps(stock).map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          <Button look="link" press={() => props.draft.change((now) => leaveStock(now, stock.feed))}>
            Measure {stock.feed} as it is instead
          </Button>
        </details>
      ))}
    </>
  );
}
