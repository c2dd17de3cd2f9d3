/** The question before roots at rest are disturbed: which plants, for how long, and why now. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { REASONS } from "../src/core/rest-rule.ts";
import { type CareDraft, chosenPlants, restWords } from "./care.ts";
import type { CareDesk } from "./care-desk.ts";
import { disturbs, earlyAmong } from "./care-early.ts";
import { SelectField, TextField } from "./field.tsx";

export function ReasonField(props: {
  readonly desk: CareDesk;
  readonly draft: CareDraft;
  readonly loaded: Loaded;
}): JSX.Element | null {
  const { desk, draft, loaded } = props;
  if (!disturbs(draft.event, loaded)) return null;
  const plants = chosenPlants(draft, loaded.plants);
  const early = [...earlyAmong(draft, plants, loaded)].sort((a, b) => a.restDays - b.restDays);
  const [first] = early;
  const resting = plants
    .filter(({ restDays }) => restDays !== null)
    .sort((a, b) => (a.restDays ?? 0) - (b.restDays ?? 0));
  const [shortest] = resting;
  return (
    <>
      <p class="notice">
        This disturbs the roots, and their rest is counted anew.
        {first !== undefined
          ? ` ${first.plant} has had ${first.restDays} of the ${first.neededDays} days of rest that Settings asks for${early.length > 1 ? `, and ${early.length - 1} more of these plants too few` : ""}. Say why it cannot wait.`
          : shortest !== undefined
            ? ` Shortest rest so far: ${shortest.plant}, ${restWords(shortest.restDays)}.`
            : ""}
      </p>
      <SelectField
        label={first === undefined ? "Reason, if there is one" : "Why now"}
        value={draft.why}
        options={[
          { value: "", words: first === undefined ? "None" : "Choose" },
          ...REASONS.map((reason) => ({ value: reason, words: reason })),
          { value: "other", words: "Another reason" },
        ]}
        onType={(why) => desk.draft.change((now) => ({ ...now, why }))}
      />
      {draft.why === "other" && (
        <TextField
          label="Reason"
          value={draft.reason}
          onType={(reason) => desk.draft.change((now) => ({ ...now, reason }))}
        />
      )}
    </>
  );
}
