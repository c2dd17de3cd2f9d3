/** "Set up": one's name, one's own plant list, what was found wrong in the sheet, and help on the formulas. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { FormulaHelp } from "./formula-help.tsx";
import { ToolsForm } from "./mix-tools.tsx";
import { OwnListForm } from "./own-list-form.tsx";
import type { Panel } from "./panel-state.ts";
import { NameField } from "./who.tsx";

export function SetupSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  return (
    <>
      <h3>What needs a look</h3>
      {loaded.problems.length === 0 ? (
        <p>Nothing: every tab was found and every row can be used.</p>
      ) : (
        <ul class="sentences">
          {loaded.problems.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      <h3>Name in the log</h3>
      <NameField panel={panel} primary={loaded.who.trim() === ""} />
      <h3>Scale, syringe and spoons</h3>
      <ToolsForm panel={panel} loaded={loaded} />
      <h3>Your plant list</h3>
      <OwnListForm panel={panel} loaded={loaded} />
      <h3>Formulas</h3>
      <FormulaHelp panel={panel} />
    </>
  );
}
