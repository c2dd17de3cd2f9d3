/** Which plants take part in a trial, and the pairs that are proposed of them. */

import type { JSX } from "preact";
import { useId, useMemo } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import type { Pair } from "../src/core/assignment.ts";
import { nameKey } from "../src/core/cell.ts";
import { sayList } from "../src/core/saying.ts";
import { placesOf, plantsOnce } from "./care.ts";
import { SelectField } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { count } from "./show.ts";
import { pairingOf, trialPlants } from "./trial-draft.ts";
import { useStore } from "./use-store.ts";

function sayPair({ first, second, differs }: Pair): string {
  const names = `${first} and ${second}`;
  return differs.length === 0 ? `${names}: alike` : `${names}: another ${sayList(differs, "and")}`;
}

export function TrialPlants(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const { draft: store } = panel.trials;
  const draft = useStore(store);
  const title = useId();
  const shown = plantsOnce(loaded.plants).filter(
    ({ place }) => draft.place === "" || nameKey(place) === nameKey(draft.place),
  );
  const chosen = trialPlants(draft, loaded.plants);
  const { pairs, left } = useMemo(() => pairingOf(draft, loaded.plants), [draft, loaded.plants]);
  const choose = (names: readonly string[], on: boolean): void =>
    store.change((now) => ({
      ...now,
      plants: on ? [...new Set([...now.plants, ...names])] : now.plants.filter((plant) => !names.includes(plant)),
    }));
  const names = shown.map(({ plant }) => plant);
  const all = names.length > 0 && names.every((plant) => draft.plants.includes(plant));
  return (
    <fieldset>
      <legend id={title}>Plants that take part</legend>
      <SelectField
        label="Place"
        value={draft.place}
        options={[
          { value: "", words: "All places" },
          ...placesOf(loaded.plants).map((place) => ({ value: place, words: place })),
        ]}
        onType={(place) => store.change((now) => ({ ...now, place }))}
      />
      <label class="tick all">
        <input type="checkbox" checked={all} onChange={(event) => choose(names, event.currentTarget.checked)} />
        <span>Select all {names.length} shown</span>
      </label>
      <ul class="ticks" aria-labelledby={title}>
        {shown.map(({ plant, kind, place }) => (
          <li key={plant}>
            <label class="tick">
              <input
                type="checkbox"
                checked={draft.plants.includes(plant)}
                onChange={(event) => choose([plant], event.currentTarget.checked)}
              />
              <span>
                {plant}
                <small>{[kind, place].filter((part) => part !== "").join(" · ")}</small>
              </span>
            </label>
          </li>
        ))}
      </ul>
      <p class="tally">{chosen.length === 0 ? "No plant is chosen." : `${count(chosen.length, "plant")} chosen.`}</p>
      {draft.design === "Pairs" && pairs.length > 0 && (
        <>
          <p class="title">{count(pairs.length, "pair")} proposed, most alike first</p>
          <ul class="sentences">
            {pairs.map((pair) => (
              <li key={pair.first}>{sayPair(pair)}.</li>
            ))}
          </ul>
          {left !== null && <p class="hint">{left} is left over and takes no part.</p>}
        </>
      )}
    </fieldset>
  );
}
