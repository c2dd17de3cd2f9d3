/** Shows what needs the further records of the sheet, once they are read; asks for them when it first appears. */

import type { JSX } from "preact";
import { useEffect } from "preact/hooks";
import type { Records } from "../src/app/contract.ts";
import { Button } from "./button.tsx";
import type { Panel } from "./panel-state.ts";
import { useStore } from "./use-store.ts";

export function WithRecords(props: {
  readonly panel: Panel;
  readonly children: (records: Records) => JSX.Element | null;
}): JSX.Element | null {
  const { records, recordsLoading } = props.panel;
  const read = useStore(records);
  const now = useStore(recordsLoading.now);
  const { press } = recordsLoading;
  useEffect(() => {
    if (records.get() === null) press();
  }, [records, press]);
  if (read !== null) return props.children(read);
  if (now.state !== "failed") return <p role="status">Reading the records…</p>;
  return (
    <>
      <p role="status" class="outcome failed">
        {now.sentence}
      </p>
      <Button look="second" press={press}>
        Retry
      </Button>
    </>
  );
}
