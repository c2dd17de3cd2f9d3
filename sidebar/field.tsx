/** Fields: label above, what is wrong below, both tied to the input for those who listen. */

import type { ComponentChildren, JSX } from "preact";
import { useId } from "preact/hooks";

interface FieldWords {
  readonly label: string;
  /** What the label is about, where the eye sees it anyway and only the ear needs it. */
  readonly of?: string | undefined;
  readonly hint?: string | undefined;
  /** A sentence that says what is wrong with what was typed. */
  readonly problem?: string | null | undefined;
}

interface Marks {
  readonly id: string;
  readonly "aria-describedby"?: string;
  readonly "aria-invalid"?: "true";
}

/** The frame of one field; `input` draws the control with the marks that tie it to label, hint and problem. */
export function Field(props: FieldWords & { readonly input: (marks: Marks) => ComponentChildren }): JSX.Element {
  const id = useId();
  const hint = props.hint ? `${id}-hint` : null;
  const wrong = props.problem ? `${id}-wrong` : null;
  const described = [hint, wrong].filter((part) => part !== null).join(" ");
  return (
    <div class="field">
      <label for={id}>
        {props.label}
        {props.of && <span class="unseen"> of {props.of}</span>}
      </label>
      {hint && (
        <p class="hint" id={hint}>
          {props.hint}
        </p>
      )}
      {props.input({
        id,
        ...(described === "" ? {} : { "aria-describedby": described }),
        ...(wrong ? { "aria-invalid": "true" as const } : {}),
      })}
      {wrong && (
        <p class="wrong" id={wrong}>
          {props.problem}
        </p>
      )}
    </div>
  );
}

interface TypedField extends FieldWords {
  readonly value: string;
  readonly onType: (text: string) => void;
}

export function TextField(
  props: TypedField & {
    readonly kind?: "text" | "search" | "date";
    /** Shows the number keys on a touch screen. */
    readonly number?: boolean;
    /** Texts offered while typing; any other may be typed. */
    readonly offered?: readonly string[];
  },
): JSX.Element {
  const list = useId();
  const offered = props.offered ?? [];
  return (
    <Field
      {...props}
      input={(marks) => (
        <>
          <input
            {...marks}
            type={props.kind ?? "text"}
            value={props.value}
            inputMode={props.number ? "decimal" : undefined}
            autocomplete="off"
            maxLength={2000}
            list={offered.length > 0 ? list : undefined}
            onInput={(event) => props.onType(event.currentTarget.value)}
          />
          {offered.length > 0 && (
            <datalist id={list}>
              {offered.map((text) => (
                <option key={text} value={text} />
              ))}
            </datalist>
          )}
        </>
      )}
    />
  );
}

export interface Option {
  readonly value: string;
  readonly words: string;
}

export function SelectField(props: TypedField & { readonly options: readonly Option[] }): JSX.Element {
  return (
    <Field
      {...props}
      input={(marks) => (
        <select {...marks} value={props.value} onChange={(event) => props.onType(event.currentTarget.value)}>
          {props.options.map(({ value, words }) => (
            <option key={value} value={value} selected={value === props.value}>
              {words}
            </option>
          ))}
        </select>
      )}
    />
  );
}
