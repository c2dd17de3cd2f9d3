/** "Due now": place by place, each with its reason and numbers, and the way to its row in the log. */

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import { isoFromDay } from "../src/core/calendar.ts";
import { nameKey } from "../src/core/cell.ts";
import type { Due } from "../src/core/due.ts";
import { Button } from "./button.tsx";
import { placesOf } from "./care.ts";
import { SelectField } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { dueByPlace, dueNow, openClaims, type ReservoirLog } from "./reservoir-log.ts";
import { count, showDay } from "./show.ts";
import { useStore } from "./use-store.ts";
import { WithRecords } from "./with-records.tsx";

/** ISO days in a sentence as the panel writes days. */
const withDays = (sentence: string): string => sentence.replace(/\d{4}-\d{2}-\d{2}/g, showDay);

function DueLine(props: { readonly one: Due; readonly log: () => void }): JSX.Element {
  const { plant, due, sinceDay, why } = props.one;
  return (
    <li>
      <p>
        <b>{plant}</b>: {due.toLowerCase()}, since {showDay(isoFromDay(sinceDay))}
      </p>
      <p class="hint">{withDays(why)}</p>
      <Button look="link" press={props.log}>
        Log it
        <span class="unseen">
          {" "}
          for {plant}: {due.toLowerCase()}
        </span>
      </Button>
    </li>
  );
}

/** Claims come with the further records, so they are told when those are read. */
function ClaimsDue(props: { readonly panel: Panel; readonly log: ReservoirLog }): JSX.Element {
  const { panel, log } = props;
  return (
    <WithRecords panel={panel}>
      {(records) => {
        const again = dueNow(log, [], openClaims(records.claims));
        if (again.length === 0) return null;
        return (
          <>
            <h4>Look again</h4>
            <ul class="dues">
              {again.map(({ why, sinceDay }) => (
                <li key={why}>
                  <p>{why}</p>
                  <p class="hint">To be looked at again since {showDay(isoFromDay(sinceDay))}.</p>
                </li>
              ))}
            </ul>
          </>
        );
      }}
    </WithRecords>
  );
}

export function DuePart(props: {
  readonly panel: Panel;
  readonly loaded: Loaded;
  readonly log: ReservoirLog;
}): JSX.Element {
  const { panel, loaded, log } = props;
  const desk = panel.reservoir;
  const { place } = useStore(desk.draft);
  const places = useMemo(() => dueByPlace(dueNow(log, loaded.plants), loaded.plants), [log, loaded.plants]);
  const shown = places.filter((one) => place === "" || nameKey(one.place) === nameKey(place));
  const thirsty = shown.flatMap(({ due }) => due.filter((one) => one.due === "Top up")).map(({ plant }) => plant);
  const all = shown.reduce((sum, { due }) => sum + due.length, 0);
  return (
    <>
      <h3>Due now</h3>
      <SelectField
        label="Place"
        value={place}
        options={[
          { value: "", words: "All places" },
          ...placesOf(loaded.plants).map((one) => ({ value: one, words: one })),
        ]}
        onType={(chosen) => desk.draft.change((now) => ({ ...now, place: chosen }))}
      />
      <p role="status" class="tally">
        {all === 0
          ? "Nothing is due here."
          : `${count(all, "thing")} due, ${thirsty.length === 0 ? "no plant" : count(thirsty.length, "plant")} thirsty.`}
      </p>
      {thirsty.length > 0 && (
        <Button look="primary" press={() => desk.log("Top up", thirsty)}>
          Log a top-up for {thirsty.length === 1 ? thirsty[0] : `these ${thirsty.length}`}
        </Button>
      )}
      {log.problems.map((problem) => (
        <p class="notice" key={problem}>
          {problem}
        </p>
      ))}
      {shown.map((group) => (
        <details key={group.place} class="place" open={shown.length === 1 || undefined}>
          <summary>
            {group.place === "" ? "No place" : group.place}: {group.due.length} due
          </summary>
          <ul class="dues">
            {group.due.map((one) => (
              <DueLine key={`${one.plant} ${one.due}`} one={one} log={() => desk.log(one.due, [one.plant])} />
            ))}
          </ul>
        </details>
      ))}
      <ClaimsDue panel={panel} log={log} />
      {!loaded.care.all && loaded.care.from !== null && (
        <p class="hint">The log is read back to {showDay(loaded.care.from)}; what is older is not counted here.</p>
      )}
      <p class="hint">
        When something is due is set on the Settings tab: Top up days, Flush days, Change days, EC ceiling, Root rise %,
        Look days, Recovery days.
      </p>
    </>
  );
}
