/** One plant at a time, down the shelf: what it got the last time, and one press to the next. */

import type { JSX } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { Button } from "./button.tsx";
import { type CareDraft, restWords } from "./care.ts";
import { lastAmounts, ownAmount } from "./care-amounts.ts";
import type { CareDesk } from "./care-desk.ts";
import { TextField } from "./field.tsx";
import { roundOf } from "./round.ts";
import { count, showDay, showDose } from "./show.ts";

/** "Last Top up: 250 mL on 3 Mar 2026, by Ben." */
function lastWords(loaded: Loaded, plant: string, event: string): string {
  const last = loaded.care.rows.find(
    (row) => nameKey(row.plant) === nameKey(plant) && nameKey(row.event) === nameKey(event),
  );
  if (last === undefined) return `No ${event === "" ? "entry" : event} on record.`;
  const amount = last.amountMl === null ? "" : `${showDose(last.amountMl, "mL")} `;
  return `Last ${last.event}: ${amount}on ${showDay(last.day)}${last.who === "" ? "" : `, by ${last.who}`}.`;
}

export function RoundCard(props: {
  readonly desk: CareDesk;
  readonly draft: CareDraft;
  readonly loaded: Loaded;
}): JSX.Element {
  const { desk, draft, loaded } = props;
  const { plants, at, plant } = roundOf(draft, loaded.plants);
  const words = useRef<HTMLParagraphElement>(null);
  const over = plant === null;
  const wasOver = useRef(over);
  useLayoutEffect(() => {
    // The button that was pressed is gone after the last plant: go on where it is said so.
    if (over && !wasOver.current) words.current?.focus();
    wasOver.current = over;
  }, [over]);
  const chosen = plants.filter(({ plant: name }) => draft.chosen[name] !== undefined).length;
  const remembered = plant === null ? undefined : lastAmounts(loaded, draft.event).get(nameKey(plant.plant));
  const typed = plant === null ? undefined : draft.amounts[plant.plant];
  const amount = typed ?? (draft.amountMl.trim() === "" ? String(remembered ?? "") : draft.amountMl);
  return (
    <div class="round">
      <p role="status" tabIndex={-1} ref={words}>
        {plant === null ? (
          `That was the last one. Of ${count(plants.length, "plant")} here, ${chosen} will be logged.`
        ) : (
          <>
            <span class="soft">
              {at + 1} of {plants.length}
            </span>{" "}
            <strong>{plant.plant}</strong>
          </>
        )}
      </p>
      {plant !== null && (
        <>
          <p class="hint">
            {[plant.place, restWords(plant.restDays)].filter((part) => part !== "").join(" · ")}
            <br />
            {lastWords(loaded, plant.plant, draft.event)}
            {draft.chosen[plant.plant] !== undefined && " Chosen for this round."}
          </p>
          <TextField
            label="Amount, mL"
            of={plant.plant}
            number
            value={amount}
            problem={ownAmount(draft, plant.plant)?.problem}
            onType={(text) =>
              desk.draft.change((now) => ({ ...now, amounts: { ...now.amounts, [plant.plant]: text } }))
            }
          />
          <Button look="second" press={() => desk.step(true)}>
            {draft.event === "" ? "Done" : `${draft.event} done`}, next
          </Button>
        </>
      )}
      <p class="links">
        {plant !== null && (
          <Button look="link" press={() => desk.step(false)}>
            Pass over
          </Button>
        )}
        {at > 0 && (
          <Button look="link" press={desk.back}>
            One back
          </Button>
        )}
      </p>
    </div>
  );
}
