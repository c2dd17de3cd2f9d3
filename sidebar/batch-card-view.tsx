/** The card of a batch alone on the panel, big enough to read at arm's length, and on paper one A4 page. */

import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { type BatchCard, cardText } from "./batch-card.ts";
import { Button } from "./button.tsx";
import { Facts } from "./facts.tsx";

/** With more steps than this the print is set smaller, so that it stays one page. */
const LONG = 10;

const factsOf = (card: BatchCard): readonly (readonly [string, string])[] => [
  ["Date", card.day],
  ["By", card.who],
  ["Water", card.water],
  ["Acid or base", card.acid],
  ["EC to expect", card.ec],
  ["pH to expect", card.pH],
];

export function BatchCardView(props: {
  readonly card: BatchCard;
  readonly close: () => void;
  readonly print: () => void;
}): JSX.Element {
  const { card } = props;
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  return (
    <main class={card.steps.length > LONG ? "batch-card long" : "batch-card"} aria-labelledby="card-title">
      <div class="pair no-print">
        <Button look="primary" press={props.print}>
          Print
        </Button>
        <Button look="second" press={props.close}>
          Back
        </Button>
      </div>
      <p class="card-state">{card.state}</p>
      <h1 id="card-title" class="card-title" ref={title} tabIndex={-1}>
        {card.title}
      </h1>
      <Facts look="facts" facts={factsOf(card)} />
      <h2>Measure</h2>
      <table class="card-doses">
        <tbody>
          {card.doses.map(({ feed, amount, how }) => (
            <tr key={feed}>
              <th scope="row">
                {feed}
                {how !== "" && <small>{how}</small>}
              </th>
              <td>{amount}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h2>Steps</h2>
      <ol class="card-steps">
        {card.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <h2>Caution</h2>
      {card.cautions.map((caution) => (
        <p class="caution" key={caution}>
          {caution}
        </p>
      ))}
      {card.note !== "" && <p>{card.note}</p>}
      <details class="quiet no-print">
        <summary>As text, to send</summary>
        <textarea aria-label="The card as text" readOnly rows={12} value={cardText(card)} />
      </details>
    </main>
  );
}
