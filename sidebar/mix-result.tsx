/** What a batch works out to: doses to measure, each element against its target, and what cannot be reached. */

import type { JSX } from "preact";
import type { Cost } from "../src/core/cost.ts";
import { sayList, sayNumber } from "../src/core/saying.ts";
import type { NotReached } from "../src/core/solve.ts";
import type { DoseLine, Worked } from "./batch.ts";
import type { BatchDraft } from "./batch-draft.ts";
import { besides, capital, type Gauge, gauges, NEAR, offBy } from "./gauge.ts";
import { stockMl } from "./measuring-ways.ts";
import { gapSentences, StocksPart, TooCoarsePart } from "./mix-measure.tsx";
import { showDose, showMeasured } from "./show.ts";
import type { Store } from "./store.ts";
import type { HouseTools } from "./tools.ts";

/** What to measure out; an amount that tools can measure is shown to its last figure. */
function Amount({ line }: { readonly line: DoseLine }): JSX.Element {
  const { perBatch, unit, stock, how, measuredBy } = line;
  if (perBatch === null) return <strong>–</strong>;
  if (stock !== null) {
    return (
      <>
        <strong>{showMeasured(stockMl(perBatch, stock.perMl), "mL")}</strong>
        <small class="how">of the stock</small>
      </>
    );
  }
  return (
    <>
      <strong>{measuredBy !== null ? showMeasured(perBatch, unit) : showDose(perBatch, unit)}</strong>
      {how !== "" && <small class="how">{how}</small>}
    </>
  );
}

function DoseTable(props: { readonly lines: readonly DoseLine[]; readonly litres: number | null }): JSX.Element {
  const { lines, litres } = props;
  return (
    <table class="doses">
      <caption>Doses</caption>
      <thead>
        <tr>
          <th scope="col">Feed</th>
          <th scope="col">per litre</th>
          <th scope="col">{litres === null ? "for the batch" : `for ${sayNumber(litres)} L`}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.feed}>
            <th scope="row">{line.feed}</th>
            {line.perLitre === 0 ? (
              <td colSpan={2}>none needed</td>
            ) : (
              <>
                <td>{showDose(line.perLitre, line.unit)}</td>
                <td>
                  <Amount line={line} />
                </td>
              </>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const percent = (share: number): string => `${(100 * share).toFixed(2)}%`;

function Level(props: { readonly gauge: Gauge }): JSX.Element {
  const { symbol, name, wantedMgL, reachedMgL, far, words, waterShare, reachedShare, markShare } = props.gauge;
  const water = Math.min(waterShare, reachedShare);
  return (
    <li class={far ? "level far" : "level"}>
      <span class="line">
        <span>
          {name} <abbr title={name}>{symbol}</abbr>
        </span>{" "}
        <span>
          {sayNumber(reachedMgL)} of {sayNumber(wantedMgL)}
        </span>
      </span>
      <span class="trough" aria-hidden="true">
        <span class="water" style={{ width: percent(water) }} />
        <span class="feeds" style={{ left: percent(water), width: percent(reachedShare - water) }} />
        <span class="mark" style={{ left: percent(markShare) }} />
      </span>
      <span class="verdict">{words}</span>
    </li>
  );
}

function Levels(props: { readonly worked: Worked }): JSX.Element | null {
  const { reached, aimed, water } = props.worked;
  if (reached === null) return null;
  const wanted = aimed ?? {};
  const list = gauges(wanted, reached, water?.amounts ?? {});
  const others = besides(wanted, reached);
  return (
    <>
      {list.length > 0 && (
        <>
          <h4>Reached, of what is wanted, mg/L</h4>
          <p class="key" aria-hidden="true">
            <span class="swatch water" /> from the water <span class="swatch feeds" /> from feeds{" "}
            <span class="swatch mark" /> wanted
          </p>
          <ul class="levels">
            {list.map((gauge) => (
              <Level key={gauge.symbol} gauge={gauge} />
            ))}
          </ul>
        </>
      )}
      {others.length > 0 && (
        <>
          <h4>{list.length > 0 ? "Also in the mix, mg/L" : "In the mix, mg/L"}</h4>
          <ul class="besides">
            {others.map(({ symbol, mgL }) => (
              <li key={symbol}>
                {capital(symbol)} <strong>{sayNumber(mgL)}</strong>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function Whys(props: { readonly misses: readonly NotReached[] }): JSX.Element {
  return (
    <ul class="sentences">
      {props.misses.map(({ symbol, why }) => (
        <li key={symbol}>{why}</li>
      ))}
    </ul>
  );
}

function Notices(props: { readonly worked: Worked }): JSX.Element | null {
  const { notices, measured, cost } = props.worked;
  return (
    <>
      {notices.length > 0 && (
        <ul class="sentences">
          {notices.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {measured !== null && (
        <p class="hint" data-part="gap">
          {gapSentences(measured).join(" ")}
        </p>
      )}
      {cost !== null && <p data-part="cost">{costSentence(cost)}</p>}
    </>
  );
}

/** "This batch costs 0.42, 0.21 for 10 L, in your own money; 1 feed has no price on record." */
function costSentence({ perBatch, per10L, unpriced }: Cost): string {
  if (perBatch === 0 && unpriced.length > 0) {
    return "What this batch costs is not known: no purchase of its feeds says a price.";
  }
  const known = `This batch costs ${perBatch.toFixed(2)}, that is ${per10L.toFixed(2)} for 10 L, in your own money`;
  return unpriced.length === 0
    ? `${known}.`
    : `${known}, without ${sayList(
        unpriced.map(({ name }) => name),
        "and",
      )}: no purchase says the price.`;
}

export function MixResult(props: {
  readonly worked: Worked;
  readonly tools: HouseTools;
  readonly draft: Store<BatchDraft>;
}): JSX.Element {
  const { worked, tools, draft } = props;
  if (worked.problem !== null) return <p class="wrong">{worked.problem}</p>;
  if (worked.missing !== null) return <p class="empty">{worked.missing}</p>;
  const isFar = ({ wanted, reached }: NotReached): boolean => Math.abs(offBy(wanted, reached)) > NEAR;
  const far = worked.notReached.filter(isFar);
  const near = worked.notReached.filter((miss) => !isFar(miss));
  return (
    <>
      {worked.uncounted.length > 0 && (
        <p class="notice">Not counted: {sayList(worked.uncounted, "and")}. Type a dose that can be read.</p>
      )}
      <DoseTable lines={worked.lines} litres={worked.litres.value} />
      <Notices worked={worked} />
      {worked.measured !== null && <TooCoarsePart measured={worked.measured} tools={tools} draft={draft} />}
      <StocksPart worked={worked} draft={draft} />
      <p class="caution">
        Weigh dry salts away from food. Keep feeds and solutions from children and pets. Follow the product’s label.
      </p>
      <Levels worked={worked} />
      {far.length > 0 && (
        <>
          <h4>What cannot be reached, and why</h4>
          <Whys misses={far} />
        </>
      )}
      {near.length > 0 && (
        <details class="quiet">
          <summary>Within 5 %, and why not closer: {near.length}</summary>
          <Whys misses={near} />
        </details>
      )}
    </>
  );
}
