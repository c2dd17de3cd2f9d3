/** Past repots of one's own list: which column tells of what, what would be written, and the press that writes it. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { isoFromDay } from "../src/core/calendar.ts";
import { readListDay } from "../src/core/list-days.ts";
import { eventsToChoose } from "./care.ts";
import { type Option, SelectField } from "./field.tsx";
import { examplesOf } from "./list-guess.ts";
import type { Panel } from "./panel-state.ts";
import type { Past, PastColumn } from "./past.ts";
import { Send } from "./send.tsx";
import { count, showDay } from "./show.ts";

const MOST_SHOWN = 1000;

/** "3 Apr 2025" and "4 Mar 2025", for a text that is both. */
function readings(example: string): readonly Option[] {
  const read = readListDay(example);
  if (read.kind !== "either") return [];
  return [
    { value: "", words: "Choose" },
    { value: "day first", words: showDay(isoFromDay(read.dayFirst)) },
    { value: "month first", words: showDay(isoFromDay(read.monthFirst)) },
  ];
}

function ColumnChoice(props: { readonly panel: Panel; readonly loaded: Loaded; readonly of: PastColumn }): JSX.Element {
  const { panel, loaded } = props;
  const { heading, column, event, ask, order } = props.of;
  const { past } = panel.setup;
  const events = eventsToChoose(loaded).filter(({ disturbsRoots }) => disturbsRoots);
  return (
    <>
      <SelectField
        label={`What “${heading}” tells of`}
        hint={`It holds ${examplesOf(column)}.`}
        value={event === "" ? "none" : event}
        options={[
          { value: "none", words: "Nothing for the log" },
          ...events.map(({ event: name }) => ({ value: name, words: name })),
        ]}
        onType={(chosen) => past.change((now) => ({ ...now, events: { ...now.events, [heading]: chosen } }))}
      />
      {event !== "" && ask !== "" && (
        <SelectField
          label={`How “${ask}” is meant`}
          of={heading}
          value={order ?? ""}
          options={readings(ask)}
          onType={(chosen) => past.change((now) => ({ ...now, orders: { ...now.orders, [heading]: chosen } }))}
        />
      )}
    </>
  );
}

export function PastCard(props: {
  readonly panel: Panel;
  readonly loaded: Loaded;
  readonly past: Past;
}): JSX.Element | null {
  const { panel, loaded, past } = props;
  const { columns, rows, known, left, undecided } = past;
  if (columns.length === 0) return null;
  const fresh = rows.length - known;
  return (
    <section class="card" aria-labelledby="past-title">
      <h3 id="past-title">Past repots in this list</h3>
      <p>
        The log can take them over, so that days at rest are counted from them. Nothing is written before you press.
      </p>
      {columns.map((column) => (
        <ColumnChoice key={column.heading} panel={panel} loaded={loaded} of={column} />
      ))}
      {rows.length > 0 && (
        <details class="quiet" open>
          <summary>
            {known === rows.length
              ? `All ${known} are in the log already`
              : `${count(fresh, "entry", "entries")} to be written${known > 0 ? `, ${known} in the log already` : ""}`}
          </summary>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and the arrow keys need a way in */}
          <ul class="deeds listed" tabIndex={0} aria-label="Entries for the care log">
            {rows.slice(0, MOST_SHOWN).map(({ row, plant, day, event }) => (
              <li key={`${row} ${day} ${event}`}>
                {plant}: {event}, {showDay(day)}
              </li>
            ))}
          </ul>
          {rows.length > MOST_SHOWN && <p class="hint">The first {MOST_SHOWN} are shown.</p>}
        </details>
      )}
      {undecided > 0 && (
        <p class="notice">
          {count(undecided, "day")} can be read in two ways and {undecided === 1 ? "waits" : "wait"} for your answer.
        </p>
      )}
      {left.length > 0 && (
        <details class="quiet">
          <summary>{count(left.length, "cell")} cannot be used</summary>
          <ul class="sentences">
            {left.slice(0, MOST_SHOWN).map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </details>
      )}
      <Send
        sender={panel.setup.pastSender}
        label={
          fresh === 0 ? "Write them into the care log" : `Write ${count(fresh, "entry", "entries")} into the care log`
        }
        working="Writing…"
      />
    </section>
  );
}
