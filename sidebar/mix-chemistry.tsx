/** The batch as a solution: the EC a meter should show, pH now and later, acid to add, what may fall out. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { ACID_CAUTION, BASE_CAUTION, standingSentence } from "../src/core/acid-dose.ts";
import { conductivity } from "../src/core/conductivity.ts";
import { isBadInput } from "../src/core/errors.ts";
import { tdsFromEc } from "../src/core/meter.ts";
import type { Risk } from "../src/core/precipitation.ts";
import { sayNumber } from "../src/core/saying.ts";
import { acidPlan } from "./acid-plan.ts";
import type { Worked } from "./batch.ts";
import type { Shelf } from "./batch-shelf.ts";
import { capital } from "./gauge.ts";
import { meterOf } from "./meter.ts";
import { type AcidAnswer, mixAcid } from "./mix-acid.ts";
import { AcidCard } from "./mix-acid-card.tsx";
import { MixBottles } from "./mix-bottles.tsx";
import { type MixChemistry, mixChemistry, risksNowAndLater } from "./mix-state.ts";
import { MixSteps } from "./mix-steps.tsx";
import type { Panel } from "./panel-state.ts";
import { acidForVolume, orderAcidOf, type PastBatch } from "./past-batch.ts";
import { useStore } from "./use-store.ts";

/** "1.12 ± 0.05 mS/cm"; and in ppm where the meter shows ppm. */
export function ecBandWords(ecMsCm: number, share: number, meterScale: number | null): string {
  const band = `${ecMsCm.toFixed(2)} ± ${(ecMsCm * share).toFixed(2)} mS/cm at 25 °C`;
  if (meterScale === null) return `${band}.`;
  const [ppm, off] = [ecMsCm, ecMsCm * share].map((ec) => Math.round(tdsFromEc(ec, meterScale)));
  return `${band}. Your meter, scale ${meterScale}, should show ${ppm} ± ${off} ppm.`;
}

function Risks(props: { readonly title: string; readonly risks: readonly Risk[] }): JSX.Element | null {
  if (props.risks.length === 0) return null;
  return (
    <>
      <h4>{props.title}</h4>
      <ul class="sentences">
        {props.risks.map(({ solid, words }) => (
          <li key={solid}>{capital(words)}.</li>
        ))}
      </ul>
    </>
  );
}

function Chemistry(props: {
  readonly panel: Panel;
  readonly loaded: Loaded;
  readonly worked: Worked;
  readonly mix: MixChemistry;
}): JSX.Element {
  const { panel, loaded, worked, mix } = props;
  const draft = useStore(panel.acid);
  const canDose = mix.standing !== null;
  const answer: AcidAnswer | null = canDose ? mixAcid(draft, mix.now) : null;
  const shelf = useStore(panel.batch.shelf);
  const acid = answer?.result ?? null;
  const plan =
    acid === null ? null : acidPlan(acid, worked.litres.value || 1, { tools: shelf.tools, thin: draft.thin });
  const state = acid?.dose.state ?? mix.now;
  const standing = acid?.standing ?? mix.standing;
  const { now, later } = risksNowAndLater(state, standing);
  return (
    <>
      <h4>{acid === null ? "EC to expect" : "EC to expect, with the acid or base"}</h4>
      <p>{ecBandWords(conductivity(state).at25MsCm, mix.ecShare, meterOf(loaded).scale)}</p>
      <p class="hint">
        The band is what labels may be off by rule, and the model: 3 % for feeds, 8 % for the water’s part.
      </p>
      {mix.standing !== null && answer !== null && (
        <>
          <h4>pH before any acid or base</h4>
          <p>{standingSentence(mix.now.pH, mix.standing.pH)}</p>
          <AcidCard
            draft={draft}
            answer={answer}
            plan={plan}
            litres={worked.litres.value}
            reached={worked.reached ?? {}}
            onType={(change) => panel.acid.change((before) => ({ ...before, ...change }))}
          />
        </>
      )}
      <Risks title="May fall out" risks={now} />
      <Risks title="May fall out later, as the pH climbs" risks={later} />
      <MixSteps worked={worked} acid={plan?.order ?? null} shelf={shelf} />
      <MixBottles worked={worked} draft={panel.batch.bottles} />
      {mix.assumptions.length > 0 && (
        <details class="quiet">
          <summary>What is taken for granted: {mix.assumptions.length}</summary>
          <ul class="sentences">
            {mix.assumptions.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

/** Where something changed since, only what the log says is known of the old batch. */
function AsLogged(props: { readonly past: PastBatch; readonly worked: Worked; readonly shelf: Shelf }): JSX.Element {
  const { past, worked, shelf } = props;
  const { predictedEcMsCm, measuredEcMsCm, measuredPH, acid } = past;
  const said = [
    ...(predictedEcMsCm === null
      ? []
      : [`EC to expect, as worked out then: ${predictedEcMsCm.toFixed(2)} mS/cm at 25 °C.`]),
    ...(measuredEcMsCm === null ? [] : [`Measured then: EC ${sayNumber(measuredEcMsCm)} mS/cm.`]),
    ...(measuredPH === null ? [] : [`Measured then: pH ${sayNumber(measuredPH)}.`]),
  ];
  const amount = acidForVolume(acid, (worked.litres.value ?? past.litres) / past.litres);
  return (
    <>
      <h4>As the log has it</h4>
      {said.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {acid !== "" && (
        <>
          <p>Acid or base then, for this volume: {amount}.</p>
          <p class="caution">{/potassium/i.test(acid) ? BASE_CAUTION : ACID_CAUTION}</p>
        </>
      )}
      <MixSteps worked={worked} acid={orderAcidOf(amount)} shelf={shelf} />
    </>
  );
}

export function MixChemistryPart(props: {
  readonly panel: Panel;
  readonly loaded: Loaded;
  readonly worked: Worked;
}): JSX.Element | null {
  const { panel, loaded, worked } = props;
  const shelf = useStore(panel.batch.shelf);
  if (worked.asLogged !== null) return <AsLogged past={worked.asLogged} worked={worked} shelf={shelf} />;
  let mix: MixChemistry | null = null;
  let problem: string | null = null;
  try {
    mix = mixChemistry(worked, loaded.waters);
  } catch (error) {
    if (!isBadInput(error)) throw error;
    problem = error.message;
  }
  if (problem !== null) return <p class="notice">EC and pH cannot be worked out: {problem}</p>;
  return mix === null ? null : <Chemistry panel={panel} loaded={loaded} worked={worked} mix={mix} />;
}
