/** What one plant drinks: sentences, a drawing, its numbers, and how it recovered from each disturbance. */

import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import { sayNumber } from "../src/core/saying.ts";
import { Plot } from "./plot.tsx";
import { drinkDrawing } from "./reservoir-plot.ts";
import { drinkRows, type Pot, sayDrinking, sayRecoveries } from "./reservoir-pot.ts";

const HEIGHT = 130;
/** The drawing and the table go back half a year. */
const SHOWN_DAYS = 182;

export function DrinkPart(props: { readonly plant: string; readonly pot: Pot; readonly today: number }): JSX.Element {
  const { plant, pot, today } = props;
  const drawing = useMemo(
    () => drinkDrawing(pot.drunk.filter(({ toDay }) => toDay > today - SHOWN_DAYS)),
    [pot, today],
  );
  const said = sayDrinking(pot, today);
  const rows = drinkRows(pot.drunk, today);
  const recovered = sayRecoveries(pot);
  return (
    <>
      <ul class="sentences" data-part="drinking">
        {said.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {rows.length > 1 && (
        <>
          <Plot
            label={`mL a day that ${plant} drank between fillings. ${said[0]}`}
            height={HEIGHT}
            version={drawing}
            data={drawing.data}
            options={drawing.options}
          />
          <p class="hint">mL a day between fillings, since the last root disturbance.</p>
          <details class="quiet">
            <summary>The numbers, newest first</summary>
            <table class="doses">
              <caption class="unseen">What {plant} drank</caption>
              <thead>
                <tr>
                  <th scope="col">Filled up</th>
                  <th scope="col">days</th>
                  <th scope="col">mL</th>
                  <th scope="col">mL a day</th>
                </tr>
              </thead>
              <tbody>
                {rows.map(({ day, days, amountMl, mlDay }) => (
                  <tr key={day}>
                    <th scope="row">{day}</th>
                    <td>{days}</td>
                    <td>{sayNumber(amountMl)}</td>
                    <td>{sayNumber(mlDay)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </details>
        </>
      )}
      {recovered.length > 0 && (
        <>
          <h4>After each disturbance</h4>
          <ul class="sentences">
            {recovered.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
