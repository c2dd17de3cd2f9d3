/** Which solution a plant stood in when, with what was seen meanwhile; and which plants a solution went to. */

import type { JSX } from "preact";
import { useMemo, useState } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import { sayNumber } from "../src/core/saying.ts";
import { plantsOnce } from "./care.ts";
import { SelectField } from "./field.tsx";
import { fedBy, type Stretch, sayBatch, saySeen, solutionsOf, stretchesOf } from "./growth-fed.ts";
import { count, showDay } from "./show.ts";

const STRETCHES_SHOWN = 12;

function days(from: string, to: string): string {
  return from === to ? showDay(from) : `${showDay(from)} to ${showDay(to)}`;
}

function OneStretch(props: { readonly stretch: Stretch }): JSX.Element {
  const { solution, from, to, pours, amountMl, batch, seen } = props.stretch;
  const notes = seen.filter(({ note }) => note.trim() !== "");
  return (
    <li>
      <strong>{solution}</strong>
      {batch !== null && ` (${sayBatch(batch)})`}
      <br />
      {days(from, to)}, {count(pours, "pour")}
      {amountMl > 0 && `, ${sayNumber(amountMl)} mL`}.
      {seen.length > 0 && (
        <>
          <br />
          Seen meanwhile: {saySeen(seen)}.
        </>
      )}
      {notes.length > 0 && (
        <ul class="sentences">
          {notes.map(({ id, day, note }, at) => (
            <li key={id === "" ? at : id}>
              {showDay(day)}: {note}
            </li>
          ))}
        </ul>
      )}
    </li>
  );
}

export function FedPart(props: { readonly loaded: Loaded }): JSX.Element {
  const { loaded } = props;
  const plants = plantsOnce(loaded.plants).map(({ plant }) => plant);
  const solutions = useMemo(() => solutionsOf(loaded), [loaded]);
  const [plant, choosePlant] = useState("");
  const [solution, chooseSolution] = useState("");
  const stretches = useMemo(() => (plant === "" ? [] : stretchesOf(plant, loaded)), [plant, loaded]);
  const fed = useMemo(() => (solution === "" ? [] : fedBy(solution, loaded)), [solution, loaded]);
  if (solutions.length === 0) return <p class="empty">No row of the care log names a solution yet.</p>;
  return (
    <>
      <p class="hint">
        What stood beside what in time. It says nothing of cause: light, season and hands changed as well. To know,
        begin a trial.
      </p>
      <SelectField
        label="A plant, and what it got"
        value={plant}
        options={[{ value: "", words: "Choose a plant" }, ...plants.map((name) => ({ value: name, words: name }))]}
        onType={choosePlant}
      />
      {plant !== "" && stretches.length === 0 && <p class="empty">No pour for {plant} names its solution.</p>}
      {stretches.length > 0 && (
        <ul class="stretches">
          {stretches.slice(0, STRETCHES_SHOWN).map((stretch) => (
            <OneStretch key={`${stretch.from} ${stretch.solution}`} stretch={stretch} />
          ))}
        </ul>
      )}
      {stretches.length > STRETCHES_SHOWN && (
        <p class="hint">{stretches.length - STRETCHES_SHOWN} older ones are left out here.</p>
      )}
      <SelectField
        label="A solution, and who got it"
        value={solution}
        options={[
          { value: "", words: "Choose a solution" },
          ...solutions.map((name) => ({ value: name, words: name })),
        ]}
        onType={chooseSolution}
      />
      {fed.length > 0 && (
        <table class="doses">
          <caption class="unseen">Plants that got {solution}</caption>
          <thead>
            <tr>
              <th scope="col">Plant</th>
              <th scope="col">When</th>
              <th scope="col">Pours</th>
            </tr>
          </thead>
          <tbody>
            {fed.map(({ plant: name, from, to, pours }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td class="words">{days(from, to)}</td>
                <td>{pours}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}
