/** Says above the form which old batch is being repeated or corrected, and how to leave it. */

import type { JSX } from "preact";
import { nameKey } from "../src/core/cell.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { Worked } from "./batch.ts";
import { Button } from "./button.tsx";
import { chosen, namedWater } from "./choices.ts";
import { keepWeighed } from "./old-batch.ts";
import type { Panel } from "./panel-state.ts";
import { changesSince } from "./past-batch.ts";
import { showDay } from "./show.ts";
import { useStore } from "./use-store.ts";

export function PastBanner(props: { readonly panel: Panel; readonly worked: Worked }): JSX.Element | null {
  const desk = props.panel.batch;
  const draft = useStore(desk.draft);
  const shelf = useStore(desk.shelf);
  const { past, corrects, mode } = draft;
  if (past === null) return null;
  const of = [past.day === "" ? "" : showDay(past.day), `${sayNumber(past.litres)} L`, past.target || past.water]
    .filter((part) => part !== "")
    .join(", ");
  const correcting = corrects !== "";
  const target = chosen(shelf.targets, nameKey(past.target));
  // In repeat mode they stand with the result.
  const litres = props.worked.litres.value;
  const litresOff = litres !== null && litres > 0 && litres !== past.litres;
  const changes = mode === "repeat" ? [] : changesSince(past, shelf).changes;
  return (
    <div class="notice" data-part="old batch">
      <p>
        {correcting ? "Correcting" : "Repeating"} the batch of {of}.{" "}
        {correcting
          ? "The old row stays in the log and no longer counts once this one is there."
          : "The doses for a litre stay as they were; type the litres you mix now."}
      </p>
      {mode === "repeat" && correcting && (
        <p>
          Its doses stay as they are, since a feed or its water is no longer there. Litres, date and note can change.
        </p>
      )}
      {correcting && mode === "doses" && litresOff && (
        <p>
          The doses are for a litre, so other litres mean other amounts weighed.{" "}
          <Button look="link" press={() => desk.draft.change((now) => keepWeighed(now, litres ?? past.litres))}>
            The amounts weighed were right, only the litres were wrong
          </Button>
        </p>
      )}
      {changes.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {mode === "repeat" && !correcting && target !== null && (
        <p>
          <Button
            look="link"
            press={() =>
              desk.draft.change((now) => ({
                ...now,
                mode: "target",
                past: null,
                target: target.key,
                water: namedWater(shelf.waters, past.water)?.key ?? now.water,
                feeds: past.doses.map(({ feed }) => feed),
              }))
            }
          >
            Work it out anew for this target instead
          </Button>
        </p>
      )}
      <Button look="link" press={desk.another}>
        {correcting ? "Leave the old row as it is" : "Start a new batch instead"}
      </Button>
    </div>
  );
}
