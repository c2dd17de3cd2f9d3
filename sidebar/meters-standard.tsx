/** The form for a reading in a standard, with how to go about it. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { DateAndNote } from "./date-and-note.tsx";
import { EcField } from "./ec-field.tsx";
import { SelectField, TextField } from "./field.tsx";
import { meterOf } from "./meter.ts";
import { freshMeters, type MetersDraft, metersNumbers, OTHER, STANDARDS, uncorrected } from "./meters-draft.ts";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { useStore } from "./use-store.ts";
import { WhoCard } from "./who.tsx";

export function StandardForm(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const desk = panel.meters;
  const draft = useStore(desk.draft);
  const numbers = metersNumbers(draft, loaded);
  const type = (change: Partial<MetersDraft>): void => desk.draft.change((now) => ({ ...now, ...change }));
  const hint = uncorrected(draft, numbers);
  const isEc = draft.meter === "EC";
  return (
    <>
      <div class="pair">
        <SelectField
          label="Meter"
          value={draft.meter}
          options={[
            { value: "EC", words: "EC" },
            { value: "pH", words: "pH" },
          ]}
          onType={(kind) => {
            const meter = kind === "pH" ? "pH" : "EC";
            type({ meter, standard: freshMeters(() => draft.id, meter).standard, other: "", reading: "" });
          }}
        />
        <SelectField
          label="Standard"
          value={draft.standard}
          options={[...STANDARDS[draft.meter], { value: OTHER, words: "Another" }]}
          onType={(standard) => type({ standard })}
        />
      </div>
      {draft.standard === OTHER && (
        <TextField
          label={isEc ? "Value of the standard, mS/cm" : "pH of the standard"}
          number
          hint={isEc ? "A label in µS/cm: 1000 µS/cm is 1 mS/cm." : "As the label has it for this temperature."}
          value={draft.other}
          problem={numbers.standard.problem}
          onType={(other) => type({ other })}
        />
      )}
      <div class={isEc && meterOf(loaded).scale !== null ? "" : "pair"}>
        {isEc ? (
          <EcField
            label="Meter reads"
            meter={meterOf(loaded)}
            text={draft.reading}
            unit={draft.unit}
            read={numbers.reading}
            onType={(reading) => type({ reading })}
            onUnit={(unit) => type({ unit })}
          />
        ) : (
          <TextField
            label="Meter reads"
            number
            value={draft.reading}
            problem={numbers.reading.problem}
            onType={(reading) => type({ reading })}
          />
        )}
        <TextField
          label="Standard, °C"
          number
          value={draft.temp}
          problem={numbers.temp.problem}
          onType={(temp) => type({ temp })}
        />
      </div>
      {hint !== null && <p class="hint">{hint}</p>}
      <label class="tick">
        <input
          type="checkbox"
          checked={draft.calibrated}
          onChange={(event) => type({ calibrated: event.currentTarget.checked })}
        />
        <span>
          Then set to the standard<small>Read it first, then calibrate: only so does the log show the drift.</small>
        </span>
      </label>
      <DateAndNote draft={draft} today={loaded.today} type={type} />
      <p class="caution">
        Take a little of the standard in a clean cup and pour it away afterwards, never back. Rinse the probe before and
        after. A standard is good until the date on its label; a pH probe is kept wet in storage liquid, not in pure
        water. Keep standards from children and pets, and follow what the label says.
      </p>
      <WhoCard panel={panel} />
      <Send sender={desk.sender} label="Log this reading" working="Saving the reading…" primary />
    </>
  );
}
