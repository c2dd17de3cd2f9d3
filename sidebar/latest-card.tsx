/** The latest entries of the care log, with a way to take one's own back or to correct it. */

import type { JSX } from "preact";
import type { CareRow, Loaded } from "../src/app/contract.ts";
import { Button } from "./button.tsx";
import { deedWhen, deedWords, latestDeeds, mayTakeBack } from "./latest.ts";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { useStore } from "./use-store.ts";

function Doing(props: {
  readonly panel: Panel;
  readonly rows: readonly CareRow[];
  readonly me: string;
}): JSX.Element | null {
  const { panel, rows, me } = props;
  const own = rows.filter((row) => mayTakeBack(row, me));
  const [first] = own;
  if (first === undefined) return null;
  const words = deedWords(own);
  return (
    <p class="links">
      <Button look="link" press={() => panel.latest.takeBack(own)}>
        Take back<span class="unseen"> {words}</span>
      </Button>
      {rows.length === 1 && (
        <Button look="link" press={() => panel.latest.refusal.set(panel.care.correct(first) ?? "")}>
          Correct<span class="unseen"> {words}</span>
        </Button>
      )}
    </p>
  );
}

export function LatestCard(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element | null {
  const { panel, loaded } = props;
  const refusal = useStore(panel.latest.refusal);
  const deeds = latestDeeds(loaded.care.rows);
  if (deeds.length === 0) return null;
  return (
    <section class="card" aria-labelledby="latest-title">
      <h3 id="latest-title">Latest entries</h3>
      <ul class="deeds">
        {deeds.map(({ key, rows }) => (
          <li key={key}>
            {deedWords(rows)}
            {rows[0] !== undefined && <small>{deedWhen(rows[0], loaded.today)}</small>}
            <Doing panel={panel} rows={rows} me={loaded.who} />
            {rows.length > 1 && (
              <details class="quiet">
                <summary>Each plant</summary>
                <ul class="deeds">
                  {rows.map((row) => (
                    <li key={row.id}>
                      {deedWords([row])}
                      <Doing panel={panel} rows={[row]} me={loaded.who} />
                    </li>
                  ))}
                </ul>
              </details>
            )}
          </li>
        ))}
      </ul>
      {refusal !== "" && (
        <p role="status" class="outcome blocked">
          {refusal}
        </p>
      )}
      <Send sender={panel.latest.sender} label="Take back" working="Taking it back…" hidden />
      <p class="hint">Only who logged an entry can take it back or correct it. Nothing is deleted from the log.</p>
    </section>
  );
}
