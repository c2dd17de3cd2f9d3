/** "Reservoirs": what is due, place by place; then one plant with its drinking and the salt in its reservoir. */

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import type { Loaded } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { plantsOnce } from "./care.ts";
import { SelectField } from "./field.tsx";
import type { Panel } from "./panel-state.ts";
import { withPlant } from "./reservoir-draft.ts";
import { DrinkPart } from "./reservoir-drink-part.tsx";
import { DuePart } from "./reservoir-due-part.tsx";
import { reservoirLog } from "./reservoir-log.ts";
import { potOf } from "./reservoir-pot.ts";
import { SaltCard } from "./reservoir-salt-card.tsx";
import { useStore } from "./use-store.ts";

export function ReservoirSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  const { panel, loaded } = props;
  const desk = panel.reservoir;
  const draft = useStore(desk.draft);
  const log = useMemo(() => reservoirLog(loaded), [loaded]);
  const plants = plantsOnce(loaded.plants);
  const shown = plants.filter(({ place }) => draft.place === "" || nameKey(place) === nameKey(draft.place));
  const plant = plants.find((one) => nameKey(one.plant) === nameKey(draft.plant));
  const pot = useMemo(() => (plant === undefined ? null : potOf(log, plant.plant)), [log, plant]);
  if (plants.length === 0) {
    return (
      <p class="empty">
        There are no plants yet. Write some into the Plants tab, or choose your own plant list under “Set up”.
      </p>
    );
  }
  return (
    <>
      <DuePart panel={panel} loaded={loaded} log={log} />
      <h3>One plant</h3>
      <SelectField
        label="Plant"
        value={plant?.plant ?? ""}
        options={[
          { value: "", words: "Choose" },
          ...(plant === undefined || shown.includes(plant) ? shown : [plant, ...shown]).map((one) => ({
            value: one.plant,
            words: one.plant,
          })),
        ]}
        onType={(name) => desk.draft.change((now) => withPlant(now, name))}
      />
      {plant !== undefined && pot !== null && (
        <>
          <DrinkPart plant={plant.plant} pot={pot} today={log.today} />
          <SaltCard key={plant.plant} desk={desk} loaded={loaded} log={log} pot={pot} plant={plant} />
        </>
      )}
    </>
  );
}
