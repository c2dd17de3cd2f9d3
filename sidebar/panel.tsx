/** The panel: reads the sheet, then shows the list of sections and the one that is chosen. */

import type { JSX } from "preact";
import { useRef } from "preact/hooks";
import { BatchCardView } from "./batch-card-view.tsx";
import { Button } from "./button.tsx";
import type { Panel } from "./panel-state.ts";
import { FIRST, SECTION_GROUPS, SECTIONS } from "./sections.ts";
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
        <Button look="primary" press={loading.press}>
          Retry
        </Button>
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
      <Button look="link" busy={busy} press={loading.press}>
        Read the sheet again
      </Button>
      <p role="status" class={now.state === "failed" ? "outcome failed" : "outcome"}>
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
  const title = useRef<HTMLHeadingElement>(null);
  const card = useStore(panel.card);
  if (loaded === null) return <Reading panel={panel} />;
  if (card !== null) {
    return <BatchCardView card={card} close={() => panel.card.set(null)} print={() => window.print()} />;
  }
  const section = SECTIONS.find(({ key }) => key === chosen) ?? FIRST;
  return (
    <>
      <header>
        <h1 class="unseen">Stillroot</h1>
        <nav aria-label="Sections">
          {SECTION_GROUPS.map(({ name, sections }) => (
            <ul key={name} aria-label={name}>
              {sections.map(({ key, title }) => (
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
          ))}
        </nav>
      </header>
      <main aria-labelledby="section-title">
        {loaded.problems.length > 0 && section.key !== "setup" && (
          <p class="aside">
            {count(loaded.problems.length, "thing")} in the sheet {loaded.problems.length === 1 ? "needs" : "need"} a
            look.{" "}
            <Button
              look="link"
              press={() => {
                panel.section.set("setup");
                title.current?.focus();
              }}
            >
              Show
            </Button>
          </p>
        )}
        <h2 id="section-title" ref={title} tabIndex={-1}>
          {section.title}
        </h2>
        <section.Body key={section.key} panel={panel} loaded={loaded} />
      </main>
      <Again panel={panel} />
    </>
  );
}
