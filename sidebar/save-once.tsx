/** The end of a section that saves one thing to the shelf: its button, and once it is there, the way to another. */

import type { JSX } from "preact";
import { Button } from "./button.tsx";
import { Send } from "./send.tsx";
import type { Sender } from "./sending.ts";
import { useStore } from "./use-store.ts";

export function SaveOnce(props: {
  readonly sender: Sender;
  readonly saved: boolean;
  /** There is something to save. */
  readonly ready: boolean;
  readonly label: string;
  readonly working: string;
  /** "This feed is on the Feeds tab." */
  readonly there: string;
  readonly anotherLabel: string;
  readonly another: () => void;
}): JSX.Element {
  const { sender, saved, ready, label, working, there, anotherLabel, another } = props;
  const sent = useStore(sender.now);
  return (
    <>
      {saved && sent.state === "idle" && <p class="settled">{there}</p>}
      <Send sender={sender} label={label} working={working} primary hidden={saved || !ready} />
      {saved && (
        <Button look="second" press={another}>
          {anotherLabel}
        </Button>
      )}
    </>
  );
}
