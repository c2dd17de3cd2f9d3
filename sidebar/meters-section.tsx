/** "Meters": how each meter reads in a standard, when to test the pH of a batch, and what was read over time. */

import type { JSX } from "preact";
import type { Loaded, Records } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { Button } from "./button.tsx";
import { HistoryPart } from "./history-part.tsx";
import type { MetersDesk } from "./meters-desk.ts";
import { type StandardRow, sayReading, standardRows, tryState } from "./meters-log.ts";
import { StandardForm } from "./meters-standard.tsx";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { showDay } from "./show.ts";
import { TestingPart } from "./testing-line.tsx";
import { useStore } from "./use-store.ts";
import { WithRecords } from "./with-records.tsx";

const ROWS_SHOWN = 4;

/** How one meter stands, with its newest readings. */
function OneMeter(props: {
  readonly kind: "EC" | "pH";
  readonly rows: readonly StandardRow[];
  readonly loaded: Loaded;
}): JSX.Element {
  const state = tryState(props.kind, props.rows, props.loaded);
  if (typeof state === "string") return <p class="wrong">{state}</p>;
  const { drift, rows } = state;
  return (
    <>
      <h4>{props.kind} meter</h4>
      <p class={drift.verdict === "fine" ? "" : "notice"}>{drift.sentence}</p>
      {rows.length > 0 && (
        <table class="doses">
          <caption class="unseen">{props.kind} meter in its standards, newest first</caption>
          <thead>
            <tr>
              <th scope="col">Date</th>
              <th scope="col">Reading</th>
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, ROWS_SHOWN).map((row) => (
              <tr key={row.id}>
                <th scope="row">{showDay(row.date)}</th>
                <td class="words">{sayReading(row)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}

/** The newest row, if the person at the panel wrote it and it can be found again. */
function TakeBack(props: {
  readonly desk: MetersDesk;
  readonly rows: readonly StandardRow[];
  readonly who: string;
}): JSX.Element {
  const { desk, rows, who } = props;
  const sent = useStore(desk.takeBack.now);
  const last = rows[rows.length - 1];
  const own = last !== undefined && nameKey(last.who) === nameKey(who) && /^[a-z0-9-]{8,64}$/.test(last.id);
  return (
    <>
      {own && sent.state !== "failed" && (
        <Button look="link" busy={sent.state === "under way"} press={() => desk.takeBackRow(last.id)}>
          Take back: {last.kind} {sayReading(last)}
        </Button>
      )}
      <Send sender={desk.takeBack} label="Try again" working="Taking it back…" hidden={sent.state !== "failed"} />
    </>
  );
}

function MetersBody(props: { readonly panel: Panel; readonly loaded: Loaded; readonly records: Records }): JSX.Element {
  const { panel, loaded, records } = props;
  const { rows, problems } = standardRows(records.meterLog);
  return (
    <>
      <h3>When to test the pH</h3>
      <TestingPart loaded={loaded} records={records} />
      <h3>In the standard</h3>
      <OneMeter kind="EC" rows={rows} loaded={loaded} />
      <OneMeter kind="pH" rows={rows} loaded={loaded} />
      {problems.map((sentence) => (
        <p class="wrong" key={sentence}>
          {sentence}
        </p>
      ))}
      <h3>Log a reading in a standard</h3>
      <StandardForm panel={panel} loaded={loaded} />
      <TakeBack desk={panel.meters} rows={rows} who={loaded.who} />
      <h3>EC and pH over time</h3>
      <HistoryPart loaded={loaded} records={records} />
      <Send sender={panel.meters.chart} label="Draw this on a tab of its own" working="Drawing…" />
    </>
  );
}

export function MetersSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  return (
    <WithRecords panel={props.panel}>
      {(records) => <MetersBody panel={props.panel} loaded={props.loaded} records={records} />}
    </WithRecords>
  );
}
