/** The form for a trial: the question, what is counted, who takes part; the groups are drawn when it begins. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { MEASURES } from "../src/core/trial-measure.ts";
import { SelectField, TextField } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { daysOf, type TrialDraft } from "./trial-draft.ts";
import { TrialPlants } from "./trial-plants.tsx";
import { TrialSize } from "./trial-size.tsx";
import { useStore } from "./use-store.ts";
import { WhoCard } from "./who.tsx";

const MEASURE_HINTS: Readonly<Record<(typeof MEASURES)[number], string>> = {
  "New leaves": "Log each one in Log care, event New leaf.",
  "Days to first new leaf": "Log it in Log care, event New leaf.",
  "Days to first new root": "Log it in Log care, event New root.",
  Score: "On the last day log a Note that begins with the score: Score 7.",
};

export function TrialForm(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const desk = panel.trials;
  const draft = useStore(desk.draft);
  const type = (change: Partial<TrialDraft>): void => desk.draft.change((now) => ({ ...now, ...change }));
  const { started, ends } = daysOf(draft, loaded.today);
  return (
    <>
      <h3>Begin a trial</h3>
      {draft.claim !== null && <p class="hint">It tests the claim: {draft.claim.claim}.</p>}
      <TextField label="Question" value={draft.question} onType={(question) => type({ question })} />
      <TextField label="Group A gets" value={draft.groupA} onType={(groupA) => type({ groupA })} />
      <TextField label="Group B gets" value={draft.groupB} onType={(groupB) => type({ groupB })} />
      <SelectField
        label="What is counted"
        value={draft.measure}
        options={MEASURES.map((measure) => ({ value: measure, words: measure }))}
        onType={(measure) => type({ measure: MEASURES.find((one) => one === measure) ?? MEASURES[0] })}
      />
      <p class="hint">{MEASURE_HINTS[draft.measure]} Count both groups on the same days.</p>
      <div class="pair">
        <TextField
          label="First day"
          kind="date"
          value={started}
          onType={(day) => type({ started: day === loaded.today ? "" : day })}
        />
        <TextField label="Last day" kind="date" value={ends} onType={(day) => type({ ends: day })} />
      </div>
      <SelectField
        label="How the groups are drawn"
        value={draft.design}
        options={[
          { value: "Pairs", words: "Within pairs of like plants" },
          { value: "Together", words: "From all plants together" },
        ]}
        onType={(design) => type({ design: design === "Together" ? "Together" : "Pairs" })}
      />
      <TrialPlants panel={panel} loaded={loaded} />
      <TrialSize panel={panel} loaded={loaded} />
      <p class="hint">
        The groups are drawn once, when it begins, by a number that is kept with it. It ends on its last day, not when
        it looks good.
      </p>
      <WhoCard panel={panel} />
      <Send sender={desk.sender} label="Draw the groups and begin" working="Drawing and saving…" primary />
    </>
  );
}
