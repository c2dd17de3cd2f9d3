/** "Treat a water": what a filter, a kettle or a day of standing does to each line, as estimates. */

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import { waterAdvice } from "../src/core/guidelines.ts";
import { TREATMENTS, treat } from "../src/core/treatments.ts";
import { SelectField } from "./field.tsx";
import { PURE, THIS_REPORT, type WaterChoice, waterAt } from "./water-blend.ts";
import { waterOptions } from "./water-blend-card.tsx";
import type { WaterDesk } from "./water-desk.ts";
import type { WaterDraft } from "./water-draft.ts";
import { WaterTable } from "./water-table.tsx";

export function TreatmentCard(props: {
  readonly desk: WaterDesk;
  readonly draft: WaterDraft;
  readonly choices: readonly WaterChoice[];
}): JSX.Element | null {
  const { desk, draft, choices } = props;
  const offered = choices.filter(({ key }) => key !== PURE);
  const water = waterAt(offered, draft.treated, THIS_REPORT);
  const treatment = TREATMENTS.find((one) => one === draft.treatment) ?? null;
  const after = useMemo(
    () => (water === null || treatment === null ? null : treat(water.lines, treatment)),
    [water, treatment],
  );
  if (water === null) return null;
  const choose = (change: Partial<WaterDraft>): void => desk.draft.change((now) => ({ ...now, ...change }));
  const options = [
    { value: "", words: "Choose" },
    ...TREATMENTS.map((one) => ({ value: one, words: one.charAt(0).toUpperCase() + one.slice(1) })),
  ];
  return (
    <section class="card" aria-labelledby="treat-title">
      <h3 id="treat-title">Treat a water</h3>
      <SelectField
        label="Water to treat"
        value={water.key}
        options={waterOptions(offered)}
        onType={(key) => choose({ treated: key })}
      />
      <SelectField
        label="Treatment"
        value={treatment ?? ""}
        options={options}
        onType={(key) => choose({ treatment: key })}
      />
      {after !== null && (
        <>
          <WaterTable
            caption="An estimate, until it is measured"
            waters={[
              { heading: "before", lines: treatment === "rain" ? {} : water.lines },
              { heading: "after", lines: after.lines },
            ].filter(({ heading }) => treatment !== "rain" || heading === "after")}
          />
          <ul class="sentences">
            {after.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
          {treatment !== "softener" && <p>{waterAdvice(after.lines).sentence}</p>}
          <p class="hint">Estimate: {after.source}.</p>
        </>
      )}
    </section>
  );
}
