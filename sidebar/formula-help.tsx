/** Help on the custom functions; every text is shown as text. */

import type { JSX } from "preact";
import { TextField } from "./field.tsx";
import { type FunctionHelp, findFunctions } from "./formulas.ts";
import type { Panel } from "./panel-state.ts";
import { count } from "./show.ts";
import { useStore } from "./use-store.ts";

function OneFunction(props: { readonly entry: FunctionHelp }): JSX.Element {
  const { name, summary, call, args, result, examples } = props.entry;
  return (
    <details>
      <summary>
        <code>{name}</code>
        <span>{summary}</span>
      </summary>
      <p>
        <code class="call">{call}</code>
      </p>
      <dl>
        {args.map((arg) => (
          <div key={arg.name}>
            <dt>
              <code>{arg.name}</code>
              {arg.optional ? " (optional)" : ""}
            </dt>
            <dd>{arg.help}</dd>
          </div>
        ))}
        <div>
          <dt>Gives</dt>
          <dd>{result}</dd>
        </div>
      </dl>
      {examples.length > 0 && (
        <>
          <p class="title">{examples.length === 1 ? "Example" : "Examples"}</p>
          <ul class="examples">
            {examples.map((example) => (
              <li key={example}>
                <code>{example}</code>
              </li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}

export function FormulaHelp(props: { readonly panel: Panel }): JSX.Element {
  const { formulas } = props.panel.setup;
  const find = useStore(props.panel.setup.find);
  const found = findFunctions(formulas, find);
  if (formulas.length === 0) {
    return <p>The help on the formulas is missing from this page. The formulas work all the same.</p>;
  }
  return (
    <>
      <TextField
        label="Find a formula"
        kind="search"
        value={find}
        onType={(text) => props.panel.setup.find.set(text)}
      />
      <p class="hint" role="status">
        {found.length === 0 ? "No formula holds these words." : count(found.length, "formula")}
      </p>
      {found.map((entry) => (
        <OneFunction key={entry.name} entry={entry} />
      ))}
    </>
  );
}
