/** "Salt in the reservoir": expected against measured EC, the next flush or change, and the plan of fed and plain top-ups. */

import type { JSX } from "preact";
import { useMemo, useState } from "preact/hooks";
import type { Loaded, PlantRow } from "../src/app/contract.ts";
import { isoFromDay } from "../src/core/calendar.ts";
import { sayNumber } from "../src/core/saying.ts";
import { EcField } from "./ec-field.tsx";
import { TextField } from "./field.tsx";
import { meterOf } from "./meter.ts";
import type { ReservoirDesk } from "./reservoir-desk.ts";
import type { Figure } from "./reservoir-draft.ts";
import { type Figures, figuresOf, plainWater } from "./reservoir-figures.ts";
import type { ReservoirLog } from "./reservoir-log.ts";
import type { Pot } from "./reservoir-pot.ts";
import { pouredBy } from "./reservoir-poured.ts";
import { type SaltAnswer, type SaltFigures, saltAnswer, saltLog } from "./reservoir-salt.ts";
import { sayCeiling, sayPlan, saySalt } from "./reservoir-words.ts";
import { count, showDay } from "./show.ts";
import { useStore } from "./use-store.ts";

/** "3 Dec": the plan reaches less than a year ahead. */
const shortDay = (day: number): string => showDay(isoFromDay(day)).split(" ").slice(0, 2).join(" ");

const STEP_WORDS = { fed: "feed", plain: "plain water", change: "change it all" } as const;

function PlanTable(props: { readonly answer: SaltAnswer }): JSX.Element | null {
  const { plan } = props.answer;
  if (plan.length === 0) return null;
  return (
    <table class="doses">
      <caption>Top-ups that keep to it</caption>
      <thead>
        <tr>
          <th scope="col">Day</th>
          <th scope="col">pour in</th>
          <th scope="col">EC then</th>
        </tr>
      </thead>
      <tbody>
        {plan.map(({ day, kind, amountMl, after }) => (
          <tr key={day}>
            <th scope="row">{shortDay(day)}</th>
            <td class="words">
              {sayNumber(amountMl)} mL {STEP_WORDS[kind]}
            </td>
            <td>{after.toFixed(2)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Ions(props: { readonly answer: SaltAnswer }): JSX.Element | null {
  const { ions } = props.answer;
  if (ions.length === 0) return null;
  return (
    <>
      <h4>What stays behind</h4>
      <ul class="sentences">
        {ions.map(({ ion, fill, now }) => (
          <li key={ion}>
            {ion === "Na" ? "Sodium" : "Chloride"}: {sayNumber(fill)} mg/L when filled, about {sayNumber(now)} now.
          </li>
        ))}
      </ul>
      <p class="hint">From the waters alone, as if the plant took up none: nearly so for these two.</p>
    </>
  );
}

function Answer(props: {
  readonly figures: SaltFigures;
  readonly answer: SaltAnswer;
  readonly today: number;
}): JSX.Element {
  const { figures, answer, today } = props;
  return (
    <div data-part="salt">
      <ul class="sentences" aria-live="polite">
        {saySalt(answer, figures, today).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p class="notice">{sayCeiling(answer, figures, today)}</p>
      <p class="hint">Flush over a sink or outdoors, and keep water off lamps, plugs and heaters.</p>
      <Ions answer={answer} />
      <h4>Feed or plain water</h4>
      {answer.problem === null ? <p>{sayPlan(answer, figures)}</p> : <p class="wrong">{answer.problem}</p>}
      <PlanTable answer={answer} />
      <p class="hint">EC when just filled up and stirred. Before a top-up it reads higher, as there is less water.</p>
    </div>
  );
}

interface Card {
  readonly desk: ReservoirDesk;
  readonly loaded: Loaded;
  readonly log: ReservoirLog;
  readonly pot: Pot;
  readonly plant: PlantRow;
}

function workedOut({ desk, loaded, log, pot, plant }: Card) {
  const salt = saltLog(log, pot, plant, pouredBy(loaded));
  if (salt === null) return null;
  const read = figuresOf({ draft: desk.draft.get(), loaded, log, pot, salt, plain: plainWater(loaded) });
  return { salt, read, answer: read.figures === null ? null : saltAnswer(salt, read.figures, log.today) };
}

export function SaltCard(props: Card): JSX.Element {
  const { desk, loaded, log, pot, plant } = props;
  const draft = useStore(desk.draft);
  // Stays as it is while typing: a figure that completes them must not fold the field away.
  const [open, setOpen] = useState(() => workedOut(props)?.read.figures === null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the draft is read from the desk.
  const worked = useMemo(() => workedOut(props), [draft, loaded, log, pot, plant]);
  if (worked === null) {
    return <p class="empty">Log a solution change or a top-up of this plant first; then its salt can be followed.</p>;
  }
  const { salt, read, answer } = worked;
  const type =
    (figure: Figure) =>
    (text: string): void =>
      desk.draft.change((now) => ({ ...now, figures: { ...now.figures, [figure]: text } }));
  const field = (figure: Figure, label: string): JSX.Element => (
    <TextField
      label={label}
      hint={(read.fields as Figures["fields"])[figure].hint}
      number
      value={draft.figures[figure]}
      problem={read.fields[figure].typed.problem}
      onType={type(figure)}
    />
  );
  return (
    <section class="card" aria-labelledby="salt-title">
      <h3 id="salt-title">Salt in the reservoir</h3>
      <p>
        The same solution since {showDay(isoFromDay(salt.freshDay))},{" "}
        {salt.steps.length === 0 ? "not topped up since" : `topped up or flushed ${count(salt.steps.length, "time")}`}.
      </p>
      <EcField
        label="EC measured today"
        meter={meterOf(loaded)}
        text={draft.figures.measuredEc}
        unit={draft.ecUnit}
        read={read.fields.measuredEc.typed}
        onType={type("measuredEc")}
        onUnit={(ecUnit) => desk.draft.change((now) => ({ ...now, ecUnit }))}
      />
      <p class="hint">
        {salt.measured !== null && draft.figures.measuredEc === ""
          ? `${sayNumber(salt.measured.ecMsCm)} mS/cm on ${showDay(isoFromDay(salt.measured.day))} counts when left empty. `
          : ""}
        {read.fields.measuredEc.hint}
      </p>
      {read.figures !== null && answer !== null ? (
        <Answer figures={read.figures} answer={answer} today={log.today} />
      ) : (
        <p class="empty" aria-live="polite">
          {read.missing}
        </p>
      )}
      <details class="quiet" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>The figures behind it</summary>
        {field("volumeMl", "Reservoir holds, mL")}
        {field("fillEc", "Filled with, mS/cm")}
        {field("topUpEc", "Topped up with, mS/cm")}
        {field("plainEc", "Plain water, mS/cm")}
        {field("ceiling", "Ceiling, mS/cm")}
        {field("everyDays", "Days between top-ups")}
      </details>
    </section>
  );
}
