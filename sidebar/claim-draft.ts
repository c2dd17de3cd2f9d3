/** What is being typed about a claim, and the row it makes. */

import type { ClaimEntry, Loaded } from "../src/app/contract.ts";
import { CLAIM_STATES } from "../src/app/requests.ts";
import type { Claim, ClaimState } from "./claim-rows.ts";
import { isRecord, textOf } from "./drafts.ts";
import type { NewId } from "./ids.ts";
import { type Typed, typedNumber } from "./typed.ts";

export interface ClaimDraft {
  /** Of the row, made once and kept until it is in the sheet. */
  readonly id: string;
  /** Id of the row that it replaces, "" for a new claim. */
  readonly corrects: string;
  readonly claim: string;
  readonly heardFrom: string;
  readonly years: string;
  readonly theirSetup: string;
  readonly ourSetup: string;
  readonly agrees: string;
  readonly differs: string;
  readonly status: ClaimState;
  /** ISO days, "" for none. */
  readonly heardOn: string;
  readonly lookAgain: string;
  readonly trial: string;
  readonly outcome: string;
  readonly note: string;
}

const TEXTS = [
  "corrects",
  "claim",
  "heardFrom",
  "years",
  "theirSetup",
  "ourSetup",
  "agrees",
  "differs",
  "heardOn",
  "lookAgain",
  "trial",
  "outcome",
  "note",
] as const;

type Texts = Record<(typeof TEXTS)[number], string>;

export function freshClaim(newId: NewId): ClaimDraft {
  const blank = Object.fromEntries(TEXTS.map((key) => [key, ""])) as Texts;
  return { ...blank, id: newId(), status: "heard" };
}

export function readClaim(kept: unknown): ClaimDraft | null {
  if (!isRecord(kept) || !/^[a-z0-9-]{8,64}$/.test(textOf(kept, "id"))) return null;
  const texts = Object.fromEntries(TEXTS.map((key) => [key, textOf(kept, key)])) as Texts;
  const status = CLAIM_STATES.find((state) => state === textOf(kept, "status")) ?? "heard";
  return { ...texts, id: textOf(kept, "id"), status };
}

/** The claim as it stands, to be changed; what is saved replaces its row. */
export function draftOf(claim: Claim, newId: NewId): ClaimDraft {
  return {
    id: newId(),
    corrects: claim.id,
    claim: claim.claim,
    heardFrom: claim.heardFrom,
    years: claim.yearsAtIt === null ? "" : String(claim.yearsAtIt),
    theirSetup: claim.theirSetup,
    ourSetup: claim.ourSetup,
    agrees: claim.agrees,
    differs: claim.differs,
    status: claim.status,
    heardOn: claim.heardOn,
    lookAgain: claim.lookAgain,
    trial: claim.trial,
    outcome: claim.outcome,
    note: claim.note,
  };
}

export function typedYears(draft: Pick<ClaimDraft, "years">): Typed {
  return typedNumber(draft.years, { what: "Years at it", unit: "years", min: 0, max: 100 });
}

function dayOrNull(text: string): string | null {
  return /^\d{4}-\d{2}-\d{2}$/.test(text) ? text : null;
}

/** The entry for what is typed now, or the sentence that says what is missing. */
export function claimEntry(draft: ClaimDraft, { today }: Pick<Loaded, "today">): ClaimEntry | string {
  const claim = draft.claim.trim();
  if (claim === "") return "Write down what was said, in one sentence.";
  const years = typedYears(draft);
  if (years.problem !== null) return years.problem;
  return {
    id: draft.id,
    claim,
    heardFrom: draft.heardFrom.trim(),
    yearsAtIt: years.value,
    theirSetup: draft.theirSetup.trim(),
    ourSetup: draft.ourSetup.trim(),
    agrees: draft.agrees.trim(),
    differs: draft.differs.trim(),
    status: draft.status,
    heardOn: dayOrNull(draft.heardOn) ?? (draft.corrects === "" ? today : null),
    lookAgain: dayOrNull(draft.lookAgain),
    trial: draft.trial,
    outcome: draft.outcome.trim(),
    note: draft.note.trim(),
    ...(draft.corrects === "" ? {} : { corrects: draft.corrects }),
  };
}
