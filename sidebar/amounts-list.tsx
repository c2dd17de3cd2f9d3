/** The amount of each chosen plant, as it was the last time, each open to another. */

import type { JSX } from "preact";
import type { Loaded, PlantRow } from "../src/app/contract.ts";
import type { CareDraft } from "./care.ts";
import { amountsFor, ownAmount } from "./care-amounts.ts";
import type { CareDesk } from "./care-desk.ts";
import { TextField } from "./field.tsx";
import { count, showDose } from "./show.ts";

export function AmountsList(props: {
  readonly desk: CareDesk;
  readonly draft: CareDraft;
  readonly loaded: Loaded;
  readonly plants: readonly PlantRow[];
}): JSX.Element | null {
  const { desk, draft, loaded, plants } = props;
  if (plants.length === 0) return null;
  const amounts = amountsFor(draft, plants, loaded);
  const known = [...amounts.values()].filter((amount) => amount !== null);
  if (known.length === 0 && plants.length === 1) return null;
  const all = known.reduce((sum, amount) => sum + amount, 0);
  return (
    <details class="quiet">
      <summary>
        {known.length === 0
          ? "An amount for each plant"
          : `${showDose(all, "mL")} in all for ${count(known.length, "plant")}`}
      </summary>
      <div class="amounts">
        {plants.map(({ plant }) => (
          <TextField
            key={plant}
            label={plant}
            number
            value={draft.amounts[plant] ?? String(amounts.get(plant) ?? "")}
            problem={ownAmount(draft, plant)?.problem}
            onType={(text) => desk.draft.change((now) => ({ ...now, amounts: { ...now.amounts, [plant]: text } }))}
          />
        ))}
      </div>
    </details>
  );
}
