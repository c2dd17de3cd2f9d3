/** One trial: who gets what, what the log says so far, and, once its last day is over, what came out. */

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { sayNumber } from "../src/core/saying.ts";
import { meanOf, type TrialState } from "../src/core/trial.ts";
import type { PlantMeasure } from "../src/core/trial-measure.ts";
import { Button } from "./button.tsx";
import { isId } from "./claim-rows.ts";
import type { Panel } from "./panel-state.ts";
import { showDay, showDays } from "./show.ts";
import { canKeep, sayDraw, stateOf, type TrialRow } from "./trial-rows.ts";
import { useStore } from "./use-store.ts";

function Groups(props: { readonly trial: TrialRow }): JSX.Element {
  const { trial } = props;
  return (
    <dl>
      <div>
        <dt>Group A gets</dt>
        <dd>{trial.groupA === "" ? "Not written down." : trial.groupA}</dd>
      </div>
      <div>
        <dt>Group B gets</dt>
        <dd>{trial.groupB === "" ? "Not written down." : trial.groupB}</dd>
      </div>
    </dl>
  );
}

function sayMeasure(measure: PlantMeasure | undefined): string {
  if (measure === undefined) return "";
  if (measure.value === null) return "–";
  return measure.notYet ? `none in ${measure.value}` : sayNumber(measure.value);
}

/** Both sides line by line; in pairs each line is a pair. */
function Measures(props: { readonly trial: TrialRow; readonly state: TrialState }): JSX.Element {
  const { trial, state } = props;
  const lines = Array.from({ length: Math.max(state.a.length, state.b.length) }, (_, k) => k);
  const means = [meanOf(state.a), meanOf(state.b)];
  return (
    <details class="quiet">
      <summary>{trial.measure}, plant by plant</summary>
      <table class="doses sides">
        <caption class="unseen">
          {trial.measure} of each plant{trial.design === "Pairs" ? ", a pair in each line" : ""}
        </caption>
        <thead>
          <tr>
            <th scope="col">A</th>
            <th scope="col">
              <span class="unseen">{trial.measure} in A</span>
            </th>
            <th scope="col">B</th>
            <th scope="col">
              <span class="unseen">{trial.measure} in B</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map((k) => (
            <tr key={k}>
              <td class="words">{state.a[k]?.plant}</td>
              <td>{sayMeasure(state.a[k])}</td>
              <td class="words">{state.b[k]?.plant}</td>
              <td>{sayMeasure(state.b[k])}</td>
            </tr>
          ))}
          <tr>
            <td class="words">Mean of A</td>
            <td>{means[0] == null ? "–" : sayNumber(means[0])}</td>
            <td class="words">Mean of B</td>
            <td>{means[1] == null ? "–" : sayNumber(means[1])}</td>
          </tr>
        </tbody>
      </table>
      <p class="hint">A dash: the log says nothing about this plant in that time.</p>
    </details>
  );
}

export function TrialCard(props: {
  readonly panel: Panel;
  readonly trial: TrialRow;
  readonly loaded: Loaded;
}): JSX.Element {
  const { panel, trial, loaded } = props;
  const { who } = loaded;
  const sent = useStore(panel.trials.result.now);
  const state = useMemo(() => stateOf(trial, loaded), [trial, loaded]);
  return (
    <div class="card">
      <h3>{trial.question}</h3>
      <p class="hint">
        {trial.measure}, from {showDay(trial.from)} to {showDay(trial.to)}.
      </p>
      {typeof state === "string" ? (
        <p class="notice">{state}</p>
      ) : (
        <>
          {trial.result === "" ? <p>{showDays(state.sentence)}</p> : <p>{showDays(trial.result)}</p>}
          {canKeep(trial, state) && (
            <Button look="second" busy={sent.state === "under way"} press={() => panel.trials.keep(trial, state)}>
              Save this result
            </Button>
          )}
        </>
      )}
      <Groups trial={trial} />
      {typeof state !== "string" && <Measures trial={trial} state={state} />}
      <p class="hint">{sayDraw(trial)}</p>
      {trial.result === "" && isId(trial.id) && who !== "" && nameKey(trial.who) === nameKey(who) && (
        <p class="links">
          <Button look="link" press={() => panel.trials.takeBack.row(trial.id)}>
            Take this trial back
          </Button>
        </p>
      )}
    </div>
  );
}
