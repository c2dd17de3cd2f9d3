/** "Know a water": a report in its own units in, how it is understood and what it is good for out, at every key. */

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import { sayList } from "../src/core/saying.ts";
import { Field, SelectField, TextField } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { SaveOnce } from "./save-once.tsx";
import { useStore } from "./use-store.ts";
import { waterChoices } from "./water-blend.ts";
import { BlendCard } from "./water-blend-card.tsx";
import { WaterJudgement } from "./water-check.tsx";
import { besideTheColumns, COMMON_UNITS, type WaterDraft } from "./water-draft.ts";
import { ReportLines } from "./water-lines.tsx";
import { readTyped, sayLine } from "./water-report.ts";
import { TreatmentCard } from "./water-treatment-card.tsx";

const UNIT_OPTIONS = [
  { value: "", words: "Ask me line by line" },
  ...COMMON_UNITS.map((unit) => ({ value: unit as string, words: unit as string })),
];

export function WaterSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const desk = panel.water;
  const draft = useStore(desk.draft);
  const { text, unit, answers, open } = draft;
  const report = useMemo(() => readTyped({ text, unit, answers, open }), [text, unit, answers, open]);
  const { water, lines, twice, asks } = report;
  const choices = useMemo(() => waterChoices(loaded.waters, water), [loaded.waters, water]);
  const type = (change: Partial<WaterDraft>): void => desk.edit((now) => ({ ...now, ...change }));
  const beside = besideTheColumns(water);
  const known = Object.keys(water).length > 0;
  return (
    <>
      <Field
        label="Report"
        hint="Paste it or type it, one line for each substance, in the units it uses."
        input={(marks) => (
          <textarea
            {...marks}
            rows={6}
            spellcheck={false}
            autocomplete="off"
            value={text}
            onInput={(event) => type({ text: event.currentTarget.value, open: [] })}
          />
        )}
      />
      {(asks || unit !== "") && (
        <SelectField
          label="Numbers without a unit are in"
          value={unit}
          options={UNIT_OPTIONS}
          onType={(chosen) => type({ unit: COMMON_UNITS.find((one) => one === chosen) ?? "" })}
        />
      )}
      <ReportLines desk={desk} lines={lines} open={open} />
      {twice.length > 0 && (
        <ul class="sentences">
          {twice.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {known && (
        <>
          <h3>What it is good for</h3>
          {asks && <p class="hint">A line that waits for your choice is not counted yet.</p>}
          <WaterJudgement water={water} />
          <h3>Keep it</h3>
          <TextField label="Name of this water" value={draft.name} onType={(name) => type({ name })} />
          <div class="pair">
            <TextField
              label="Date sampled"
              kind="date"
              value={draft.day === "" ? loaded.today : draft.day}
              onType={(day) => type({ day: day === loaded.today ? "" : day === "" ? "none" : day })}
            />
            <TextField label="Measured by" value={draft.source} onType={(source) => type({ source })} />
          </div>
          <TextField label="Note" value={draft.note} onType={(note) => type({ note })} />
          {beside.length > 0 && (
            <p class="hint">
              Without a column on the tab, so added to the note:{" "}
              {sayList(
                beside.map((line) => sayLine(line, water[line] ?? 0)),
                "and",
              )}
              .
            </p>
          )}
        </>
      )}
      <SaveOnce
        sender={desk.sender}
        saved={draft.saved}
        ready={known}
        label="Save to the Waters tab"
        working="Saving the water…"
        there="This report is on the Waters tab."
        anotherLabel="Take another report"
        another={desk.another}
      />
      <BlendCard desk={desk} draft={draft} choices={choices} />
      <TreatmentCard desk={desk} draft={draft} choices={choices} />
    </>
  );
}
