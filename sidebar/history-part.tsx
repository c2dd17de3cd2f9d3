/** EC and pH over time, drawn, said in a sentence each, and as a table of the numbers. */

import type { JSX } from "preact";
import { useMemo, useState } from "preact/hooks";
import type { Loaded, Records } from "../src/app/contract.ts";
import { sayList } from "../src/core/saying.ts";
import { SelectField } from "./field.tsx";
import { ALL, groupsOf, type History, historyOf, sayEc, sayPHs } from "./history.ts";
import { type Drawing, ecDrawing, pHDrawing } from "./history-plot.ts";
import { Plot } from "./plot.tsx";
import { showDay } from "./show.ts";
import { testing } from "./testing.ts";

const HEIGHT = 150;

function Numbers(props: { readonly history: History }): JSX.Element {
  const { batches, marks } = props.history;
  const say = (value: number | null, digits: number): string => (value === null ? "–" : value.toFixed(digits));
  return (
    <details class="quiet">
      <summary>The numbers, newest first</summary>
      <table class="doses">
        <caption class="unseen">EC and pH of these batches</caption>
        <thead>
          <tr>
            <th scope="col">Date</th>
            <th scope="col">EC</th>
            <th scope="col">expected</th>
            <th scope="col">pH</th>
          </tr>
        </thead>
        <tbody>
          {[...batches].reverse().map((batch, at) => (
            <tr key={batch.id === "" ? at : batch.id}>
              <th scope="row">{showDay(batch.day)}</th>
              <td>{say(batch.measuredEcMsCm, 2)}</td>
              <td>{say(batch.predictedEcMsCm, 2)}</td>
              <td>{batch.measuredPH === null ? "–" : String(batch.measuredPH)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {marks.length > 0 && (
        <ul class="sentences">
          {[...marks].reverse().map(({ words }) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
    </details>
  );
}

function Drawn(props: { readonly title: string; readonly sentence: string; readonly drawing: Drawing }): JSX.Element {
  const { title, sentence, drawing } = props;
  return (
    <>
      <h4>{title}</h4>
      {drawing.something && (
        <Plot label={sentence} height={HEIGHT} version={drawing} data={drawing.data} options={drawing.options} />
      )}
      <p class="hint">{sentence}</p>
    </>
  );
}

export function HistoryPart(props: { readonly loaded: Loaded; readonly records: Records }): JSX.Element {
  const { loaded, records } = props;
  const groups = useMemo(() => groupsOf(loaded.batches), [loaded.batches]);
  const [chosen, choose] = useState("");
  const [first] = groups;
  const group = groups.find((one) => one.key === chosen) ?? first;
  const key = group?.key ?? ALL;
  const { history, ec, pH } = useMemo(() => {
    const next = testing(loaded, records, null);
    // The chart's limits are those of the newest batch's water, feeds, lots and acid.
    const chart = next === null || typeof next === "string" || key !== first?.key ? null : next.plan.chart;
    const made = historyOf(key, loaded, records, chart);
    return { history: made, ec: ecDrawing(made), pH: pHDrawing(made) };
  }, [loaded, records, key, first]);
  if (history.batches.length === 0) return <p class="empty">No batch with a date is in the log yet.</p>;
  return (
    <>
      <SelectField
        label="Water and feeds"
        value={key}
        options={groups.map((one) => ({ value: one.key, words: one.words }))}
        onType={choose}
      />
      {group !== undefined && group.feeds.length > 0 && <p class="hint">Feeds: {sayList(group.feeds, "and")}.</p>}
      <Drawn title="EC, mS/cm" sentence={sayEc(history)} drawing={ec} />
      <p class="hint">
        Dots: read. Dashes: to be expected
        {history.band === null ? "" : "; dotted lines: where this meter usually reads"}. L: new lot. C: meter
        calibrated.
      </p>
      <Drawn title="pH" sentence={sayPHs(history)} drawing={pH} />
      <p class="hint">
        Dots: read. Dotted lines: your range{history.chart === null ? "" : "; dashes: limits for the next reading"}. L:
        new lot. C: meter calibrated.
      </p>
      <Numbers history={history} />
    </>
  );
}
