/** Chooses a plant list of one's own: its tab, then which heading stands for what. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { SelectField } from "./field.tsx";
import { OUR_COLUMNS, usableHeadings } from "./own-list.ts";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { count } from "./show.ts";
import { useStore } from "./use-store.ts";

export function OwnListForm(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { setup } = props.panel;
  const tabs = useStore(setup.tabs);
  const list = useStore(setup.list);
  const chosen = tabs?.find(({ tab }) => tab === list.tab);
  const headings = usableHeadings(chosen?.headings ?? []);
  return (
    <>
      <p>
        {props.loaded.plantTab === ""
          ? "No plant list was found."
          : `Plants come from “${props.loaded.plantTab}”: ${count(props.loaded.plants.length, "plant")}.`}{" "}
        Any other tab with one plant a row will do; it is only read, never changed.
      </p>
      <Send
        sender={setup.tabsSender}
        label={tabs === null ? "Choose another tab" : "Look at the tabs again"}
        working="Looking at the tabs…"
      />
      {tabs !== null && (
        <>
          <SelectField
            label="Tab with your plants"
            value={chosen?.tab ?? ""}
            options={[
              { value: "", words: "Choose" },
              ...tabs.map(({ tab, rows }) => ({ value: tab, words: `${tab} (${count(rows, "row")})` })),
            ]}
            onType={setup.chooseTab}
          />
          {chosen !== undefined && headings.length === 0 && (
            <p class="wrong">
              “{chosen.tab}” has no headings in its first row. Write some there, then choose it again.
            </p>
          )}
          {headings.length > 0 && (
            <>
              <p class="hint">
                Which of your columns holds what? A first guess is filled in; correct it where it is wrong.
              </p>
              {OUR_COLUMNS.map(({ heading, help }) => (
                <SelectField
                  key={heading}
                  label={heading}
                  hint={help}
                  value={list.columns[heading] ?? ""}
                  options={[
                    { value: "", words: "Not there" },
                    ...headings.map((theirs) => ({ value: theirs, words: theirs })),
                  ]}
                  onType={(theirs) =>
                    setup.list.change((now) => ({ ...now, columns: { ...now.columns, [heading]: theirs } }))
                  }
                />
              ))}
              <Send sender={setup.listSender} label="Use this list" working="Saving the choice…" />
            </>
          )}
        </>
      )}
    </>
  );
}
