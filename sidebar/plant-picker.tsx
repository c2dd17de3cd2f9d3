/** Chooses one or many plants: by place, by typing, one by one or all that are shown. */

import type { JSX } from "preact";
import { useId, useRef } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { Button } from "./button.tsx";
import { chosenPlants, placesOf, restWords, shownPlants } from "./care.ts";
import type { CareDesk } from "./care-desk.ts";
import { doneThatDay } from "./doubles.ts";
import { SelectField, TextField } from "./field.tsx";
import { lastRound } from "./round.ts";
import { RoundCard } from "./round-card.tsx";
import { count, showDay } from "./show.ts";
import { typedDay } from "./typed.ts";
import { useStore } from "./use-store.ts";

/** More boxes than this help nobody, and make typing slow. */
const MOST_SHOWN = 150;

export function PlantPicker(props: { readonly desk: CareDesk; readonly loaded: Loaded }): JSX.Element {
  const { desk, loaded } = props;
  const { plants } = loaded;
  const draft = useStore(desk.draft);
  const title = useId();
  const tally = useRef<HTMLParagraphElement>(null);
  const shown = shownPlants(draft, plants);
  const drawn = shown.slice(0, MOST_SHOWN);
  const chosen = chosenPlants(draft, plants);
  const hidden = chosen.filter((row) => !drawn.includes(row)).length;
  const places = placesOf(plants);
  const names = drawn.map(({ plant }) => plant);
  const allChosen = drawn.length > 0 && drawn.every(({ plant }) => draft.chosen[plant] !== undefined);
  const day = typedDay(draft.day, loaded.today) ?? "";
  const done = doneThatDay(loaded, draft.event, day);
  const doneWords = (plant: string): string => {
    const who = done.get(nameKey(plant));
    if (who === undefined || draft.corrects !== "") return "";
    return `${draft.event} ${day === loaded.today ? "today" : "that day"}${who === "" ? "" : ` by ${who}`} already`;
  };
  const usual = draft.corrects === "" ? lastRound(draft, shown, loaded) : null;
  return (
    <fieldset class="picker">
      <legend id={title}>Plants</legend>
      <div class="pair">
        <TextField
          label="Find by name"
          kind="search"
          value={draft.find}
          onType={(find) => desk.draft.change((now) => ({ ...now, find }))}
        />
        <SelectField
          label="Place"
          value={draft.place}
          options={[{ value: "", words: "All places" }, ...places.map((place) => ({ value: place, words: place }))]}
          onType={(place) => desk.draft.change((now) => ({ ...now, place }))}
        />
      </div>
      {usual !== null && draft.oneByOne === "" && (
        <p class="links">
          <Button look="link" press={() => desk.choose(usual.plants, true)}>
            Choose the same {usual.plants.length} as on {showDay(usual.day)}
          </Button>
        </p>
      )}
      {draft.oneByOne !== "" && shown.length > 0 ? (
        <RoundCard desk={desk} draft={draft} loaded={loaded} />
      ) : drawn.length === 0 ? (
        <p class="empty">No plant fits. Change the place or the letters typed.</p>
      ) : (
        <>
          <label class="tick all">
            <input
              type="checkbox"
              checked={allChosen}
              onChange={(event) => desk.choose(names, event.currentTarget.checked)}
            />
            <span>Select all {drawn.length} shown</span>
          </label>
          <ul class="ticks" aria-labelledby={title}>
            {drawn.map((row) => (
              <li key={row.plant}>
                <label class="tick">
                  <input
                    type="checkbox"
                    checked={draft.chosen[row.plant] !== undefined}
                    onChange={(event) => desk.choose([row.plant], event.currentTarget.checked)}
                  />
                  <span>
                    {row.plant}
                    <small>
                      {[row.place, restWords(row.restDays), doneWords(row.plant)]
                        .filter((part) => part !== "")
                        .join(" · ")}
                    </small>
                  </span>
                </label>
              </li>
            ))}
          </ul>
        </>
      )}
      {draft.oneByOne === "" && shown.length > drawn.length && (
        <p class="hint">
          {drawn.length} of {shown.length} plants are shown. Type part of a name to see the others.
        </p>
      )}
      <p class="tally" ref={tally} tabIndex={-1}>
        {chosen.length === 0 ? "No plant is chosen." : `${count(chosen.length, "plant")} chosen`}
        {hidden > 0 && draft.oneByOne === "" ? `, ${hidden} of them not shown now.` : chosen.length > 0 ? "." : ""}
        {chosen.length > 0 && (
          <Button
            look="link"
            press={() => {
              desk.choose(Object.keys(draft.chosen), false);
              tally.current?.focus();
            }}
          >
            Clear the choice
          </Button>
        )}
      </p>
      {shown.length > 0 && (
        <p class="links">
          <Button
            look="link"
            press={() => desk.draft.change((now) => ({ ...now, at: "", oneByOne: now.oneByOne === "" ? "yes" : "" }))}
          >
            {draft.oneByOne === "" ? "Go through them one by one" : "Show them as a list"}
          </Button>
        </p>
      )}
    </fieldset>
  );
}
