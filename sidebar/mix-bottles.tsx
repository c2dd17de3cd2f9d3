/** Two stock bottles of the batch on show: calcium in one, sulfate and phosphate in the other, dosed by the millilitre. */

import type { JSX } from "preact";
import type { Bottle, Bottles } from "../src/core/bottles.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { Worked } from "./batch.ts";
import { type BottlesDraft, bottlesFor } from "./bottles-draft.ts";
import { TextField } from "./field.tsx";
import { showDose } from "./show.ts";
import type { Store } from "./store.ts";
import { useStore } from "./use-store.ts";

function OneBottle({ bottle }: { readonly bottle: Bottle }): JSX.Element {
  const { name, parts, tightest, share } = bottle;
  return (
    <>
      <h4>Bottle {name}</h4>
      {parts.length === 0 ? (
        <p class="empty">Nothing goes into this one.</p>
      ) : (
        <ul class="besides">
          {parts.map(({ feed, amount, unit }) => (
            <li key={feed.name}>
              {feed.name} <strong>{showDose(amount, unit)}</strong>
            </li>
          ))}
        </ul>
      )}
      {tightest !== null && parts.length > 0 && (
        <p class="hint">
          Closest to falling out: {tightest.name}, at {sayNumber(100 * share)} % of what dissolves at room temperature.
        </p>
      )}
    </>
  );
}

function Answer({ bottles, litres }: { readonly bottles: Bottles; readonly litres: number }): JSX.Element {
  const { a, b, mlPerLitre, notices, fits, mostFactor } = bottles;
  return (
    <>
      {notices.length > 0 && (
        <ul class="sentences">
          {notices.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <OneBottle bottle={a} />
      <OneBottle bottle={b} />
      {fits && (
        <>
          <p>
            Dissolve each in low-mineral water and fill up to {sayNumber(litres)} L. For each litre of solution stir in{" "}
            <strong>{sayNumber(mlPerLitre)} mL</strong> of A, then {sayNumber(mlPerLitre)} mL of B, never one into the
            other.
          </p>
          {Number.isFinite(mostFactor) && (
            <p class="hint">Up to {Math.floor(mostFactor)} times as strong would do, as far as is published.</p>
          )}
        </>
      )}
      <p class="caution">
        Concentrates look like drinks: label both with what is in them, how strong and since when, and keep them shut,
        dark, and out of reach of children and pets.
      </p>
    </>
  );
}

export function MixBottles(props: {
  readonly worked: Worked;
  readonly draft: Store<BottlesDraft>;
}): JSX.Element | null {
  const draft = useStore(props.draft);
  if (!props.worked.lines.some(({ perLitre }) => perLitre > 0)) return null;
  const { factor, litres, bottles, problem } = bottlesFor(props.worked, draft);
  const type = (change: Partial<BottlesDraft>): void => props.draft.change((now) => ({ ...now, ...change }));
  return (
    <details class="quiet">
      <summary>Two stock bottles instead, for many batches</summary>
      <div class="pair">
        <TextField
          label="Times stronger"
          number
          value={draft.factor}
          problem={factor.problem}
          onType={(text) => type({ factor: text })}
        />
        <TextField
          label="Bottle, L"
          number
          value={draft.litres}
          problem={litres.problem}
          onType={(text) => type({ litres: text })}
        />
      </div>
      {problem !== null && <p class="wrong">{problem}</p>}
      {bottles !== null && litres.value !== null && <Answer bottles={bottles} litres={litres.value} />}
    </details>
  );
}
