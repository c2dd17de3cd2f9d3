/** The form for a claim, new or changed. */

import type { JSX, Ref } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { CLAIM_STATES } from "../src/app/requests.ts";
import { Button } from "./button.tsx";
import { type ClaimDraft, typedYears } from "./claim-draft.ts";
import { STATE_WORDS } from "./claim-rows.ts";
import { SelectField, TextField } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { useStore } from "./use-store.ts";
import { WhoCard } from "./who.tsx";

export function ClaimForm(props: {
  readonly panel: Panel;
  readonly loaded: Loaded;
  readonly heading: Ref<HTMLHeadingElement>;
}): JSX.Element {
  const { panel, loaded, heading } = props;
  const desk = panel.claims;
  const draft = useStore(desk.draft);
  const type = (change: Partial<ClaimDraft>): void => desk.draft.change((now) => ({ ...now, ...change }));
  const changing = draft.corrects !== "";
  const text = (
    key: "heardFrom" | "theirSetup" | "ourSetup" | "agrees" | "differs" | "outcome" | "note",
    label: string,
  ) => <TextField label={label} value={draft[key]} onType={(typed) => type({ [key]: typed })} />;
  return (
    <>
      <h3 tabIndex={-1} ref={heading}>
        {changing ? "Change this claim" : "Write a claim down"}
      </h3>
      {changing && (
        <p class="links">
          <Button look="link" press={desk.leave}>
            Leave it as it was
          </Button>
        </p>
      )}
      <TextField label="What is said to help" value={draft.claim} onType={(claim) => type({ claim })} />
      <div class="pair">
        {text("heardFrom", "Who says so")}
        <TextField
          label="Years at it"
          number
          value={draft.years}
          problem={typedYears(draft).problem}
          onType={(years) => type({ years })}
        />
      </div>
      {text("theirSetup", "Their pots, light, water")}
      {text("ourSetup", "Ours")}
      <div class="pair">
        {text("agrees", "What agrees")}
        {text("differs", "What differs")}
      </div>
      <SelectField
        label="How far it has come here"
        value={draft.status}
        options={CLAIM_STATES.map((state) => ({ value: state, words: STATE_WORDS[state] }))}
        onType={(status) => type({ status: CLAIM_STATES.find((state) => state === status) ?? "heard" })}
      />
      {(changing || draft.status !== "heard") && text("outcome", "What came of it")}
      <div class="pair">
        <TextField
          label="Heard on"
          kind="date"
          value={draft.heardOn === "" && !changing ? loaded.today : draft.heardOn}
          onType={(heardOn) => type({ heardOn })}
        />
        <TextField
          label="Look again on"
          kind="date"
          value={draft.lookAgain}
          onType={(lookAgain) => type({ lookAgain })}
        />
      </div>
      {text("note", "Note")}
      <WhoCard panel={panel} />
      <Send
        sender={desk.sender}
        label={changing ? "Save the change" : "Save this claim"}
        working="Saving the claim…"
        primary
      />
    </>
  );
}
