/** Beside a reading that is not as expected: whether the meter itself is due for its standard. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { standardRows, tryState } from "./meters-log.ts";
import type { Panel } from "./panel-state.ts";
import { WithRecords } from "./with-records.tsx";

export function MeterDue(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  return (
    <WithRecords panel={props.panel}>
      {({ meterLog }) => {
        const state = tryState("EC", standardRows(meterLog).rows, props.loaded);
        if (typeof state === "string" || state.drift.verdict === "fine") return null;
        return (
          <p>
            {state.drift.verdict === "no readings"
              ? "The EC meter was never read in a standard, as far as the Meter log knows: it may be off itself."
              : `The EC meter is due for its standard. ${state.drift.sentence}`}
          </p>
        );
      }}
    </WithRecords>
  );
}
