/** "Sheet": tabs that the add-on makes, and all records out of the sheet and back in. */

import type { JSX } from "preact";
import { BoardsCard } from "./boards-card.tsx";
import { ExportCard, ImportCard } from "./export-card.tsx";
import type { Panel } from "./panel-state.ts";

export function SheetSection(props: { readonly panel: Panel }): JSX.Element {
  return (
    <>
      <h3>Boards</h3>
      <BoardsCard panel={props.panel} />
      <h3>Take a copy</h3>
      <ExportCard panel={props.panel} />
      <h3>Bring a copy back</h3>
      <ImportCard panel={props.panel} />
    </>
  );
}
