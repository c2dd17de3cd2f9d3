/** Takes all records out of the sheet as one zip, and brings such a zip back in, listing first what it would write. */

import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { type MadeZip, rowsToWrite } from "./export-desk.ts";
import { Field } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { count } from "./show.ts";
import { useStore } from "./use-store.ts";

function SaveLink(props: { readonly zip: MadeZip }): JSX.Element | null {
  const { name, bytes } = props.zip;
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: "application/zip" }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [bytes]);
  if (address === null) return null;
  return (
    <p>
      <a class="save" href={address} download={name}>
        Save {name}
      </a>{" "}
      ({Math.max(1, Math.round(bytes.length / 1024))} kB)
    </p>
  );
}

export function ExportCard(props: { readonly panel: Panel }): JSX.Element {
  const { job, zip } = props.panel.exporting;
  const made = useStore(zip);
  const progress = useStore(job.progress);
  return (
    <>
      <p>
        Every tab of records becomes a CSV file, all in one zip. A text that could run as a formula elsewhere gets an
        apostrophe in front.
      </p>
      <Send sender={job} label="Export all records" working={`Reading the sheet… ${progress}`.trim()} />
      {made !== null && <SaveLink zip={made} />}
    </>
  );
}

export function ImportCard(props: { readonly panel: Panel }): JSX.Element {
  const { look, plan, write, withSettings, choose } = props.panel.importing;
  const planned = useStore(plan);
  const settingsToo = useStore(withSettings);
  const looking = useStore(look.progress);
  const writing = useStore(write.progress);
  const settings = planned?.find(({ tab }) => tab === "Settings");
  return (
    <>
      <p>
        Brings the records of such a zip into a sheet that is set up. You see first what would be written; rows that are
        there already are never written twice.
      </p>
      <Field
        label="Zip with the records"
        input={(marks) => (
          <input
            {...marks}
            type="file"
            accept=".zip,application/zip"
            // So that the same file can be chosen once more, after a heading was added say.
            onClick={(event) => {
              event.currentTarget.value = "";
            }}
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              file?.arrayBuffer().then((buffer) => choose(new Uint8Array(buffer)));
            }}
          />
        )}
      />
      <Send sender={look} label="Look again" working={`Comparing with the sheet… ${looking}`.trim()} hidden={true} />
      {planned !== null && (
        <>
          <ul class="sentences">
            {planned
              .filter(({ tab }) => tab !== "Settings")
              .map(({ tab, rows, already, notes }) => (
                <li key={tab}>
                  <strong>{tab}</strong>:{" "}
                  {rows.length === 0 ? "nothing to write" : `${count(rows.length, "row")} to write`}
                  {already > 0 && `, ${already} there already`}.{" "}
                  {notes.map((note) => (
                    <span key={note}>{note} </span>
                  ))}
                </li>
              ))}
          </ul>
          {settings !== undefined && settings.rows.length > 0 && (
            <label class="tick">
              <input
                type="checkbox"
                checked={settingsToo}
                onChange={(event) => withSettings.set(event.currentTarget.checked)}
              />
              <span>
                Change {count(settings.rows.length, "setting")} to what the file says
                <small>{settings.rows.map(([name]) => String(name)).join(", ")}</small>
              </span>
            </label>
          )}
        </>
      )}
      <Send
        sender={write}
        label="Write these rows"
        working={`Writing… ${writing}`.trim()}
        hidden={planned === null || rowsToWrite(planned, settingsToo).length === 0}
      />
    </>
  );
}
