/** Chooses a plant list of one's own: its tab, then which heading stands for what. */

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import { SelectField } from "./field.tsx";
import { columnsOf, examplesOf, headingRowElsewhere, listDoubts } from "./list-guess.ts";
import { OUR_COLUMNS, usableHeadings } from "./own-list.ts";
import type { Panel } from "./panel-state.ts";
import { PastCard } from "./past-card.tsx";
import { Send } from "./send.tsx";
import { count } from "./show.ts";
import { useStore } from "./use-store.ts";

export function OwnListForm(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { setup } = props.panel;
  const tabs = useStore(setup.tabs);
  const list = useStore(setup.list);
  const chosen = tabs?.find(({ tab }) => tab === list.tab);
  const own = useStore(setup.own);
  useStore(setup.past);
  const headings = usableHeadings(own?.headings ?? chosen?.headings ?? []);
  const columns = useMemo(() => (own === null ? [] : columnsOf(own)), [own]);
  const elsewhere = own === null ? null : headingRowElsewhere(own);
  const past = setup.pastNow();
  const holds = (theirs: string): string => {
    const column = columns.find(({ heading }) => heading === theirs);
    const examples = column === undefined ? "" : examplesOf(column);
    return examples === "" ? "" : `. Here: ${examples}.`;
  };
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
          {chosen !== undefined && (
            <Send
              sender={setup.ownSender}
              label="Look into this tab"
              working="Looking into this tab…"
              hidden={own !== null}
            />
          )}
          {elsewhere !== null && (
            <p class="notice">
              The headings rather stand in row {elsewhere}. Delete the rows above them or move them to row 1, then look
              into the tab again.
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
                  hint={`${help}${holds(list.columns[heading] ?? "")}`}
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
              {listDoubts(columns, list.columns).map((doubt) => (
                <p class="notice" key={doubt}>
                  {doubt}
                </p>
              ))}
              <Send sender={setup.listSender} label="Use this list" working="Saving the choice…" />
              {past !== null && <PastCard panel={props.panel} loaded={props.loaded} past={past} />}
            </>
          )}
        </>
      )}
    </>
  );
}
