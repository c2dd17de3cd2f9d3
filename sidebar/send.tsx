/** A button that sends, with its outcome said in words beside it. */

import type { JSX } from "preact";
import type { Sender, Sending } from "./sending.ts";
import { useStore } from "./use-store.ts";

function outcome(now: Sending, working: string): string {
  switch (now.state) {
    case "idle":
      return "";
    case "under way":
      return now.slow ? `${working} The sheet is slow today, please wait.` : working;
    case "blocked":
    case "done":
      return now.sentence;
    case "failed":
      return `${now.sentence} What you typed is still here.`;
  }
}

export function Send(props: {
  readonly sender: Sender;
  readonly label: string;
  /** What is said while it runs: "Saving the batch…". */
  readonly working: string;
  /** The one main button of its section. */
  readonly primary?: boolean;
  /** Leaves the outcome on show and takes the button away. */
  readonly hidden?: boolean;
}): JSX.Element {
  const now = useStore(props.sender.now);
  const busy = now.state === "under way";
  return (
    <div class="send">
      {props.hidden ? null : (
        <button
          type="button"
          class={props.primary ? "primary" : "second"}
          // Not `disabled`: that would take the focus away from someone on the keyboard.
          aria-disabled={busy ? "true" : undefined}
          // The second half of a double click is no second press.
          onClick={(event) => {
            if (event.detail <= 1) props.sender.press();
          }}
        >
          {now.state === "failed" ? "Try again" : props.label}
        </button>
      )}
      <p role="status" class={`outcome ${now.state.replace(" ", "-")}`}>
        {outcome(now, props.working)}
      </p>
    </div>
  );
}
