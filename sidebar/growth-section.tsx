/** "Growth": how long plants take to grow again after their roots were disturbed, and which plants got which solution. */

import type { JSX } from "preact";
import { useMemo, useState } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import { isBadInput } from "../src/core/errors.ts";
import { SelectField } from "./field.tsx";
import {
  atRisk,
  type Curve,
  type Growth,
  grownBy,
  growthBy,
  riskDays,
  SORT_WORDS,
  SORTS,
  type Sort,
} from "./growth-curves.ts";
import { FedPart } from "./growth-fed-part.tsx";
import { DASH_WORDS, growthDrawing, MOST_CURVES } from "./growth-plot.ts";
import { Plot } from "./plot.tsx";
import { showDay } from "./show.ts";

const HEIGHT = 170;

/** The curves in numbers: by which day how many had grown again, and how many were still waited for. */
function RiskTable(props: { readonly curves: readonly Curve[] }): JSX.Element {
  const { curves } = props;
  const days = riskDays(curves);
  return (
    <details class="quiet">
      <summary>The numbers: grown again, and still waited for</summary>
      {curves.map((curve) => (
        <table class="doses" key={curve.name}>
          <caption>{curve.name}</caption>
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Grown again</th>
              <th scope="col">Still waited for</th>
            </tr>
          </thead>
          <tbody>
            {days.map((day) => {
              const grown = grownBy(curve, day);
              return (
                <tr key={day}>
                  <th scope="row">{day}</th>
                  <td>{grown === null ? "–" : `${Math.round(100 * grown)} %`}</td>
                  <td>{atRisk(curve, day)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      ))}
    </details>
  );
}

function Curves(props: { readonly growth: Growth }): JSX.Element {
  const { growth } = props;
  const { curves, sentence } = growth;
  const told = useMemo(() => growth.curves.filter(({ enough }) => enough).slice(0, MOST_CURVES), [growth]);
  const drawing = useMemo(() => growthDrawing(told), [told]);
  if (curves.length === 0) return <p class="empty">No disturbance of roots is in the care log yet.</p>;
  return (
    <>
      {told.length > 0 && (
        <>
          <Plot
            label={[...told.map((one) => one.sentence), sentence].join(" ")}
            height={HEIGHT}
            version={drawing}
            data={drawing.data}
            options={drawing.options}
          />
          <p class="hint">
            Share that has grown again, by days since the disturbance.{" "}
            {told.map(({ name }, at) => `${name}: ${DASH_WORDS[at]}`).join("; ")}.
          </p>
        </>
      )}
      <ul class="sentences">
        {curves.map((one) => (
          <li key={one.name}>{one.sentence}</li>
        ))}
      </ul>
      {sentence !== "" && <p>{sentence}</p>}
      {told.length > 0 && <RiskTable curves={told} />}
    </>
  );
}

function RecoveryPart(props: { readonly loaded: Loaded }): JSX.Element {
  const { loaded } = props;
  const [sort, choose] = useState<Sort>("event");
  const [after, limit] = useState("");
  const growth = useMemo((): Growth | string => {
    try {
      return growthBy({ sort, after: sort === "event" ? "" : after }, loaded);
    } catch (error) {
      if (isBadInput(error)) return error.message;
      throw error;
    }
  }, [sort, after, loaded]);
  const { care } = loaded;
  return (
    <>
      <SelectField
        label="Compare by"
        value={sort}
        options={SORTS.map((one) => ({ value: one, words: SORT_WORDS[one] }))}
        onType={(chosen) => choose(SORTS.find((one) => one === chosen) ?? "event")}
      />
      {sort !== "event" && (
        <SelectField
          label="After"
          value={after}
          options={[
            { value: "", words: "Any disturbance" },
            ...loaded.events
              .filter(({ disturbsRoots }) => disturbsRoots)
              .map(({ event }) => ({ value: event, words: event })),
          ]}
          onType={limit}
        />
      )}
      {typeof growth === "string" ? <p class="wrong">{growth}</p> : <Curves growth={growth} />}
      <p class="hint">
        First new leaf or root after a repot, a trim and the like. A plant that has not grown again yet, or was
        disturbed again before, counts as long as it was waited for. Disturbances from before the log was kept are left
        out.
        {!care.all && care.from !== null && ` Only the log from ${showDay(care.from)} on is counted.`}
      </p>
    </>
  );
}

export function GrowthSection(props: { readonly loaded: Loaded }): JSX.Element {
  return (
    <>
      <h3>After a disturbance</h3>
      <RecoveryPart loaded={props.loaded} />
      <h3>What fed what</h3>
      <FedPart loaded={props.loaded} />
    </>
  );
}
