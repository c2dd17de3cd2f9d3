/** "Readings of a batch": what the meters said, for a batch that is already in the log. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { EcField } from "./ec-field.tsx";
import { SelectField, TextField } from "./field.tsx";
import { meterOf } from "./meter.ts";
import { MeterDue } from "./meters-due.tsx";
import type { Panel } from "./panel-state.ts";
import { pHRange } from "./ph-range.ts";
import { batchWords, readingsBatch, readingsCheck, readingsNumbers, waitingBatches } from "./readings.ts";
import { ReadingsVerdict } from "./readings-verdict.tsx";
import { Send } from "./send.tsx";
import { useStore } from "./use-store.ts";

export function ReadingsCard(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { loaded } = props;
  const desk = props.panel.readings;
  const draft = useStore(desk.draft);
  const batch = readingsBatch(draft, loaded.batches);
  const waiting = waitingBatches(loaded.batches);
  const offered = batch === null || waiting.includes(batch) ? waiting : [batch, ...waiting];
  const numbers = readingsNumbers(draft, loaded);
  const check = readingsCheck(draft, loaded, desk.shelf());
  const doubtful = check?.check != null && check.check.verdict !== "as expected";
  // Whatever is typed belongs to the batch on show, also when a newer one comes in.
  const type = (change: { ec?: string; pH?: string; ecUnit?: "mS/cm" | "ppm"; temp?: string }): void =>
    desk.draft.change((now) => ({ ...now, batchId: batch?.id ?? now.batchId, ...change }));
  return (
    <section class="card" aria-labelledby="readings-title">
      <h3 id="readings-title">Readings of a batch</h3>
      {offered.length === 0 ? (
        <p class="empty">Every batch in the log has its readings.</p>
      ) : (
        <>
          <SelectField
            label="Batch"
            value={batch?.id ?? ""}
            options={[
              ...(batch === null ? [{ value: "", words: "Choose" }] : []),
              ...offered.map((one) => ({ value: one.id, words: batchWords(one) })),
            ]}
            onType={(batchId) => desk.draft.change((now) => ({ ...now, batchId }))}
          />
          {batch !== null && batch.doses !== "" && <p class="hint">{batch.doses}</p>}
          <div class={meterOf(loaded).scale === null ? "pair" : ""}>
            <EcField
              label="Measured EC"
              meter={meterOf(loaded)}
              text={draft.ec}
              unit={draft.ecUnit}
              read={numbers.ec}
              onType={(ec) => type({ ec })}
              onUnit={(ecUnit) => type({ ecUnit })}
            />
            <TextField
              label="Measured pH"
              number
              value={draft.pH}
              problem={numbers.pH.problem}
              onType={(pH) => type({ pH })}
            />
          </div>
          <ReadingsVerdict
            check={check}
            pH={numbers.pH.value}
            range={pHRange(loaded.settings)}
            scale={meterOf(loaded).scale}
          />
          {doubtful && <MeterDue panel={props.panel} loaded={loaded} />}
          {(draft.temp !== "" || doubtful) && (
            <TextField
              label="Solution °C, if measured"
              number
              hint="Tells whether a reading that was not corrected to 25 °C explains it."
              value={draft.temp}
              problem={numbers.temp.problem}
              onType={(temp) => type({ temp })}
            />
          )}
        </>
      )}
      <Send sender={desk.sender} label="Log readings" working="Saving the readings…" hidden={offered.length === 0} />
    </section>
  );
}
