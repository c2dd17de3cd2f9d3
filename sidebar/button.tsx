/** A button that is pressed once by one press: not by the second half of a double click, not by a held key. */

import type { ComponentChildren, JSX, Ref } from "preact";

export function Button(props: {
  readonly look: "primary" | "second" | "link";
  readonly busy?: boolean;
  readonly press: () => void;
  readonly at?: Ref<HTMLButtonElement> | undefined;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    <button
      type="button"
      ref={props.at ?? null}
      class={props.look}
      // Not `disabled`: that would take the focus away from someone on the keyboard.
      aria-disabled={props.busy ? "true" : undefined}
      onKeyDown={(event) => {
        if (event.repeat && (event.key === "Enter" || event.key === " ")) event.preventDefault();
      }}
      onClick={(event) => {
        if (!props.busy && event.detail <= 1) props.press();
      }}
    >
      {props.children}
    </button>
  );
}
