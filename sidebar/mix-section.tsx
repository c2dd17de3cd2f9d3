/** "Mix a batch": water, target, feeds and litres in; doses and what they reach out, at every key. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { type Worked, work } from "./batch.ts";
import { type BatchDraft, fillDoses, switchMode } from "./batch-draft.ts";
import { BatchesCard } from "./batches-card.tsx";
import { Button } from "./button.tsx";
import { CardLink } from "./card-link.tsx";
import type { Choice } from "./choices.ts";
import { DateAndNote } from "./date-and-note.tsx";
import { FeedShelf } from "./feed-shelf.tsx";
import { type Option, SelectField, TextField } from "./field.tsx";
import { MixChemistryPart } from "./mix-chemistry.tsx";
import { MixGoals } from "./mix-goals.tsx";
import { MixResult } from "./mix-result.tsx";
import { MixTools } from "./mix-tools.tsx";
import type { Panel } from "./panel-state.ts";
import { PastBanner } from "./past-banner.tsx";
import { ReadingsCard } from "./readings-card.tsx";
import { Send } from "./send.tsx";
import { SlowNitrogen } from "./slow-nitrogen.tsx";
import { StockShort } from "./stock-short.tsx";
import { TestingLine } from "./testing-line.tsx";
import { useStore } from "./use-store.ts";
import { WhoCard } from "./who.tsx";

const options = (choices: readonly Choice[], none: string): Option[] => [
  { value: "", words: none },
  ...choices.map(({ key, name }) => ({ value: key, words: name })),
];

const MODES: readonly { mode: BatchDraft["mode"]; words: string }[] = [
  { mode: "target", words: "Work out doses for a target" },
  { mode: "doses", words: "Give doses and see mg/L (ppm)" },
];

/** What the batch is made of: water, target and feeds, with their doses where those are typed. */
function Choosing(props: { readonly panel: Panel; readonly worked: Worked }): JSX.Element {
  const { panel, worked } = props;
  const desk = panel.batch;
  const draft = useStore(desk.draft);
  const shelf = useStore(desk.shelf);
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
      <SelectField
        label={draft.mode === "target" ? "Target" : "Target to compare with"}
        value={draft.target}
        options={options(shelf.targets, draft.mode === "target" ? "Choose" : "None")}
        onType={(target) => type({ target })}
      />
      <FeedShelf shelf={shelf.feeds} draft={desk.draft} doses={worked.doses} />
      {draft.mode === "doses" && worked.target !== null && worked.feeds.length > 0 && (
        <Button
          look="link"
          press={() => desk.draft.change((now) => fillDoses(now, work({ ...now, mode: "target" }, shelf)))}
        >
          Fill in the doses for this target
        </Button>
      )}
    </>
  );
}

export function MixSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const desk = panel.batch;
  const draft = useStore(desk.draft);
  const shelf = useStore(desk.shelf);
  const sent = useStore(desk.sender.now);
  const worked = work(draft, shelf);
  const type = (change: Partial<BatchDraft>): void => desk.draft.change((now) => ({ ...now, ...change }));
  return (
    <>
      <PastBanner panel={panel} worked={worked} />
      {draft.mode !== "repeat" && <Choosing panel={panel} worked={worked} />}
      <TextField
        label="Litres to mix"
        number
        value={draft.litres}
        problem={worked.litres.problem}
        onType={(litres) => type({ litres })}
      />
      {draft.mode !== "doses" && <MixTools panel={panel} loaded={loaded} />}
      {draft.mode === "target" && <MixGoals panel={panel} worked={worked} />}
      <h3>Result</h3>
      <MixResult worked={worked} tools={shelf.tools} draft={desk.draft} />
      <SlowNitrogen worked={worked} />
      {/* A batch that is corrected has been taken off the shelf already. */}
      {!loaded.batches.some(({ id, state }) => id === draft.corrects && state === "mixed") && (
        <StockShort worked={worked} shelf={shelf} />
      )}
      <MixChemistryPart panel={panel} loaded={loaded} worked={worked} />
      <DateAndNote draft={draft} today={loaded.today} type={type} />
      <WhoCard panel={panel} />
      {draft.logged && sent.state === "idle" && <p class="settled">This batch is in the log.</p>}
      {!draft.logged && (draft.corrects === "" || draft.planned) && (
        <label class="tick">
          <input
            type="checkbox"
            checked={draft.planned}
            onChange={(event) => type({ planned: event.currentTarget.checked })}
          />
          <span>Only plan it: it is logged as mixed later</span>
        </label>
      )}
      <Send
        sender={desk.sender}
        label={
          draft.planned
            ? "Plan this batch"
            : draft.corrects === ""
              ? "Log this batch"
              : "Log it in place of the old row"
        }
        working="Saving the batch…"
        primary
        hidden={draft.logged}
      />
      <CardLink panel={panel} loaded={loaded} worked={worked} />
      {draft.logged && (
        <Button look="second" press={desk.another}>
          Start another batch
        </Button>
      )}
      {draft.logged && <TestingLine panel={panel} loaded={loaded} batchId={draft.id} />}
      <ReadingsCard panel={panel} loaded={loaded} />
      <BatchesCard panel={panel} loaded={loaded} />
    </>
  );
}
