/** "Log care": which plants, what happened, and one button that writes all rows at once. */

import type { JSX } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { AmountsList } from "./amounts-list.tsx";
import { Button } from "./button.tsx";
import { type CareDraft, careNumbers, chosenPlants, eventsToChoose } from "./care.ts";
import type { CareDesk } from "./care-desk.ts";
import { EcField } from "./ec-field.tsx";
import { SelectField, TextField } from "./field.tsx";
import { LatestCard } from "./latest-card.tsx";
import { meterOf } from "./meter.ts";
import { MoveCard } from "./move-card.tsx";
import type { Panel } from "./panel-state.ts";
import { PlantPicker } from "./plant-picker.tsx";
import { ReasonField } from "./reason-field.tsx";
import { Send } from "./send.tsx";
import { solutionsOf } from "./solutions.ts";
import { useStore } from "./use-store.ts";
import { WhoCard } from "./who.tsx";

function Correcting(props: { readonly desk: CareDesk; readonly draft: CareDraft }): JSX.Element | null {
  const { desk, draft } = props;
  const words = useRef<HTMLParagraphElement>(null);
  useLayoutEffect(() => {
    if (draft.corrects !== "") words.current?.focus();
  }, [draft.corrects]);
  if (draft.corrects === "") return null;
  return (
    <p class="notice" tabIndex={-1} ref={words}>
      This corrects an entry for {Object.keys(draft.chosen).join(", ")}. What you log now counts in its place.{" "}
      <Button look="link" press={desk.stopCorrecting}>
        Leave it as it was
      </Button>
    </p>
  );
}

/** Answers to what is asked when somebody else logged the same that day. */
function DoublesChoice(props: { readonly desk: CareDesk; readonly draft: CareDraft }): JSX.Element | null {
  const { desk, draft } = props;
  const doubles = useStore(desk.doubles);
  if (doubles.length === 0) return null;
  const others = Object.keys(draft.chosen).length - doubles.length;
  return (
    <>
      <Button look="second" press={desk.leaveDoublesOut}>
        {others > 0
          ? `Leave ${doubles.length === 1 ? "it" : "those"} out, log the other ${others}`
          : "Do not log it again"}
      </Button>
      <p class="links">
        <Button look="link" press={desk.logAllTheSame}>
          Log all the same
        </Button>
      </p>
    </>
  );
}

export function CareSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const desk = panel.care;
  const draft = useStore(desk.draft);
  const numbers = careNumbers(draft, loaded);
  const chosen = chosenPlants(draft, loaded.plants);
  const type =
    (key: "event" | "day" | "amountMl" | "solution" | "ec" | "pH" | "note") =>
    (text: string): void =>
      desk.draft.change((now) => ({ ...now, [key]: text }));
  const solutions = solutionsOf(loaded);
  const events = eventsToChoose(loaded);
  const event = events.find((each) => nameKey(each.event) === nameKey(draft.event));
  if (loaded.plants.length === 0) {
    return (
      <p class="empty">
        There are no plants yet. Write some into the Plants tab, or choose your own plant list under “Set up”.
      </p>
    );
  }
  return (
    <>
      <Correcting desk={desk} draft={draft} />
      <SelectField
        label="What happened"
        value={event?.event ?? ""}
        options={[{ value: "", words: "Choose" }, ...events.map(({ event: name }) => ({ value: name, words: name }))]}
        onType={type("event")}
      />
      <PlantPicker desk={desk} loaded={loaded} />
      <ReasonField desk={desk} draft={draft} loaded={loaded} />
      <TextField
        label="Date"
        kind="date"
        value={draft.day === "" ? loaded.today : draft.day}
        onType={(day) => type("day")(day === loaded.today ? "" : day === "" ? "none" : day)}
      />
      <p class="hint">What follows may stay empty. Without an amount, each plant gets what it got the last time.</p>
      <div class="pair">
        <TextField
          label="Amount, mL each"
          number
          value={draft.amountMl}
          problem={numbers.amount.problem}
          onType={type("amountMl")}
        />
        <TextField label="Solution" offered={solutions} value={draft.solution} onType={type("solution")} />
      </div>
      <AmountsList desk={desk} draft={draft} loaded={loaded} plants={chosen} />
      <div class={meterOf(loaded).scale === null ? "pair" : ""}>
        <EcField
          label="EC"
          meter={meterOf(loaded)}
          text={draft.ec}
          unit={draft.ecUnit}
          read={numbers.ec}
          onType={type("ec")}
          onUnit={(ecUnit) => desk.draft.change((now) => ({ ...now, ecUnit }))}
        />
        <TextField label="pH" number value={draft.pH} problem={numbers.pH.problem} onType={type("pH")} />
      </div>
      <TextField label="Note" value={draft.note} onType={type("note")} />
      <WhoCard panel={panel} />
      <Send sender={desk.sender} label="Log care" working="Saving…" primary />
      <DoublesChoice desk={desk} draft={draft} />
      <LatestCard panel={panel} loaded={loaded} />
      <MoveCard panel={panel} loaded={loaded} />
    </>
  );
}
