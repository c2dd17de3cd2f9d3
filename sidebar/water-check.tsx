/** What a water is good for: advice first, then whether the report adds up, its classes and its flags. */

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import { checkWater } from "../src/core/water-check.ts";
import type { WaterLines } from "../src/core/water-lines.ts";
import { alkalinityWords, balanceWords, ecWords, hardnessWords } from "./water-judged.ts";

export function WaterFlags(props: { readonly water: WaterLines }): JSX.Element | null {
  const { flags } = useMemo(() => checkWater(props.water), [props.water]);
  if (flags.length === 0) return <p>No guideline flags a line of it.</p>;
  return (
    <ul class="sentences">
      {flags.map(({ line, words, source }) => (
        <li key={`${line}: ${words}`}>
          {words} <span class="source">{source}</span>
        </li>
      ))}
    </ul>
  );
}

export function WaterJudgement(props: { readonly water: WaterLines }): JSX.Element {
  const { water } = props;
  const check = useMemo(() => checkWater(water), [water]);
  return (
    <>
      <p class={check.advice.advice === "use" ? "settled" : "notice"}>{check.advice.sentence}</p>
      <dl class="facts">
        <dt>Charge balance</dt>
        <dd>{balanceWords(water, check)}</dd>
        <dt>EC</dt>
        <dd>{ecWords(water, check)}</dd>
        <dt>Hardness</dt>
        <dd>{hardnessWords(check)}</dd>
        <dt>Alkalinity</dt>
        <dd>{alkalinityWords(water, check)}</dd>
      </dl>
      {check.doubts.length > 0 && (
        <>
          <h4>Look again at</h4>
          <ul class="sentences">
            {check.doubts.map((doubt) => (
              <li key={doubt}>{doubt}</li>
            ))}
          </ul>
        </>
      )}
      <h4>Guidelines</h4>
      <WaterFlags water={water} />
      <p class="hint">The limits of FAO 29 were set for fields; a pot without a drain collects what it is given.</p>
    </>
  );
}
