/** A button that sends, with its outcome said in words beside it. */

import type { JSX } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";
import { Button } from "./button.tsx";
import type { Sender, Sending } from "./sending.ts";
import { useStore } from "./use-store.ts";

function outcome(now: Sending, working: string): string {
  switch (now.state) {
    case "idle":
      return "";
    case "under way":
      return now.slow ? `${working} The sheet is slow just now, please wait.` : working;
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
  const hidden = props.hidden === true;
  const button = useRef<HTMLButtonElement>(null);
  const words = useRef<HTMLParagraphElement>(null);
  const drawn = useRef(hidden);
  useLayoutEffect(() => {
    if (drawn.current === hidden) return;
    drawn.current = hidden;
    // The button that had the focus is gone: go on where its outcome is, or where the button came back.
    if (document.activeElement === document.body) (hidden ? words.current : button.current)?.focus();
  }, [hidden]);
  return (
    <div class="send">
      {hidden ? null : (
        <Button
          at={button}
          look={props.primary ? "primary" : "second"}
          busy={now.state === "under way"}
          press={props.sender.press}
        >
          {now.state === "failed" ? "Try again" : props.label}
        </Button>
      )}
      <p role="status" ref={words} tabIndex={-1} class={`outcome ${now.state.replace(" ", "-")}`}>
        {outcome(now, props.working)}
        {now.state === "done" && now.notes.map((note) => <span key={note}>{note}</span>)}
      </p>
    </div>
  );
}
