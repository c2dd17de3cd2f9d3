/** What the batch is measured with: the scale, the syringe, spoons; and the form that keeps them in Settings. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { type StockOf, stocksText } from "../src/core/tool-text.ts";
import type { BatchDraft } from "./batch-draft.ts";
import { Button } from "./button.tsx";
import { type Option, SelectField, TextField } from "./field.tsx";
import type { MeasureBy } from "./measuring-ways.ts";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { readTools, type ToolKey, toolProblems, toolTexts, toolWords } from "./tools.ts";
import { useStore } from "./use-store.ts";

const WAYS: readonly (Option & { readonly value: MeasureBy })[] = [
  { value: "scale", words: "Scale and syringe" },
  { value: "spoons", words: "Level spoons and syringe" },
  { value: "any", words: "Any amount, not rounded" },
];

/** Fields of the tools, as Settings hold them; also shown under Set up. */
export function ToolsForm(props: {
  readonly panel: Panel;
  readonly loaded: Loaded;
  /** Shown above the button. */
  readonly more?: JSX.Element | null;
}): JSX.Element {
  const desk = props.panel.tools;
  const typed = useStore(desk.draft);
  const texts = { ...toolTexts(props.loaded.settings), ...typed };
  const problems = toolProblems(texts);
  const field = (key: ToolKey, label: string, hint?: string): JSX.Element => (
    <TextField
      label={label}
      hint={hint}
      number={key !== "spoons" && key !== "stocks"}
      value={texts[key]}
      problem={problems[key]}
      onType={(text) => desk.draft.change((now) => ({ ...now, [key]: text }))}
    />
  );
  return (
    <>
      <div class="pair">
        {field("scaleStep", "Scale step, g")}
        {field("scaleMost", "Scale takes, g")}
      </div>
      <div class="pair">
        {field("syringeStep", "Syringe step, mL")}
        {field("syringeMost", "Syringe holds, mL")}
      </div>
      {field(
        "spoons",
        "Level spoons",
        "Weigh a level spoon of each feed once: Epsom salt: 1.1 g, 4.9 g; Calcium nitrate: 1.3 g",
      )}
      {field("mostSpoonfuls", "Spoonfuls you would count, at most")}
      {field("stocks", "Stock solutions that stand ready", "Monopotassium phosphate: 5 g in 100 mL")}
      {props.more}
      <Send sender={desk.sender} label="Keep these tools" working="Writing into Settings…" />
    </>
  );
}

/** Stocks of this batch that Settings do not name yet. */
function newStocks(draft: BatchDraft, known: readonly StockOf[]): readonly StockOf[] {
  const text = (stock: StockOf): string => stocksText([stock]);
  const all = new Set(known.map(text));
  return draft.stocks.filter((stock) => !all.has(text(stock)));
}

export function MixTools(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const draft = useStore(panel.batch.draft);
  const tools = readTools(loaded.settings);
  const unkept = newStocks(draft, tools.stocks);
  return (
    <details class="quiet">
      <summary>
        Measured with:{" "}
        {draft.measureBy === "scale" ? toolWords(tools) : WAYS.find(({ value }) => value === draft.measureBy)?.words}
      </summary>
      <SelectField
        label="Measure with"
        value={draft.measureBy}
        options={WAYS}
        onType={(text) => {
          const by = WAYS.find(({ value }) => value === text)?.value ?? "scale";
          panel.batch.draft.change((now) => ({ ...now, measureBy: by }));
        }}
      />
      <ToolsForm
        panel={panel}
        loaded={loaded}
        more={
          unkept.length === 0 ? null : (
            <Button
              look="link"
              press={() => {
                const kept = tools.stocks.filter(({ feed }) => !unkept.some((one) => one.feed === feed));
                panel.tools.draft.change((now) => ({ ...now, stocks: stocksText([...kept, ...unkept]) }));
              }}
            >
              Add the stock of this batch to the list
            </Button>
          )
        }
      />
    </details>
  );
}
