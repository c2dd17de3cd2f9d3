/** Plants on their way from soil to water: what was done, what is due, and a press for each step. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { dayFromIso, isoFromDay } from "../src/core/calendar.ts";
import { MOVE, type Move, type MoveStep, movesFromSoil } from "../src/core/move.ts";
import { Button } from "./button.tsx";
import { TextField } from "./field.tsx";
import { MOVE_STEPS, MOVE_WORDS } from "./move-words.ts";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { count, showDay } from "./show.ts";
import { solutionsOf } from "./solutions.ts";
import { useStore } from "./use-store.ts";

/** "due today", "due since 2 days", "in 5 days". */
function whenDue(day: number, today: number): string {
  if (day === today) return "due today";
  return day < today ? `due for ${count(today - day, "day")}` : `in ${count(day - today, "day")}`;
}

function MoveSteps(props: { readonly panel: Panel; readonly move: Move; readonly today: number }): JSX.Element {
  const { panel, move, today } = props;
  const { plant, done, due, lookForRotFrom } = move;
  const next = new Set(due.map(({ step }) => step));
  const steps: readonly MoveStep[] = next.has("roots") ? ["weak", "look", "roots"] : ["weak", "full"];
  return (
    <li>
      <strong>{plant}</strong>
      <ul class="steps">
        {done.map(({ step, day }) => (
          <li key={`${step} ${day}`}>
            {showDay(isoFromDay(day))}: {MOVE_WORDS[step].done}
          </li>
        ))}
      </ul>
      {due.map(({ step, day }) => (
        <p key={step}>
          Next: {MOVE_WORDS[step].next}, {showDay(isoFromDay(day))} ({whenDue(day, today)}).
        </p>
      ))}
      {lookForRotFrom !== null && today >= lookForRotFrom && (
        <p class="notice">No water roots after six weeks. Lift the pot out and look for rot before you wait longer.</p>
      )}
      <p class="links">
        {steps.map((step) => (
          <Button key={step} look="link" press={() => panel.move.did(plant, step)}>
            {MOVE_WORDS[step].press}
            <span class="unseen"> for {plant}</span>
          </Button>
        ))}
      </p>
    </li>
  );
}

export function MoveCard(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const day = useStore(panel.move.day);
  const solution = useStore(panel.move.solution);
  const today = dayFromIso(loaded.today) ?? 0;
  const rows = loaded.care.rows.map((row) => ({ ...row, day: dayFromIso(row.day) ?? Number.NaN }));
  const moves = movesFromSoil(rows, today).filter(({ due }) => due.length > 0);
  return (
    <section class="card" aria-labelledby="move-title">
      <h3 id="move-title">Move from soil</h3>
      <details class="quiet">
        <summary>How it is done</summary>
        <ol class="steps">
          {MOVE_STEPS.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ol>
        <p class="hint">Common practice, no source.</p>
      </details>
      {moves.length === 0 ? (
        <p>
          No plant is on its way. Log “{MOVE}” above on the day its soil is washed off; the next steps then stand here.
        </p>
      ) : (
        <>
          <ul class="deeds">
            {moves.map((move) => (
              <MoveSteps key={move.plant} panel={panel} move={move} today={today} />
            ))}
          </ul>
          <TextField
            label="Solution filled in"
            offered={solutionsOf(loaded)}
            value={solution}
            onType={panel.move.solution.set}
          />
          <TextField
            label="Date of the step"
            kind="date"
            value={day === "" ? loaded.today : day}
            onType={(typed) => panel.move.day.set(typed === loaded.today ? "" : typed === "" ? "none" : typed)}
          />
        </>
      )}
      <Send sender={panel.move.sender} label="Log the step" working="Saving the step…" hidden />
    </section>
  );
}
