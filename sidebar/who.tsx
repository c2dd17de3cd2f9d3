/** The name that stands under "Who": asked for once, shown from then on. */

import type { JSX } from "preact";
import { TextField } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { showDay } from "./show.ts";
import { useStore } from "./use-store.ts";

export function NameField(props: { readonly panel: Panel; readonly primary?: boolean }): JSX.Element {
  const { setup, loaded } = props.panel;
  const typed = useStore(setup.name);
  const all = useStore(loaded);
  return (
    <>
      <TextField
        label="Your name"
        hint="It stands under “Who” in every row you log."
        value={typed ?? all?.who ?? ""}
        offered={all?.people ?? []}
        onType={(text) => setup.name.set(text)}
      />
      <Send sender={setup.nameSender} label="Save name" working="Saving your name…" primary={props.primary ?? false} />
    </>
  );
}

/** In the sections that log: whose name goes into the row, or the question for it while none is known. */
export function WhoCard(props: { readonly panel: Panel }): JSX.Element | null {
  const all = useStore(props.panel.loaded);
  if (all === null) return null;
  if (all.who.trim() !== "") {
    return (
      <p class="hint">
        Logged as {all.who}. Today is {showDay(all.today)}.
      </p>
    );
  }
  return (
    <div class="card">
      <NameField panel={props.panel} />
    </div>
  );
}
