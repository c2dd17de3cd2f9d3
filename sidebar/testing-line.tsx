/** Whether the pH of this batch, or of the next one, is to be tested, with the reason and what it rests on. */

import type { JSX } from "preact";
import type { Loaded, Records } from "../src/app/contract.ts";
import { sayList } from "../src/core/saying.ts";
import { feedsOf } from "./batch-parts.ts";
import type { Panel } from "./panel-state.ts";
import { pHRange } from "./ph-range.ts";
import { count } from "./show.ts";
import { sayTesting, type Testing, testing } from "./testing.ts";
import { WithRecords } from "./with-records.tsx";

const say = (pH: number): string => pH.toFixed(2);

/** One line after a batch was logged. */
export function TestingLine(props: {
  readonly panel: Panel;
  readonly loaded: Loaded;
  readonly batchId: string;
}): JSX.Element {
  return (
    <WithRecords panel={props.panel}>
      {(records) => {
        const found = testing(props.loaded, records, props.batchId);
        if (found === null) return null;
        if (typeof found === "string") return <p class="wrong">{found}</p>;
        return <p class={found.plan.due ? "notice" : ""}>{sayTesting(found.plan)}</p>;
      }}
    </WithRecords>
  );
}

function Rests(props: { readonly found: Testing; readonly loaded: Loaded }): JSX.Element {
  const { run, chart, tolerance } = props.found.plan;
  const { low, high } = pHRange(props.loaded.settings);
  const lines: [string, string][] = [["Your range", `${low} to ${high}`]];
  if (chart !== null) {
    lines.push(["Mean", say(chart.mean)], ["Limits for the next reading", `${say(chart.low)} to ${say(chart.high)}`]);
  }
  if (tolerance !== null) {
    const { content, confidence } = tolerance;
    lines.push([
      `${Math.floor(100 * content)} in 100 batches, ${Math.round(100 * confidence)} % sure`,
      `${say(tolerance.low)} to ${say(tolerance.high)}`,
    ]);
  }
  return (
    <>
      <table class="doses">
        <caption class="unseen">What the plan rests on</caption>
        <tbody>
          {lines.map(([what, value]) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td>{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {run.length > 0 && (
        <p class="hint">
          {count(run.length, "reading")} that {run.length === 1 ? "counts" : "count"}, oldest first:{" "}
          {run.map(String).join(", ")}.
        </p>
      )}
    </>
  );
}

/** The plan for the next batch, if it is made from the same as the newest one. */
export function TestingPart(props: { readonly loaded: Loaded; readonly records: Records }): JSX.Element {
  const found = testing(props.loaded, props.records, null);
  if (found === null) return <p class="empty">No batch is in the log yet. Test the pH of each of the first ones.</p>;
  if (typeof found === "string") return <p class="wrong">{found}</p>;
  const { batch, plan } = found;
  const feeds = feedsOf(batch.doses);
  return (
    <>
      <p class={plan.due ? "notice" : ""}>{plan.sentence}</p>
      <p class="hint">
        For a batch today like the last one: {batch.water === "" ? "its water" : batch.water}
        {feeds.length > 0 && ` with ${sayList(feeds, "and")}`}. Another water, feed, lot or acid begins anew.
      </p>
      <Rests found={found} loaded={props.loaded} />
    </>
  );
}
