/** What a feed holds as elements, and how far each may lie below its label. */

import type { JSX } from "preact";
import { allowancePercent } from "../src/core/allowances.ts";
import { ELEMENT_NAMES, SYMBOLS } from "../src/core/elements.ts";
import type { Feed } from "../src/core/feeds.ts";
import { slowNitrogen } from "../src/core/gaps.ts";
import { sayNumber } from "../src/core/saying.ts";
import { capital } from "./gauge.ts";

export function FeedFacts(props: { readonly feed: Feed }): JSX.Element {
  const { feed } = props;
  const { percent, basis } = feed.label;
  const shown = SYMBOLS.filter((symbol) => (percent[symbol] ?? 0) > 0);
  const slow = slowNitrogen(feed);
  return (
    <>
      <table class="doses">
        <caption>As elements, {basis === "w/v" ? "grams in 100 mL" : "percent by weight"}</caption>
        <thead>
          <tr>
            <th scope="col">Element</th>
            <th scope="col">holds</th>
            <th scope="col">may lack</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((symbol) => {
            const value = percent[symbol] ?? 0;
            const lack = allowancePercent(symbol, value);
            return (
              <tr key={symbol}>
                <th scope="row">
                  {capital(ELEMENT_NAMES[symbol])} {symbol}
                </th>
                <td>{sayNumber(value)}</td>
                <td>{lack === 0 ? "not published" : sayNumber(lack)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p class="hint">
        “May lack” is what an inspector still accepts below the label: New Hampshire Agr 1105.04; for N, P and K the
        schedule of the US control officials, from memory. So no mix is more exact than its labels.
      </p>
      {slow !== null && <p class="notice">{slow}</p>}
    </>
  );
}
