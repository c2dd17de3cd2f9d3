/** "Go away": one page for whoever looks after the plants, and what came of it afterwards. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { sayList, sayNumber } from "../src/core/saying.ts";
import { Button } from "./button.tsx";
import { SelectField, TextField } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { count, showDay } from "./show.ts";
import type { SitterDesk } from "./sitter-desk.ts";
import {
  chosenBatch,
  newestBatches,
  PLAIN,
  planSitting,
  type SitterDraft,
  type Sitting,
  spanOf,
} from "./sitter-draft.ts";
import { litresReady, sayLitres, sitterPage } from "./sitter-page.ts";
import { SitterPrint } from "./sitter-print.tsx";
import { useStore } from "./use-store.ts";

const VISITS = [
  { value: "1", words: "Every day" },
  { value: "2", words: "Every 2nd day" },
  { value: "3", words: "Every 3rd day" },
  { value: "4", words: "Every 4th day" },
  { value: "7", words: "Once a week" },
];
const MOST_BATCHES = 8;
const SHOWN = 6;

function named(names: readonly string[]): string {
  return names.length <= SHOWN
    ? sayList(names, "and")
    : `${names.slice(0, SHOWN).join(", ")} and ${names.length - SHOWN} more`;
}

/** What the plan comes to, and what the household should know before it goes. */
function Summary(props: { readonly sitting: Sitting }): JSX.Element {
  const { plan, beforeYouGo, batch } = props.sitting;
  const kinds = [...new Set(beforeYouGo.map(({ due }) => due))];
  return (
    <ul class="sentences">
      <li>
        {count(plan.visitDays.length, "visit")}, {count(plan.pours.length, "pour")}
        {plan.totalMl > 0 &&
          `, about ${sayLitres(plan.totalMl)}. Have ${sayNumber(litresReady(plan.totalMl))} L ready${batch === null ? "" : ", mixed before you go"}`}
        .
      </li>
      {plan.tooRare.map(({ plant, lastsDays }) => (
        <li key={plant}>
          {plant} drinks what it holds in {count(lastsDays, "day")}, sooner than the next visit. Let somebody come more
          often.
        </li>
      ))}
      {plan.unknown.length > 0 && (
        <li>
          Nothing is known of {named(plan.unknown.map(({ plant }) => plant))}: there is no top-up in the log, so{" "}
          {plan.unknown.length === 1 ? "it is" : "they are"} not on the page. Say on it by hand what to do.
        </li>
      )}
      {kinds.map((kind) => (
        <li key={kind}>
          Before you go: “{kind}” falls due for{" "}
          {named(beforeYouGo.filter(({ due }) => due === kind).map(({ plant }) => plant))}. That is no work for a
          sitter.
        </li>
      ))}
    </ul>
  );
}

function Rooms(props: { readonly desk: SitterDesk; readonly loaded: Loaded }): JSX.Element {
  const { desk, loaded } = props;
  const { without } = useStore(desk.draft);
  const places = [...new Map(loaded.plants.map(({ place }) => [nameKey(place), place.trim()])).values()].sort();
  return (
    <fieldset>
      <legend>Rooms</legend>
      {places.map((place) => {
        const plants = loaded.plants.filter((each) => nameKey(each.place) === nameKey(place)).length;
        return (
          <label class="tick" key={place}>
            <input
              type="checkbox"
              checked={!without.some((out) => nameKey(out) === nameKey(place))}
              onChange={(event) => {
                const others = without.filter((out) => nameKey(out) !== nameKey(place));
                const next = event.currentTarget.checked ? others : [...others, place];
                desk.draft.change((now) => ({ ...now, without: next }));
              }}
            />
            <span>
              {place === "" ? "No room named" : place}
              <small>{count(plants, "plant")}</small>
            </span>
          </label>
        );
      })}
    </fieldset>
  );
}

function LookBack(props: { readonly desk: SitterDesk }): JSX.Element {
  const { check, checked } = props.desk;
  const found = useStore(checked);
  return (
    <>
      <h3>Back home</h3>
      <p>Holds the newest page against the Care log of those days.</p>
      <Send sender={check} label="Compare with the log" working="Reading the page and the log…" />
      {found?.parts.map(({ title, sentences }) => (
        <div key={title}>
          <h4>{title}</h4>
          <ul class="sentences">
            {sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      ))}
    </>
  );
}

export function SitterSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const desk = panel.sitter;
  const draft = useStore(desk.draft);
  const type =
    (key: keyof SitterDraft) =>
    (value: string): void =>
      desk.draft.change((now) => ({ ...now, [key]: value }));
  if (loaded.plants.length === 0) {
    return (
      <p class="empty">
        There are no plants yet. Write some into the Plants tab, or choose your own plant list under “Set up”.
      </p>
    );
  }
  const span = spanOf(draft);
  const sitting = typeof span === "string" ? null : planSitting(draft, loaded, span);
  const batches = newestBatches(loaded).slice(0, MOST_BATCHES);
  return (
    <>
      <p class="hint">One page for whoever looks after the plants: each visit with its rooms, plants and amounts.</p>
      <div class="pair">
        <TextField label="First day away" kind="date" value={draft.from} onType={type("from")} />
        <TextField label="Last day away" kind="date" value={draft.to} onType={type("to")} />
      </div>
      <TextField label="Who comes" value={draft.sitter} offered={loaded.people} onType={type("sitter")} />
      <SelectField label="How often" value={draft.every} options={VISITS} onType={type("every")} />
      <Rooms desk={desk} loaded={loaded} />
      <label class="tick">
        <input
          type="checkbox"
          checked={draft.filledBefore}
          onChange={(event) => {
            const filledBefore = event.currentTarget.checked;
            desk.draft.change((now) => ({ ...now, filledBefore }));
          }}
        />
        <span>All reservoirs are filled the day before</span>
      </label>
      <SelectField
        label="What is in the can"
        value={draft.batch === PLAIN ? PLAIN : (chosenBatch(draft, loaded)?.id ?? PLAIN)}
        options={[
          ...batches.map(({ id, day, target }) => ({
            value: id,
            words: `${showDay(day)}${target === "" ? "" : `, ${target}`}`,
          })),
          { value: PLAIN, words: "Plain water" },
        ]}
        onType={type("batch")}
      />
      <TextField
        label="How to reach you"
        hint="Stands on the page as you write it; may stay empty."
        value={draft.reach}
        onType={type("reach")}
      />
      {sitting !== null && <Summary sitting={sitting} />}
      <Send sender={desk.sender} label="Put the page into the sheet" working="Writing the page…" primary />
      {sitting !== null && sitting.plan.pours.length > 0 && (
        <>
          <Button look="second" press={() => globalThis.print()}>
            Print the page here
          </Button>
          <SitterPrint page={sitterPage(draft, sitting)} />
        </>
      )}
      <LookBack desk={desk} />
    </>
  );
}
