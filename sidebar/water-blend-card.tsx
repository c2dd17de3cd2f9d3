/** "Blend two waters": which, in what share, and what each line becomes. */

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import { waterAdvice } from "../src/core/guidelines.ts";
import { sayList } from "../src/core/saying.ts";
import { Button } from "./button.tsx";
import { Field, type Option, SelectField } from "./field.tsx";
import { besides, blendOf, PURE, THIS_REPORT, type WaterChoice, waterAt } from "./water-blend.ts";
import { WaterFlags } from "./water-check.tsx";
import type { WaterDesk } from "./water-desk.ts";
import type { WaterDraft } from "./water-draft.ts";
import { WaterTable } from "./water-table.tsx";

export const waterOptions = (choices: readonly WaterChoice[]): Option[] =>
  choices.map(({ key, name }) => ({ value: key, words: name }));

export function BlendCard(props: {
  readonly desk: WaterDesk;
  readonly draft: WaterDraft;
  readonly choices: readonly WaterChoice[];
}): JSX.Element | null {
  const { desk, draft, choices } = props;
  const one = waterAt(choices, draft.one, THIS_REPORT);
  const other = waterAt(choices, draft.other, PURE);
  const share = draft.sharePercent / 100;
  const blend = useMemo(() => {
    if (one === null || other === null) return null;
    const [first, second] = [besides(one, other), besides(other, one)];
    return { first, second, ...blendOf(first, second, share) };
  }, [one, other, share]);
  if (one === null || other === null || blend === null) return null;
  const advised = waterAdvice(one.lines).share;
  const advisedPercent = advised === null ? null : Math.floor(advised * 20) * 5;
  const choose = (change: Partial<WaterDraft>): void => desk.draft.change((now) => ({ ...now, ...change }));
  return (
    <section class="card" aria-labelledby="blend-title">
      <h3 id="blend-title">Blend two waters</h3>
      <SelectField
        label="First water"
        value={one.key}
        options={waterOptions(choices)}
        onType={(key) => choose({ one: key })}
      />
      <SelectField
        label="Second water"
        value={other.key}
        options={waterOptions(choices)}
        onType={(key) => choose({ other: key })}
      />
      <Field
        label={`Share of the first: ${draft.sharePercent} %`}
        input={(marks) => (
          <input
            {...marks}
            type="range"
            min={0}
            max={100}
            step={5}
            value={draft.sharePercent}
            onInput={(event) => choose({ sharePercent: Number(event.currentTarget.value) })}
          />
        )}
      />
      {advisedPercent !== null && advisedPercent !== draft.sharePercent && other.key === PURE && (
        <Button look="link" press={() => choose({ sharePercent: advisedPercent })}>
          Use the advised share, {advisedPercent} %
        </Button>
      )}
      <WaterTable
        caption="What each line becomes"
        waters={[
          { heading: "first", lines: blend.first },
          { heading: "second", lines: blend.second },
          { heading: "blend", lines: blend.lines },
        ]}
      />
      {blend.unknown.length > 0 && (
        <p class="hint">
          Not known in the blend: {sayList(blend.unknown, "and")}, as not both waters state what it takes. Measure it.
        </p>
      )}
      <p class="hint">EC is only roughly in between. The pH is that just after pouring together, at 25 °C.</p>
      <p>{waterAdvice(blend.lines).sentence}</p>
      <WaterFlags water={blend.lines} />
    </section>
  );
}
