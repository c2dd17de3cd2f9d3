/** How many plants it takes to see a difference that would matter, worked out before the trial begins. */

import type { JSX } from "preact";
import { useState } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import { sayNumber } from "../src/core/saying.ts";
import { type Needed, plantsNeeded } from "../src/core/trial-power.ts";
import { Button } from "./button.tsx";
import { TextField } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { pairingOf, spreadBefore, type TrialDraft, trialNumbers, trialPlants } from "./trial-draft.ts";
import { useStore } from "./use-store.ts";

interface Answer {
  /** What it was worked out for; another draft needs another answer. */
  readonly of: string;
  readonly needed: Needed | null;
  readonly sentence: string;
}

const DESIGN_WORDS = { Pairs: "within pairs", Together: "from plant to plant" } as const;

function sayNeeded({ found, runs }: Needed, difference: string, taking: number): string {
  if (found === null) {
    return `It would take more than 52 plants to see ${difference} in 8 of 10 trials. Look for a larger difference, measure for longer, or choose plants that are more alike.`;
  }
  const have =
    taking >= found.plants
      ? `${taking} take part: enough.`
      : `Only ${taking} take part: such a trial will often end in “cannot tell yet”.`;
  return `To see ${difference} in 8 of 10 trials takes ${found.plants} plants in all. ${have} (Simulated ${runs} times.)`;
}

function answer(draft: TrialDraft, loaded: Loaded, of: string): Answer {
  const { worth, spread } = trialNumbers(draft);
  if (worth.value === null)
    return { of, needed: null, sentence: worth.problem ?? "Type the difference that would matter." };
  if (spread.problem !== null) return { of, needed: null, sentence: spread.problem };
  const before = spread.value === null ? spreadBefore(draft, loaded) : null;
  const used = spread.value ?? before;
  if (used === null) {
    return {
      of,
      needed: null,
      sentence: `The log does not say how far these plants differed before. Type the spread: about how far two like plants are apart in ${draft.measure.toLowerCase()}.`,
    };
  }
  const needed = plantsNeeded({ design: draft.design, difference: worth.value, spread: used });
  const from =
    before === null
      ? ""
      : ` In as long a time before, the spread ${DESIGN_WORDS[draft.design]} was ${sayNumber(before)}.`;
  const taking =
    draft.design === "Pairs"
      ? 2 * pairingOf(draft, loaded.plants).pairs.length
      : trialPlants(draft, loaded.plants).length;
  const difference = `a difference of ${sayNumber(worth.value)} in ${draft.measure.toLowerCase()}`;
  return { of, needed, sentence: `${sayNeeded(needed, difference, taking)}${from}` };
}

export function TrialSize(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const draft = useStore(panel.trials.draft);
  const [given, give] = useState<Answer | null>(null);
  const numbers = trialNumbers(draft);
  const of = JSON.stringify([
    draft.design,
    draft.measure,
    draft.started,
    draft.ends,
    draft.plants,
    draft.worth,
    draft.spread,
  ]);
  const type = (change: Partial<TrialDraft>): void => panel.trials.draft.change((now) => ({ ...now, ...change }));
  return (
    <>
      <div class="pair">
        <TextField
          label="Difference that would matter"
          number
          value={draft.worth}
          problem={numbers.worth.problem}
          onType={(worth) => type({ worth })}
        />
        <TextField
          label="Spread, if you know it"
          number
          value={draft.spread}
          problem={numbers.spread.problem}
          onType={(spread) => type({ spread })}
        />
      </div>
      <Button look="second" press={() => give(answer(draft, loaded, of))}>
        How many plants does it take?
      </Button>
      <p role="status">{given !== null && given.of === of ? given.sentence : ""}</p>
    </>
  );
}
