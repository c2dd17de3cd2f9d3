/** Goals beyond the target row: strength, ratios, limits and weights, cost, fewest feeds. Folded away until wanted. */

import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import { ELEMENT_NAMES } from "../src/core/elements.ts";
import type { Worked } from "./batch.ts";
import { type Option, SelectField, TextField } from "./field.tsx";
import { type Goals, type GoalsDraft, goalsOf, goalWords, LIMITED } from "./goals-draft.ts";
import type { Panel } from "./panel-state.ts";
import { useStore } from "./use-store.ts";

const STRENGTHS: readonly (Option & { readonly value: GoalsDraft["strength"] })[] = [
  { value: "", words: "As the target says" },
  { value: "EC", words: "By EC" },
  { value: "N", words: "By nitrogen" },
];

const PREFERENCES: readonly (Option & { readonly value: GoalsDraft["prefer"] })[] = [
  { value: "closest", words: "Closest to the target" },
  { value: "cheapest", words: "Cheapest that is close" },
  { value: "use up", words: "Use up some feeds first" },
];

type Change = (change: Partial<GoalsDraft>) => void;

function Limits(props: { readonly draft: GoalsDraft; readonly goals: Goals; readonly change: Change }): JSX.Element {
  const { draft, goals, change } = props;
  const cell = (field: "atLeast" | "atMost" | "weights", what: string, symbol: string, name: string): JSX.Element => {
    const wrong = goals.problems[`${field} ${symbol}`];
    return (
      <td>
        <input
          type="text"
          inputMode="decimal"
          autocomplete="off"
          aria-label={`${what} of ${name}`}
          aria-invalid={wrong === undefined ? undefined : "true"}
          value={draft[field][symbol] ?? ""}
          onInput={(event) => change({ [field]: { ...draft[field], [symbol]: event.currentTarget.value } })}
        />
      </td>
    );
  };
  const wrongs = Object.entries(goals.problems).filter(([field]) => / /.test(field));
  return (
    <details class="quiet">
      <summary>Limits and weights, element by element</summary>
      <p class="hint">mg/L, water included. A weight of 2 makes an element count twice as much as the others.</p>
      <table class="limits">
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">Element</span>
            </th>
            <th scope="col">At least</th>
            <th scope="col">At most</th>
            <th scope="col">Weight</th>
          </tr>
        </thead>
        <tbody>
          {LIMITED.map((symbol) => {
            const name = ELEMENT_NAMES[symbol];
            return (
              <tr key={symbol}>
                <th scope="row">
                  <abbr title={name}>{symbol}</abbr>
                </th>
                {cell("atLeast", "At least", symbol, name)}
                {cell("atMost", "At most", symbol, name)}
                {cell("weights", "Weight", symbol, name)}
              </tr>
            );
          })}
        </tbody>
      </table>
      {wrongs.map(([field, problem]) => (
        <p class="wrong" key={field}>
          {problem}
        </p>
      ))}
    </details>
  );
}

function UseFirst(props: {
  readonly worked: Worked;
  readonly draft: GoalsDraft;
  readonly change: Change;
}): JSX.Element {
  const { worked, draft, change } = props;
  return (
    <fieldset>
      <legend>Use up first</legend>
      {worked.feeds.length === 0 && <p class="empty">Tick the feeds of the batch first.</p>}
      <ul class="ticks open">
        {worked.feeds.map(({ name }) => (
          <li key={name}>
            <label class="tick">
              <input
                type="checkbox"
                checked={draft.useFirst.includes(name)}
                onChange={(event) => {
                  const others = draft.useFirst.filter((one) => one !== name);
                  change({ useFirst: event.currentTarget.checked ? [...others, name] : others });
                }}
              />
              <span>{name}</span>
            </label>
          </li>
        ))}
      </ul>
    </fieldset>
  );
}

/** Prices stand among the further records, which are read when they are first needed. */
function useRecords(panel: Panel, needed: boolean): void {
  const { records, recordsLoading } = panel;
  useEffect(() => {
    if (needed && records.get() === null) recordsLoading.press();
  }, [needed, records, recordsLoading]);
}

export function MixGoals(props: { readonly panel: Panel; readonly worked: Worked }): JSX.Element {
  const { panel, worked } = props;
  const draft = useStore(panel.batch.draft).goals;
  const goals = goalsOf(draft);
  const change: Change = (part) => panel.batch.draft.change((now) => ({ ...now, goals: { ...now.goals, ...part } }));
  useRecords(panel, draft.prefer !== "closest");
  const words = goalWords(goals);
  const pick = <V extends string>(options: readonly (Option & { readonly value: V })[], text: string, first: V): V =>
    options.find(({ value }) => value === text)?.value ?? first;
  return (
    <details class="quiet">
      <summary>More goals{words === "" ? "" : `: ${words}`}</summary>
      <SelectField
        label="Strength"
        value={draft.strength}
        options={STRENGTHS}
        onType={(text) => change({ strength: pick(STRENGTHS, text, "") })}
      />
      {draft.strength !== "" && (
        <TextField
          label={draft.strength === "EC" ? "EC to reach, mS/cm at 25 °C" : "Nitrogen to reach, mg/L"}
          hint={
            draft.strength === "EC"
              ? "Water included, before any acid or base. The target then says only the proportions."
              : "Water included. All of the target goes up or down with it."
          }
          number
          value={draft.strengthText}
          problem={goals.problems.strengthText}
          onType={(strengthText) => change({ strengthText })}
        />
      )}
      <div class="pair">
        <TextField label="N : P : K" value={draft.npk} problem={goals.problems.npk} onType={(npk) => change({ npk })} />
        <TextField
          label="K : Ca : Mg"
          value={draft.kCaMg}
          problem={goals.problems.kCaMg}
          onType={(kCaMg) => change({ kCaMg })}
        />
      </div>
      <p class="hint">Parts by weight of the elements, not of P2O5 and K2O, like 3:1:2. Blank: as the target says.</p>
      <TextField
        label="Ammonium, at most % of the nitrogen"
        number
        value={draft.ammonium}
        problem={goals.problems.ammonium}
        onType={(ammonium) => change({ ammonium })}
      />
      <Limits draft={draft} goals={goals} change={change} />
      <SelectField
        label="Of the mixes that are close, take"
        value={draft.prefer}
        options={PREFERENCES}
        onType={(text) => change({ prefer: pick(PREFERENCES, text, "closest") })}
      />
      {draft.prefer === "use up" && <UseFirst worked={worked} draft={draft} change={change} />}
      <label class="tick">
        <input
          type="checkbox"
          checked={draft.fewest}
          onChange={(event) => change({ fewest: event.currentTarget.checked })}
        />
        <span>As few feeds as possible</span>
      </label>
      {(draft.fewest || draft.prefer !== "closest") && (
        <TextField
          label="Close means: off by at most, %"
          hint={draft.fewest ? "For each element." : "On average, more than the closest mix."}
          number
          value={draft.tolerance}
          problem={goals.problems.tolerance}
          onType={(tolerance) => change({ tolerance })}
        />
      )}
    </details>
  );
}
