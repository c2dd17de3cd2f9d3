/** The field for an EC, in mS/cm or in ppm on the scale of the household's meter. */

import type { JSX } from "preact";
import { useId } from "preact/hooks";
import { sayNumber } from "../src/core/saying.ts";
import { Field } from "./field.tsx";
import { type EcUnit, type Meter, unitOf } from "./meter.ts";
import type { Typed } from "./typed.ts";

export function EcField(props: {
  readonly label: string;
  readonly meter: Meter;
  readonly text: string;
  readonly unit: EcUnit | "";
  readonly read: Typed;
  readonly onType: (text: string) => void;
  readonly onUnit: (unit: EcUnit) => void;
}): JSX.Element {
  const unit = unitOf(props.meter, props.unit);
  const unitId = useId();
  const { scale } = props.meter;
  return (
    <div>
      <Field
        label={props.label}
        problem={props.read.problem}
        input={(marks) => (
          <div class={scale === null ? "joined short" : "joined"}>
            <input
              {...marks}
              type="text"
              inputMode="decimal"
              autocomplete="off"
              value={props.text}
              onInput={(event) => props.onType(event.currentTarget.value)}
            />
            {scale === null ? (
              <span class="unit">mS/cm</span>
            ) : (
              <select
                id={unitId}
                aria-label={`Unit of ${props.label}`}
                value={unit}
                onChange={(event) => props.onUnit(event.currentTarget.value === "ppm" ? "ppm" : "mS/cm")}
              >
                <option value="ppm">ppm, scale {scale}</option>
                <option value="mS/cm">mS/cm</option>
              </select>
            )}
          </div>
        )}
      />
      {unit === "ppm" && props.read.value !== null && <p class="hint">= {sayNumber(props.read.value)} mS/cm</p>}
    </div>
  );
}
