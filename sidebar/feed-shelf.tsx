/** The shelf: feeds to tick, those ticked with their dose where doses are typed, and those that enter no recipe. */

import type { JSX } from "preact";
import { useId } from "preact/hooks";
import type { DoseUnit } from "../src/core/dose.ts";
import type { Feed, ShelfFeed } from "../src/core/feeds.ts";
import { type BatchDraft, chooseFeed } from "./batch-draft.ts";
import { unitOfDose, unitsFor } from "./batch-typed.ts";
import { Field } from "./field.tsx";
import type { Store } from "./store.ts";
import type { Typed } from "./typed.ts";
import { useStore } from "./use-store.ts";

const UNIT_WORDS: Readonly<Record<DoseUnit, string>> = {
  "g/L": "g per litre",
  "mL/L": "mL per litre",
  "g/gal": "g per US gallon",
  "mL/gal": "mL per US gallon",
  "tsp/gal": "US teaspoons per US gallon",
  "oz/gal": "oz per US gallon",
  "floz/gal": "US fl oz per US gallon",
};

function DoseField(props: {
  readonly feed: Feed;
  readonly draft: Store<BatchDraft>;
  readonly read: Typed | undefined;
}): JSX.Element {
  const { feed, draft } = props;
  const now = useStore(draft);
  return (
    <Field
      label="Dose"
      of={feed.name}
      problem={props.read?.problem}
      input={(marks) => (
        <div class="joined">
          <input
            {...marks}
            type="text"
            inputMode="decimal"
            autocomplete="off"
            value={now.doses[feed.name] ?? ""}
            onInput={(event) => {
              const text = event.currentTarget.value;
              draft.change((old) => ({ ...old, doses: { ...old.doses, [feed.name]: text } }));
            }}
          />
          <select
            aria-label={`Unit of the dose of ${feed.name}`}
            value={unitOfDose(now, feed)}
            onChange={(event) => {
              const unit = event.currentTarget.value;
              draft.change((old) => ({ ...old, units: { ...old.units, [feed.name]: unit } }));
            }}
          >
            {unitsFor(feed).map((unit) => (
              <option key={unit} value={unit} selected={unit === unitOfDose(now, feed)}>
                {UNIT_WORDS[unit]}
              </option>
            ))}
          </select>
        </div>
      )}
    />
  );
}

export function FeedShelf(props: {
  readonly shelf: readonly ShelfFeed[];
  readonly draft: Store<BatchDraft>;
  readonly doses: Readonly<Record<string, Typed>>;
}): JSX.Element {
  const { draft } = props;
  const now = useStore(draft);
  const title = useId();
  const usable = props.shelf.flatMap(({ feed }) => (feed === null ? [] : [feed]));
  const others = props.shelf.filter(({ feed }) => feed === null);
  return (
    <fieldset>
      <legend id={title}>Feeds</legend>
      {usable.length === 0 && (
        <p class="empty">No feed on the Feeds tab can enter a recipe yet. Write one there with its printed analysis.</p>
      )}
      <ul class="ticks open" aria-labelledby={title}>
        {usable.map((feed) => {
          const on = now.feeds.includes(feed.name);
          return (
            <li key={feed.name}>
              <label class="tick">
                <input
                  type="checkbox"
                  checked={on}
                  onChange={(event) => {
                    const ticked = event.currentTarget.checked;
                    draft.change((old) => chooseFeed(old, feed.name, ticked));
                  }}
                />
                <span>{feed.name}</span>
              </label>
              {on && now.mode === "doses" && <DoseField feed={feed} draft={draft} read={props.doses[feed.name]} />}
            </li>
          );
        })}
      </ul>
      {others.length > 0 && (
        <details class="quiet">
          <summary>On the shelf, but not for a recipe: {others.length}</summary>
          <ul class="sentences">
            {others.map(({ name, reason }) => (
              <li key={name + reason}>{reason}</li>
            ))}
          </ul>
        </details>
      )}
    </fieldset>
  );
}
