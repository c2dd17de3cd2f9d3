/** The panel: reads the sheet, then shows the list of sections and the one that is chosen. */

import type { JSX } from "preact";
import type { Panel } from "./panel-state.ts";
import { SECTIONS } from "./sections.ts";
import { count } from "./show.ts";
import { useStore } from "./use-store.ts";

function Reading(props: { readonly panel: Panel }): JSX.Element {
  const { loading } = props.panel;
  const now = useStore(loading.now);
  return (
    <main class="first">
      <h1>Stillroot</h1>
      <p role="status" class={`outcome ${now.state.replace(" ", "-")}`}>
        {now.state === "failed"
          ? now.sentence
          : now.state === "under way" && now.slow
            ? "Still reading the sheet. It is slow today, please wait."
            : "Reading the sheet…"}
      </p>
      {now.state === "failed" && (
        <button type="button" class="primary" onClick={loading.press}>
          Retry
        </button>
      )}
    </main>
  );
}

function Again(props: { readonly panel: Panel }): JSX.Element {
  const { loading } = props.panel;
  const now = useStore(loading.now);
  const busy = now.state === "under way";
  return (
    <footer>
      <button type="button" class="link" aria-disabled={busy ? "true" : undefined} onClick={loading.press}>
        Read the sheet again
      </button>
      <p role="status" class={`outcome ${now.state.replace(" ", "-")}`}>
        {busy
          ? "Reading the sheet…"
          : now.state === "failed"
            ? `${now.sentence} The panel still shows what it read before.`
            : ""}
      </p>
    </footer>
  );
}

export function PanelView(props: { readonly panel: Panel }): JSX.Element {
  const { panel } = props;
  const loaded = useStore(panel.loaded);
  const chosen = useStore(panel.section);
  if (loaded === null) return <Reading panel={panel} />;
  const section = SECTIONS.find(({ key }) => key === chosen) ?? SECTIONS[0];
  return (
    <>
      <header>
        <h1>Stillroot</h1>
        <nav aria-label="Sections">
          <ul>
            {SECTIONS.map(({ key, title }) => (
              <li key={key}>
                <button
                  type="button"
                  aria-current={key === section.key ? "page" : undefined}
                  onClick={() => panel.section.set(key)}
                >
                  {title}
                </button>
              </li>
            ))}
          </ul>
        </nav>
      </header>
      <main aria-labelledby="section-title">
        {loaded.problems.length > 0 && section.key !== "setup" && (
          <p class="notice">
            {count(loaded.problems.length, "thing")} in the sheet {loaded.problems.length === 1 ? "needs" : "need"} a
            look.{" "}
            <button type="button" class="link" onClick={() => panel.section.set("setup")}>
              Show
            </button>
          </p>
        )}
        <h2 id="section-title">{section.title}</h2>
        <section.Body key={section.key} panel={panel} loaded={loaded} />
      </main>
      <Again panel={panel} />
    </>
  );
}
