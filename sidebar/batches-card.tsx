/** "Batches in the log": each with what it was, and what can be done with it: mixed, repeated, corrected, taken back, printed. */

import type { JSX } from "preact";
import type { BatchRow, Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { sayNumber } from "../src/core/saying.ts";
import { cardOfRow } from "./batch-card.ts";
import type { BatchesDesk } from "./batches-desk.ts";
import { Button } from "./button.tsx";
import { Facts } from "./facts.tsx";
import type { Panel } from "./panel-state.ts";
import { pastOf } from "./past-batch.ts";
import { batchWords } from "./readings.ts";
import type { Sending } from "./sending.ts";
import { useStore } from "./use-store.ts";

/** Rows typed by hand may have another, and then no later row can point at them. */
const OUR_ID = /^[a-z0-9-]{8,64}$/;

function said(now: Sending, working: string): string {
  if (now.state === "under way") return working;
  return "sentence" in now ? now.sentence : "";
}

/** What the last press on one of the batches came to. */
function Outcome({ desk }: { readonly desk: BatchesDesk }): JSX.Element {
  const mixing = useStore(desk.mixing.now);
  const taking = useStore(desk.takingBack.sender.now);
  const [now, working] =
    mixing.state !== "idle"
      ? ([mixing, "Logging the batch as mixed…"] as const)
      : ([taking, "Taking it back…"] as const);
  return (
    <p role="status" class={`outcome ${now.state.replace(" ", "-")}`}>
      {said(now, working)}
      {now.state === "done" && now.notes.map((note) => <span key={note}>{note}</span>)}
    </p>
  );
}

const factsOf = (row: BatchRow): readonly (readonly [string, string])[] => [
  ["By", row.who],
  ["Water", row.water],
  ["Doses", row.doses],
  ["Acid or base", row.acid],
  ["EC to expect", row.predictedEcMsCm === null ? "" : `${row.predictedEcMsCm.toFixed(2)} mS/cm`],
  ["Measured EC", row.measuredEcMsCm === null ? "" : `${sayNumber(row.measuredEcMsCm)} mS/cm`],
  ["Measured pH", row.measuredPH === null ? "" : sayNumber(row.measuredPH)],
  ["Verdict", row.verdict],
  ["Note", row.note],
];

/** Moves on to the form above, where the batch now stands. */
function toTheForm(): void {
  document.getElementById("section-title")?.focus();
}

function Actions(props: { readonly panel: Panel; readonly loaded: Loaded; readonly row: BatchRow }): JSX.Element {
  const { panel, loaded, row } = props;
  const desk = panel.batches;
  const past = pastOf(row);
  if (typeof past === "string") return <p class="hint">{past}</p>;
  const can = OUR_ID.test(row.id);
  const own = row.who.trim() !== "" && nameKey(row.who) === nameKey(loaded.who);
  const clear = (): void => {
    desk.mixing.clear();
    desk.takingBack.sender.clear();
  };
  return (
    <div class="actions">
      {row.state === "planned" && can && (
        <Button look="second" press={() => desk.mixed(row)}>
          Log as mixed
        </Button>
      )}
      <Button
        look="link"
        press={() => {
          clear();
          panel.batch.repeat(past);
          toTheForm();
        }}
      >
        Repeat it
      </Button>
      {can && (own || row.state === "planned") && (
        <Button
          look="link"
          press={() => {
            clear();
            panel.batch.correct(past, row);
            toTheForm();
          }}
        >
          {row.state === "planned" ? "Change it" : "Correct it"}
        </Button>
      )}
      <Button
        look="link"
        press={() => {
          const card = cardOfRow(row, panel.batch.shelf.get());
          if (typeof card !== "string") panel.card.set(card);
        }}
      >
        Card
      </Button>
      {can && own && (
        <Button
          look="link"
          press={() => {
            desk.mixing.clear();
            desk.takeBack(row.id);
          }}
        >
          Take it back
        </Button>
      )}
    </div>
  );
}

export function BatchesCard(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const desk = panel.batches;
  const shown = useStore(desk.shown);
  const rows = loaded.batches.slice(0, shown);
  return (
    <section class="card" aria-labelledby="batches-title">
      <h3 id="batches-title">Batches in the log</h3>
      {loaded.batches.length === 0 && <p class="empty">No batch is in the log yet.</p>}
      <Outcome desk={desk} />
      {rows.map((row) => (
        <details key={row.id === "" ? JSON.stringify(row) : row.id} data-batch={row.id}>
          <summary>
            {batchWords(row)}
            {row.state === "planned" && <strong>, planned</strong>}
          </summary>
          <Facts facts={factsOf(row)} />
          <Actions panel={panel} loaded={loaded} row={row} />
        </details>
      ))}
      {loaded.batches.length > shown && (
        <Button look="link" press={() => desk.shown.change((now) => now + 10)}>
          Show older batches
        </Button>
      )}
    </section>
  );
}
