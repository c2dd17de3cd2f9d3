/** "Know a feed": a printed analysis in, how it is understood and what it leaves short out, at every key. */

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import { BASES, type FeedDraft, FORMS, ORIGINS, pasteLabel } from "./feed-draft.ts";
import { FeedFacts } from "./feed-facts.tsx";
import { GapCard } from "./feed-gap-card.tsx";
import { feedOfLabel, readTypedLabel, rowOfName, type TypedLabel } from "./feed-label.ts";
import { LabelLines } from "./feed-lines.tsx";
import { reasonOf } from "./feed-save.ts";
import { Field, type Option, SelectField, TextField } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { SaveOnce } from "./save-once.tsx";
import { useStore } from "./use-store.ts";

const CHOOSE: Option = { value: "", words: "Choose" };
const FORM_OPTIONS: readonly Option[] = [
  CHOOSE,
  { value: "solid", words: "a powder, salt or granules" },
  { value: "liquid", words: "a liquid" },
];
const BASIS_OPTIONS: readonly Option[] = [
  CHOOSE,
  { value: "w/w", words: "weight: grams in 100 g (w/w)" },
  { value: "w/v", words: "volume: grams in 100 mL (w/v)" },
];
const ORIGIN_OPTIONS: readonly Option[] = [
  CHOOSE,
  { value: "mineral", words: "salts and the like (mineral)" },
  { value: "organic", words: "plants or animals, in part or whole" },
];

type Type = (change: Partial<FeedDraft>) => void;

function one<Choice extends string>(choices: readonly Choice[], text: string): Choice | "" {
  return choices.find((choice) => choice === text) ?? "";
}

/** What is asked about the whole label, as far as its lines do not say it. */
function WholeLabel(props: {
  readonly draft: FeedDraft;
  readonly label: TypedLabel;
  readonly type: Type;
}): JSX.Element {
  const { draft, label, type } = props;
  return (
    <>
      {label.asks.form && (
        <SelectField
          label="It is"
          value={draft.form}
          options={FORM_OPTIONS}
          onType={(form) => type({ form: one(FORMS, form) })}
        />
      )}
      {label.asks.basis && (
        <SelectField
          label="Its percents count by"
          value={draft.basis}
          options={BASIS_OPTIONS}
          onType={(basis) => type({ basis: one(BASES, basis) })}
        />
      )}
      {label.asks.density && !draft.noAnalysis && (
        <TextField
          label="Density in g/mL"
          number
          hint="From the package or its data sheet; or weigh 100 mL and divide the grams by 100. Without it a liquid by weight can only be weighed."
          value={draft.density}
          problem={label.density.problem}
          onType={(density) => type({ density })}
        />
      )}
    </>
  );
}

/** What it is made of, its name, a note. */
function Keep(props: { readonly draft: FeedDraft; readonly loaded: Loaded; readonly type: Type }): JSX.Element {
  const { draft, loaded, type } = props;
  const there = draft.saved ? null : rowOfName(draft.name, loaded.feeds);
  return (
    <>
      <h3>Keep it</h3>
      <SelectField
        label="Made of"
        value={draft.origin}
        options={ORIGIN_OPTIONS}
        onType={(origin) => type({ origin: one(ORIGINS, origin) })}
      />
      <TextField
        label="Name of this feed"
        value={draft.name}
        problem={
          there === null
            ? null
            : `A feed of this name stands in row ${there} of Feeds. It is never overwritten: give this one another name.`
        }
        onType={(name) => type({ name })}
      />
      <TextField label="Note" value={draft.note} onType={(note) => type({ note })} />
    </>
  );
}

export function FeedSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const desk = panel.feed;
  const draft = useStore(desk.draft);
  const shelf = useStore(panel.batch.shelf);
  const label = useMemo(() => readTypedLabel(draft), [draft]);
  const pasted = useMemo(() => feedOfLabel(draft, label), [draft, label]);
  const type: Type = (change) => desk.edit((now) => ({ ...now, ...change }));
  const begun = draft.noAnalysis || label.lines.length > 0;
  const shelved = begun && (draft.noAnalysis || draft.origin === "organic") ? reasonOf(draft, label) : null;
  return (
    <>
      <Field
        label="Printed analysis"
        hint="Paste or type it as it stands on the package, line by line."
        input={(marks) => (
          <textarea
            {...marks}
            rows={7}
            spellcheck={false}
            autocomplete="off"
            value={draft.text}
            onInput={(event) => {
              const { value } = event.currentTarget;
              desk.edit((now) => pasteLabel(now, value));
            }}
          />
        )}
      />
      <label class="tick">
        <input
          type="checkbox"
          checked={draft.noAnalysis}
          onChange={(event) => type({ noAnalysis: event.currentTarget.checked })}
        />
        <span>No analysis is printed on it</span>
      </label>
      {!draft.noAnalysis && (
        <>
          <LabelLines desk={desk} label={label} open={draft.open} />
          <WholeLabel draft={draft} label={label} type={type} />
          {label.refused !== "" && !(label.asks.basis && draft.basis === "") && <p class="wrong">{label.refused}</p>}
          {label.open > 0 && <p class="hint">A line that waits for your choice is not counted yet.</p>}
          {pasted !== null && <FeedFacts feed={pasted} />}
        </>
      )}
      {shelved !== null && <p class="notice">{shelved}</p>}
      {begun && <Keep draft={draft} loaded={loaded} type={type} />}
      <SaveOnce
        sender={desk.sender}
        saved={draft.saved}
        ready={begun}
        label="Save this feed"
        working="Saving the feed…"
        there="This feed is on the Feeds tab."
        anotherLabel="Take another label"
        another={desk.another}
      />
      <GapCard desk={desk} draft={draft} shelf={shelf} pasted={draft.saved ? null : pasted} />
    </>
  );
}
