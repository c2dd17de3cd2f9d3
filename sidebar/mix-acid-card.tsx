/** The acid of a batch: which and how strong in, the dose in two steps out, with the cautions beside it. */

import type { JSX } from "preact";
import { ACID_CAUTION, BASE_CAUTION, FIRST_SHARE, standingSentence } from "../src/core/acid-dose.ts";
import { type Amounts, ELEMENT_NAMES, type ElementSymbol } from "../src/core/elements.ts";
import { sayNumber } from "../src/core/saying.ts";
import { ACID_OPTIONS, type AcidDraft } from "./acid-draft.ts";
import { SelectField, TextField } from "./field.tsx";
import type { AcidAnswer, MixAcid } from "./mix-acid.ts";
import { showDose } from "./show.ts";

/** "It adds 12 mg/L phosphorus: 43 in the batch, with the 31 above." */
function addsWords({ adds }: { readonly adds: Amounts }, reached: Amounts): string[] {
  return (Object.keys(adds) as ElementSymbol[]).map((symbol) => {
    const more = adds[symbol] ?? 0;
    const before = reached[symbol] ?? 0;
    return `It adds ${sayNumber(more)} mg/L ${ELEMENT_NAMES[symbol]}: ${sayNumber(before + more)} in all, with the ${sayNumber(before)} above.`;
  });
}

function Steps(props: { readonly result: MixAcid; readonly litres: number | null; readonly reached: Amounts }) {
  const { acid, dose, targetPH, standing, rest } = props.result;
  const litres = props.litres === null || props.litres === 0 ? 1 : props.litres;
  const forWhat = litres === 1 ? "for each litre" : `for ${sayNumber(litres)} L`;
  const say = (perLitre: number): string => showDose(perLitre * litres, dose.unit);
  return (
    <>
      <p>
        <strong>{say(dose.perLitre)}</strong> {forWhat} of {acid.name}
        {acid.percent === 100 ? "" : ` ${sayNumber(acid.percent)} %`}, to pH {sayNumber(targetPH)}.
      </p>
      <ol class="steps">
        <li>
          {acid.kind === "acid"
            ? `Add ${say(FIRST_SHARE * dose.perLitre)} to the water and stir well. Once the feeds are in, measure the pH.`
            : `Once the feeds are in, add ${say(FIRST_SHARE * dose.perLitre)}, stir well and measure the pH.`}
        </li>
        <li>
          {rest === null
            ? `Add what is still missing, about ${say((1 - FIRST_SHARE) * dose.perLitre)}, a little at a time. Type the pH you measured, and it is worked out anew.`
            : rest === 0
              ? "The pH is there already: add no more."
              : `From the pH you measured: ${say(rest)} more, a little at a time.`}
        </li>
      </ol>
      {addsWords(dose, props.reached).map((words) => (
        <p key={words}>{words}</p>
      ))}
      <p>{standingSentence(dose.state.pH, standing.pH)}</p>
    </>
  );
}

export function AcidCard(props: {
  readonly draft: AcidDraft;
  readonly answer: AcidAnswer;
  readonly litres: number | null;
  readonly reached: Amounts;
  readonly onType: (change: Partial<AcidDraft>) => void;
}): JSX.Element {
  const { draft, answer, litres, reached, onType } = props;
  const { result, problem } = answer;
  const raises = draft.acid.startsWith("potassium");
  return (
    <>
      <SelectField
        label="Acid or base to add"
        value={draft.acid}
        options={ACID_OPTIONS}
        onType={(acid) => onType({ acid, strength: "", measuredPH: "" })}
      />
      {draft.acid !== "" && (
        <>
          <div class="pair">
            <TextField
              label="Strength, % w/w"
              number
              value={draft.strength}
              problem={answer.strength.problem}
              onType={(strength) => onType({ strength })}
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
          {result !== null && (
            <>
              <Steps result={result} litres={litres} reached={reached} />
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
