/** "Trials": those that run or are over, and the form for the next one. */

import type { JSX } from "preact";
import type { Loaded, Records } from "../src/app/contract.ts";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { TrialCard } from "./trial-card.tsx";
import { TrialForm } from "./trial-form.tsx";
import { readTrials } from "./trial-rows.ts";
import { useStore } from "./use-store.ts";
import { WithRecords } from "./with-records.tsx";

function TrialsBody(props: { readonly panel: Panel; readonly loaded: Loaded; readonly records: Records }): JSX.Element {
  const { panel, loaded, records } = props;
  const taking = useStore(panel.trials.takeBack.sender.now);
  const { trials, problems } = readTrials(records.trials);
  return (
    <>
      <p>
        To know whether something helps, give it to some plants and not to others like them, and let a draw decide
        which.
      </p>
      {trials.map((trial) => (
        <TrialCard key={trial.id === "" ? trial.row : trial.id} panel={panel} trial={trial} loaded={loaded} />
      ))}
      <Send sender={panel.trials.result} label="Save this result" working="Saving the result…" hidden />
      <Send
        sender={panel.trials.takeBack.sender}
        label="Try again"
        working="Taking it back…"
        hidden={taking.state !== "failed"}
      />
      {problems.map((sentence) => (
        <p class="wrong" key={sentence}>
          {sentence}
        </p>
      ))}
      <TrialForm panel={panel} loaded={loaded} />
    </>
  );
}

export function TrialSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  return (
    <WithRecords panel={props.panel}>
      {(records) => <TrialsBody panel={props.panel} loaded={props.loaded} records={records} />}
    </WithRecords>
  );
}
