/** "Claims": what others say helps, what it was like where they grow, and what came of it here. */

import type { JSX } from "preact";
import { useRef } from "preact/hooks";
import type { Loaded, Records } from "../src/app/contract.ts";
import { nameKey } from "../src/core/cell.ts";
import { Button } from "./button.tsx";
import { ClaimForm } from "./claim-form.tsx";
import { type Claim, isDue, isId, readClaims, STATE_WORDS, sortClaims } from "./claim-rows.ts";
import type { Panel } from "./panel-state.ts";
import { Send } from "./send.tsx";
import { count, showDay } from "./show.ts";
import { readTrials } from "./trial-rows.ts";
import { useStore } from "./use-store.ts";
import { WithRecords } from "./with-records.tsx";

/** "Marit, 11 years at it, heard on 7 Dec 2024". */
function sayWho({ heardFrom, yearsAtIt, heardOn }: Claim): string {
  const parts = [
    heardFrom === "" ? "Nobody named" : heardFrom,
    yearsAtIt === null ? "years at it not known" : `${count(yearsAtIt, "year")} at it`,
    ...(heardOn === "" ? [] : [`heard on ${showDay(heardOn)}`]),
  ];
  return parts.join(" · ");
}

function Facts(props: { readonly claim: Claim }): JSX.Element {
  const { claim } = props;
  const facts: readonly (readonly [string, string])[] = [
    ["Their setup", claim.theirSetup],
    ["Our setup", claim.ourSetup],
    ["What agrees", claim.agrees],
    ["What differs", claim.differs],
    ["What came of it", claim.outcome],
    ["Note", claim.note],
  ];
  return (
    <dl>
      {facts.map(([name, text]) =>
        text === "" && name !== "Their setup" && name !== "Our setup" ? null : (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{text === "" ? "Not known." : text}</dd>
          </div>
        ),
      )}
    </dl>
  );
}

function ClaimItem(props: {
  readonly panel: Panel;
  readonly claim: Claim;
  readonly today: string;
  readonly who: string;
  readonly hasTrial: boolean;
  readonly change: (claim: Claim) => void;
}): JSX.Element {
  const { panel, claim, today, who, hasTrial, change } = props;
  const due = isDue(claim, today);
  const state = due ? `look at it again · ${STATE_WORDS[claim.status]}` : STATE_WORDS[claim.status];
  return (
    <li>
      <details class="claim">
        <summary>
          {claim.claim}
          <span>{state}</span>
        </summary>
        <p class="hint">{sayWho(claim)}</p>
        <Facts claim={claim} />
        {claim.lookAgain !== "" && (
          <p class={due ? "notice" : "hint"}>
            {due
              ? `Look again since ${showDay(claim.lookAgain)}: do they still do it, and does it still fit here?`
              : `Look again on ${showDay(claim.lookAgain)}.`}
          </p>
        )}
        {isId(claim.id) ? (
          <p class="links">
            <Button look="link" press={() => change(claim)}>
              Change
            </Button>
            {nameKey(claim.who) === nameKey(who) && who !== "" && (
              <Button look="link" press={() => panel.claims.takeBack.row(claim.id)}>
                Take back
              </Button>
            )}
            {hasTrial ? (
              <Button look="link" press={() => panel.section.set("trials")}>
                Show its trial
              </Button>
            ) : (
              <Button
                look="link"
                press={() => {
                  panel.trials.tryClaim(claim);
                  panel.section.set("trials");
                }}
              >
                Try it on some plants
              </Button>
            )}
          </p>
        ) : (
          <p class="hint">Typed by hand in row {claim.row} of Claims; change it there.</p>
        )}
      </details>
    </li>
  );
}

function ClaimsBody(props: { readonly panel: Panel; readonly loaded: Loaded; readonly records: Records }): JSX.Element {
  const { panel, loaded, records } = props;
  const taking = useStore(panel.claims.takeBack.sender.now);
  const form = useRef<HTMLHeadingElement>(null);
  const claims = sortClaims(readClaims(records.claims), loaded.today);
  const trials = readTrials(records.trials).trials;
  const due = claims.filter((claim) => isDue(claim, loaded.today)).length;
  return (
    <>
      <p>
        Most advice comes from people whose pots and rooms are not yours, and who change their minds. Write down who
        said it and what it is like there.
      </p>
      {due > 0 && <p class="notice">{due === 1 ? "1 claim is" : `${due} claims are`} due for another look.</p>}
      {claims.length === 0 ? (
        <p class="empty">No claim is written down yet.</p>
      ) : (
        <ul class="claims">
          {claims.map((claim) => (
            <ClaimItem
              key={claim.id === "" ? claim.row : claim.id}
              panel={panel}
              claim={claim}
              today={loaded.today}
              who={loaded.who}
              hasTrial={trials.some(({ id }) => id !== "" && id === claim.trial)}
              change={(chosen) => {
                panel.claims.change(chosen);
                form.current?.focus();
              }}
            />
          ))}
        </ul>
      )}
      <Send
        sender={panel.claims.takeBack.sender}
        label="Try again"
        working="Taking it back…"
        hidden={taking.state !== "failed"}
      />
      <ClaimForm panel={panel} loaded={loaded} heading={form} />
    </>
  );
}

export function ClaimSection(props: { readonly panel: Panel; readonly loaded: Loaded }): JSX.Element {
  return (
    <WithRecords panel={props.panel}>
      {(records) => <ClaimsBody panel={props.panel} loaded={props.loaded} records={records} />}
    </WithRecords>
  );
}
