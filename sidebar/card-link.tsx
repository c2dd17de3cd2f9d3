/** Opens the card of the batch that is being put together. */

import type { JSX } from "preact";
import type { Loaded } from "../src/app/contract.ts";
import { conductivity } from "../src/core/conductivity.ts";
import { isBadInput } from "../src/core/errors.ts";
import type { Worked } from "./batch.ts";
import { type BatchCard, cardOfDraft } from "./batch-card.ts";
import { batchChemistry, chemistryOf } from "./batch-chemistry.ts";
import { Button } from "./button.tsx";
import { meterOf } from "./meter.ts";
import { ecBandWords } from "./mix-chemistry.tsx";
import type { Panel } from "./panel-state.ts";
import { useStore } from "./use-store.ts";

function cardNow(panel: Panel, loaded: Loaded, worked: Worked): BatchCard | null {
  const draft = panel.batch.draft.get();
  const shelf = panel.batch.shelf.get();
  const acid = panel.acid.get();
  try {
    const chemistry = worked.asLogged === null ? chemistryOf(worked, acid, shelf) : null;
    const kept = batchChemistry(worked, acid, shelf);
    const ec =
      chemistry === null
        ? kept.predictedEcMsCm === null
          ? ""
          : `${kept.predictedEcMsCm.toFixed(2)} mS/cm at 25 °C`
        : ecBandWords(conductivity(chemistry.state).at25MsCm, chemistry.mix.ecShare, meterOf(loaded).scale);
    return cardOfDraft(worked, shelf, {
      chemistry,
      acid: kept.acid,
      ec,
      day: draft.day === "" ? loaded.today : draft.day,
      who: loaded.who,
      note: draft.note.trim(),
      state: draft.logged ? (draft.planned ? "Planned" : "Mixed") : "Not in the log yet",
    });
  } catch (error) {
    if (isBadInput(error)) return null;
    throw error;
  }
}

export function CardLink(props: {
  readonly panel: Panel;
  readonly loaded: Loaded;
  readonly worked: Worked;
}): JSX.Element | null {
  const { panel, loaded, worked } = props;
  useStore(panel.acid);
  const litres = worked.litres.value;
  if (worked.reached === null || litres === null || litres === 0) return null;
  return (
    <Button
      look="link"
      press={() => {
        const card = cardNow(panel, loaded, worked);
        if (card !== null) panel.card.set(card);
      }}
    >
      Card of this batch, to print
    </Button>
  );
}
