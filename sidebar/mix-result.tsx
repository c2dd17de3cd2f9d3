/** What a batch works out to: doses to measure, each element against its target, and what cannot be reached. */

import type { JSX } from "preact";
import { sayList, sayNumber } from "../src/core/saying.ts";
import type { NotReached } from "../src/core/solve.ts";
import type { DoseLine, Worked } from "./batch.ts";
import { besides, capital, type Gauge, gauges, NEAR, offBy } from "./gauge.ts";
import { showDose } from "./show.ts";

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
        {lines.map(({ feed, perLitre, unit }) => (
          <tr key={feed}>
            <th scope="row">{feed}</th>
            {perLitre === 0 ? (
              <td colSpan={2}>none needed</td>
            ) : (
              <>
                <td>{showDose(perLitre, unit)}</td>
                <td>
                  <strong>{litres === null ? "–" : showDose(perLitre * litres, unit)}</strong>
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
  const { reached, target, water } = props.worked;
  if (reached === null) return null;
  const wanted = target?.amounts ?? {};
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

export function MixResult(props: { readonly worked: Worked }): JSX.Element {
  const { worked } = props;
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
