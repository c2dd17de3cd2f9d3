/** Has the boards made: tabs with one formula each. */

import type { JSX } from "preact";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { createSender, type Sender } from "./sending.ts";
import type { PanelWorld } from "./world.ts";

export function createBoardsSender(world: PanelWorld): Sender {
  return createSender<"make boards">(world.ask, world.after, {
    make: () => ({ ask: "make boards" }),
    settle: ({ sentence }) => ({ sentence }),
  });
}

export function BoardsCard(props: { readonly panel: Panel }): JSX.Element {
  return (
    <>
      <p>
        A board is a tab with one formula, so it follows the log by itself. “Root board” lists the plants by how long
        their roots have been left alone, “Due board” what is to be done and why. You may rename, move or hide them;
        making them again adds only what is missing.
      </p>
      <Send sender={props.panel.boards} label="Make the boards" working="Making the boards…" />
    </>
  );
}
