/** "Log care": which plants, what happened, and one button that writes all rows at once. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { type CareDraft, careNumbers, chosenPlants, restWords } from "./care.ts";
import { EcField } from "./ec-field.tsx";
import { SelectField, TextField } from "./field.tsx";
import { meterOf } from "./meter.ts";
import type { Panel } from "./panel-state.ts";
import { PlantPicker } from "./plant-picker.tsx";
import { Send } from "./send.tsx";
import { useStore } from "./use-store.ts";
import { WhoCard } from "./who.tsx";

/** Said when the event disturbs roots: the shortest rest among those chosen, before it ends. */
function RestNotice(props: { readonly draft: CareDraft; readonly loaded: Loaded }): JSX.Element | null {
  const { draft, loaded } = props;
  const disturbs = loaded.events.some(
    ({ event, disturbsRoots }) => disturbsRoots && nameKey(event) === nameKey(draft.event),
  );
  if (!disturbs) return null;
  const resting = chosenPlants(draft, loaded.plants)
    .filter(({ restDays }) => restDays !== null)
    .sort((a, b) => (a.restDays ?? 0) - (b.restDays ?? 0));
  const [shortest] = resting;
  return (
    <p class="notice">
      This disturbs the roots, and their rest is counted anew.
      {shortest !== undefined && ` Shortest rest so far: ${shortest.plant}, ${restWords(shortest.restDays)}.`}
    </p>
  );
}

export function CareSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const desk = panel.care;
  const draft = useStore(desk.draft);
  const numbers = careNumbers(draft, loaded);
  const type =
    (key: Exclude<keyof CareDraft, "chosen" | "ecUnit">) =>
    (text: string): void =>
      desk.draft.change((now) => ({ ...now, [key]: text }));
  const solutions = [
    ...new Set([...loaded.targets, ...loaded.waters].map(({ fields }) => fields.Target ?? fields.Water)),
  ]
    .filter((name) => typeof name === "string")
    .slice(0, 40);
  if (loaded.plants.length === 0) {
    return (
      <p class="empty">
        There are no plants yet. Write some into the Plants tab, or choose your own plant list under “Set up”.
      </p>
    );
  }
  return (
    <>
      <PlantPicker desk={desk} plants={loaded.plants} />
      <SelectField
        label="What happened"
        value={draft.event}
        options={[
          { value: "", words: "Choose" },
          ...loaded.events.map(({ event }) => ({ value: event, words: event })),
        ]}
        onType={type("event")}
      />
      <RestNotice draft={draft} loaded={loaded} />
      <TextField
        label="Date"
        kind="date"
        value={draft.day === "" ? loaded.today : draft.day}
        onType={(day) => type("day")(day === loaded.today ? "" : day === "" ? "none" : day)}
      />
      <p class="hint">What follows may stay empty.</p>
      <TextField label="Reason" value={draft.reason} onType={type("reason")} />
      <div class="pair">
        <TextField
          label="Amount, mL each"
          number
          value={draft.amountMl}
          problem={numbers.amount.problem}
          onType={type("amountMl")}
        />
        <TextField label="Solution" offered={solutions} value={draft.solution} onType={type("solution")} />
      </div>
      <div class={meterOf(loaded).scale === null ? "pair" : ""}>
        <EcField
          label="EC"
          meter={meterOf(loaded)}
          text={draft.ec}
          unit={draft.ecUnit}
          read={numbers.ec}
          onType={type("ec")}
          onUnit={(ecUnit) => desk.draft.change((now) => ({ ...now, ecUnit }))}
        />
        <TextField label="pH" number value={draft.pH} problem={numbers.pH.problem} onType={type("pH")} />
      </div>
      <TextField label="Note" value={draft.note} onType={type("note")} />
      <WhoCard panel={panel} />
      <Send sender={desk.sender} label="Log care" working="Saving…" primary />
    </>
  );
}
