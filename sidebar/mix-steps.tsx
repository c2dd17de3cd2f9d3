/** The one list of what to do, from the empty can to the reading, and what to keep apart. */

import type { JSX } from "preact";
import { ACID_CAUTION, BASE_CAUTION } from "../src/core/acid-dose.ts";
import type { OrderAcid } from "../src/core/order.ts";
import type { Worked } from "./batch.ts";
import type { Shelf } from "./batch-shelf.ts";
import { stepsOf } from "./mix-state.ts";

export function MixSteps(props: {
  readonly worked: Worked;
  readonly acid: OrderAcid | null;
  readonly shelf: Pick<Shelf, "waterRows" | "tools">;
}): JSX.Element {
  const { worked, acid, shelf } = props;
  const order = stepsOf(worked, { acid, ...shelf });
  // Those of acid and base stand beside their dose already.
  const cautions = new Set(order?.steps.map(({ caution }) => caution).filter((one) => one !== ""));
  cautions.delete(ACID_CAUTION);
  cautions.delete(BASE_CAUTION);
  return (
    <>
      <h4>Steps</h4>
      {order === null ? (
        <p class="empty">Type how many litres you mix, and the steps stand here.</p>
      ) : (
        <>
          <ol class="steps" data-part="steps">
            {order.steps.map(({ text }) => (
              <li key={text}>{text}</li>
            ))}
          </ol>
          {order.apart !== null && <p class="notice">{order.apart}</p>}
          {[...cautions].map((caution) => (
            <p class="caution" key={caution}>
              {caution}
            </p>
          ))}
        </>
      )}
      <p class="caution">
        Label every bottle with what is in it, how strong and since when. Pour leftovers of the solution on soil that
        can take them, not into ponds; never eat or drink from what you mix in.
      </p>
    </>
  );
}
