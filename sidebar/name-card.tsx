/** Asks once for the name that stands under "Who", where none is known yet. */

import type { JSX } from "preact";
import { TextField } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { useStore } from "./use-store.ts";

export function NameField(props: { readonly panel: Panel; readonly primary?: boolean }): JSX.Element {
  const { setup, loaded } = props.panel;
  const typed = useStore(setup.name);
  const all = useStore(loaded);
  return (
    <>
      <TextField
        label="Your name in this sheet"
        hint="It stands under “Who” in every row you log."
        value={typed ?? all?.who ?? ""}
        offered={all?.people ?? []}
        onType={(text) => setup.name.set(text)}
      />
      <Send sender={setup.nameSender} label="Save name" working="Saving your name…" primary={props.primary ?? false} />
    </>
  );
}

/** Shown in the sections that log, until a name is known. */
export function NameCard(props: { readonly panel: Panel }): JSX.Element | null {
  const all = useStore(props.panel.loaded);
  if (all === null || all.who.trim() !== "") return null;
  return (
    <div class="card">
      <NameField panel={props.panel} />
    </div>
  );
}
