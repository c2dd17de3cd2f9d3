/** The acid of a batch: which and how strong in, the dose in two steps out, with the cautions beside it. */

import type { JSX } from "preact";
import { ACID_CAUTION, BASE_CAUTION, standingSentence } from "../src/core/acid-dose.ts";
import { thinSteps, thinWords } from "../src/core/acid-measure.ts";
import { type Amounts, ELEMENT_NAMES, type ElementSymbol } from "../src/core/elements.ts";
import { sayGiven, sayNumber } from "../src/core/saying.ts";
import { ACID_OPTIONS, type AcidDraft } from "./acid-draft.ts";
import type { AcidPlan } from "./acid-plan.ts";
import { Button } from "./button.tsx";
import { SelectField, TextField } from "./field.tsx";
import { capital } from "./gauge.ts";
import type { AcidAnswer, MixAcid } from "./mix-acid.ts";

/** "It adds 12 mg/L phosphorus: 43 in the batch, with the 31 above." */
function addsWords({ adds }: { readonly adds: Amounts }, reached: Amounts): string[] {
  return (Object.keys(adds) as ElementSymbol[]).map((symbol) => {
    const more = adds[symbol] ?? 0;
    const before = reached[symbol] ?? 0;
    return `It adds ${sayNumber(more)} mg/L ${ELEMENT_NAMES[symbol]}: ${sayNumber(before + more)} in all, with the ${sayNumber(before)} above.`;
  });
}

function Thinning(props: { readonly plan: AcidPlan; readonly onType: (change: Partial<AcidDraft>) => void }) {
  const { plan, onType } = props;
  const { tooSmall, thin, task } = plan;
  if (thin !== null) {
    return (
      <details class="quiet">
        <summary>Thinned: {thinWords(plan.name, thin)}</summary>
        <ol class="steps">
          {thinSteps(task, thin).map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
        <Button look="link" press={() => onType({ thin: null })}>
          Measure it as it is instead
        </Button>
      </details>
    );
  }
  if (tooSmall === null) return null;
  const { why, offer, offerMl } = tooSmall;
  return (
    <div class="notice" data-part="too little acid">
      <p>
        {why}{" "}
        {offer === null
          ? "Mix a larger batch, take a weaker one, or use a finer syringe."
          : `Thin it first: ${sayGiven(offer.solute)} ${offer.unit} in ${offer.bottleMl} mL of water. This batch then takes ${sayGiven(offerMl ?? 0)} mL of that.`}
      </p>
      {offer !== null && (
        <>
          {task.kind === "acid" && <p>Acid into water, never water into acid.</p>}
          <Button look="second" press={() => onType({ thin: offer })}>
            {task.kind === "acid" ? "Dose the thinned acid" : "Dose the thinned base"}
          </Button>
        </>
      )}
    </div>
  );
}

function Dose(props: {
  readonly result: MixAcid;
  readonly plan: AcidPlan;
  readonly litres: number | null;
  readonly reached: Amounts;
  readonly onType: (change: Partial<AcidDraft>) => void;
}) {
  const { result, plan, reached, onType } = props;
  const { dose, targetPH, standing, rest } = result;
  const litres = props.litres === null || props.litres === 0 ? 1 : props.litres;
  const forWhat = litres === 1 ? "for each litre" : `for ${sayNumber(litres)} L`;
  return (
    <>
      <p>
        <strong>{capital(plan.whole)}</strong> {forWhat}
        {plan.thin === null ? ` of ${plan.name}` : ""}, to pH {sayNumber(targetPH)}. When it goes in stands in the steps
        below.
      </p>
      <Thinning plan={plan} onType={onType} />
      {rest !== null && (
        <p>
          {rest === 0
            ? "The pH is there already: add no more."
            : `From the pH you measured: ${plan.say(rest * litres)} more, a little at a time.`}
        </p>
      )}
      {addsWords(dose, reached).map((words) => (
        <p key={words}>{words}</p>
      ))}
      <p>{standingSentence(dose.state.pH, standing.pH)}</p>
    </>
  );
}

export function AcidCard(props: {
  readonly draft: AcidDraft;
  readonly answer: AcidAnswer;
  readonly plan: AcidPlan | null;
  readonly litres: number | null;
  readonly reached: Amounts;
  readonly onType: (change: Partial<AcidDraft>) => void;
}): JSX.Element {
  const { draft, answer, plan, litres, reached, onType } = props;
  const { result, problem } = answer;
  const raises = draft.acid.startsWith("potassium");
  return (
    <>
      <SelectField
        label="Acid or base to add"
        value={draft.acid}
        options={ACID_OPTIONS}
        onType={(acid) => onType({ acid, strength: "", measuredPH: "", thin: null })}
      />
      {draft.acid !== "" && (
        <>
          <div class="pair">
            <TextField
              label="Strength, % w/w"
              number
              value={draft.strength}
              problem={answer.strength.problem}
              onType={(strength) => onType({ strength, thin: null })}
            />
            <TextField
              label="pH to reach"
              number
              value={draft.targetPH}
              problem={answer.target.problem}
              onType={(targetPH) => onType({ targetPH })}
            />
          </div>
          {problem !== null && <p class="wrong">{problem}</p>}
          {result !== null && plan !== null && (
            <>
              <Dose result={result} plan={plan} litres={litres} reached={reached} onType={onType} />
              <TextField
                label="pH after the first part"
                number
                value={draft.measuredPH}
                problem={answer.measured.problem}
                onType={(measuredPH) => onType({ measuredPH })}
              />
            </>
          )}
          <p class="caution">{raises ? BASE_CAUTION : ACID_CAUTION}</p>
        </>
      )}
    </>
  );
}
