/** What is known of something, each under its name; what is blank is left out. */

import type { JSX } from "preact";

export function Facts(props: {
  readonly facts: readonly (readonly [name: string, value: string])[];
  readonly look?: "facts";
}): JSX.Element {
  return (
    <dl class={props.look}>
      {props.facts
        .filter(([, value]) => value !== "")
        .map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
    </dl>
  );
}
