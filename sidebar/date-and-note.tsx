/** The day of a record and a note on it, side by side; the day is the sheet's today until another is typed. */

import type { JSX } from "preact";
import { TextField } from "./field.tsx";

interface Dated {
  /** ISO day; "" for today, "none" when the field was emptied. */
  readonly day: string;
  readonly note: string;
}

export function DateAndNote(props: {
  readonly draft: Dated;
  /** ISO day. */
  readonly today: string;
  readonly type: (change: Partial<Dated>) => void;
}): JSX.Element {
  const { draft, today, type } = props;
  return (
    <div class="pair">
      <TextField
        label="Date"
        kind="date"
        value={draft.day === "" ? today : draft.day}
        onType={(day) => type({ day: day === today ? "" : day === "" ? "none" : day })}
      />
      <TextField label="Note" value={draft.note} onType={(note) => type({ note })} />
    </div>
  );
}
