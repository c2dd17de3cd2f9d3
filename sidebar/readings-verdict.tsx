/** What a reading says about its batch, while it is typed: the verdict, the slips that would explain it, what to do. */

import type { JSX } from "preact";
import { tdsFromEc } from "../src/core/meter.ts";
import { sayNumber } from "../src/core/saying.ts";
import type { Check } from "../src/core/slips.ts";
import { type PHRange, sayPH } from "./ph-range.ts";
import type { BatchCheck } from "./readings-check.ts";

/** Further slips than these explain a reading worse than a fresh measurement would. */
const SLIPS_SHOWN = 4;

function onMeter(ecMsCm: number, scale: number | null): string {
  return scale === null ? `${sayNumber(ecMsCm)} mS/cm` : `${Math.round(tdsFromEc(ecMsCm, scale))} ppm`;
}

function Slips(props: { readonly check: Check; readonly scale: number | null }): JSX.Element | null {
  const { slips } = props.check;
  if (slips.length === 0) return null;
  return (
    <details class="quiet">
      <summary>What the meter would show after each slip</summary>
      <table class="doses">
        <caption class="unseen">Reading to expect after each slip</caption>
        <thead>
          <tr>
            <th scope="col">If</th>
            <th scope="col">it would show</th>
          </tr>
        </thead>
        <tbody>
          {slips.slice(0, SLIPS_SHOWN).map(({ words, readsMsCm }) => (
            <tr key={words}>
              <th scope="row">{words}</th>
              <td>{onMeter(readsMsCm, props.scale)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

export function ReadingsVerdict(props: {
  readonly check: BatchCheck | null;
  readonly pH: number | null;
  readonly range: PHRange;
  /** Of a meter that shows ppm. */
  readonly scale: number | null;
}): JSX.Element {
  const { check, pH, range, scale } = props;
  const found = check?.check ?? null;
  const off = pH !== null && (pH < range.low || pH > range.high);
  return (
    <>
      <div role="status">
        {found !== null && <p class={found.verdict === "look again" ? "notice" : ""}>{found.sentence}</p>}
        {found !== null && scale !== null && (
          <p class="hint">
            To be expected on your meter: {onMeter(found.lowMsCm, scale)} to {onMeter(found.highMsCm, scale)}.
          </p>
        )}
        {pH !== null && <p class={off ? "notice" : ""}>{sayPH(pH, range)}</p>}
      </div>
      {found !== null && found.verdict !== "as expected" && (
        <>
          <p>Stir, rinse the probe and measure once more before a plant gets any of it.</p>
          <Slips check={found} scale={scale} />
        </>
      )}
      {check !== null && check.unchecked.length > 0 && (
        <ul class="sentences">
          {check.unchecked.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </>
  );
}
