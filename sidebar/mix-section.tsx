/** "Mix a batch": water, target, feeds and litres in; doses and what they reach out, at every key. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { work } from "./batch.ts";
import { type BatchDraft, switchMode } from "./batch-draft.ts";
import type { Choice } from "./choices.ts";
import { FeedShelf } from "./feed-shelf.tsx";
import { type Option, SelectField, TextField } from "./field.tsx";
import { MixResult } from "./mix-result.tsx";
import { NameCard } from "./name-card.tsx";
import type { Panel } from "./panel-state.ts";
import { ReadingsCard } from "./readings-card.tsx";
import { Send } from "./send.tsx";
import { useStore } from "./use-store.ts";

const options = (choices: readonly Choice[], none: string): Option[] => [
  { value: "", words: none },
  ...choices.filter(({ amounts }) => amounts !== null).map(({ key, words }) => ({ value: key, words })),
];

function Unusable(props: { readonly choices: readonly Choice[] }): JSX.Element | null {
  const unusable = props.choices.filter(({ amounts }) => amounts === null);
  if (unusable.length === 0) return null;
  return (
    <ul class="sentences">
      {unusable.map(({ key, words, reason }) => (
        <li key={key}>
          {words} cannot be chosen. {reason}
        </li>
      ))}
    </ul>
  );
}

const MODES: readonly { mode: BatchDraft["mode"]; words: string }[] = [
  { mode: "target", words: "Work out doses for a target" },
  { mode: "doses", words: "Give doses and see mg/L (ppm)" },
];

export function MixSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const desk = panel.batch;
  const draft = useStore(desk.draft);
  const shelf = useStore(desk.shelf);
  const worked = work(draft, shelf);
  const type = (change: Partial<BatchDraft>): void => desk.draft.change((now) => ({ ...now, ...change }));
  return (
    <>
      <fieldset class="modes">
        <legend>What to work out</legend>
        {MODES.map(({ mode, words }) => (
          <label class="tick" key={mode}>
            <input
              type="radio"
              name="mode"
              checked={draft.mode === mode}
              onChange={() => desk.draft.change((now) => switchMode(now, mode, work(now, desk.shelf.get())))}
            />
            <span>{words}</span>
          </label>
        ))}
      </fieldset>
      <SelectField
        label="Water"
        value={draft.water}
        options={options(shelf.waters, "Choose")}
        onType={(water) => type({ water })}
      />
      <Unusable choices={shelf.waters} />
      <SelectField
        label={draft.mode === "target" ? "Target" : "Target to compare with"}
        value={draft.target}
        options={options(shelf.targets, draft.mode === "target" ? "Choose" : "None")}
        onType={(target) => type({ target })}
      />
      <Unusable choices={shelf.targets} />
      <FeedShelf shelf={shelf.feeds} draft={desk.draft} doses={worked.doses} />
      <TextField
        label="Litres to mix"
        number
        value={draft.litres}
        problem={worked.litres.problem}
        onType={(litres) => type({ litres })}
      />
      <h3>Result</h3>
      <MixResult worked={worked} mode={draft.mode} />
      <div class="pair">
        <TextField
          label="Date"
          kind="date"
          value={draft.day === "" ? loaded.today : draft.day}
          onType={(day) => type({ day: day === loaded.today ? "" : day === "" ? "none" : day })}
        />
        <TextField label="Note" value={draft.note} onType={(note) => type({ note })} />
      </div>
      <NameCard panel={panel} />
      {draft.logged && <p class="notice">This batch is in the log.</p>}
      <Send sender={desk.sender} label="Log this batch" working="Saving the batch…" primary hidden={draft.logged} />
      {draft.logged && (
        <button type="button" class="second" onClick={desk.another}>
          Start another batch
        </button>
      )}
      <ReadingsCard panel={panel} loaded={loaded} />
    </>
  );
}
