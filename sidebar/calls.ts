/** Asks the sheet: one JSON text out, one JSON text back, and every way this can go wrong as a sentence. */

import { type Answered, type Ask, failure, type RequestFor, replies } from "../src/app/contract.ts";
import { ONLY_READ, requestSchemas } from "../src/app/requests.ts";
import { MAY_HAVE_SAVED } from "../src/core/saying.ts";

/** The part of the host's `google.script.run` that is used. */
export interface ScriptRun {
  withSuccessHandler(heard: (answer: unknown) => void): ScriptRun;
  withFailureHandler(heard: (error: unknown) => void): ScriptRun;
  panelRequest(json: string): void;
}

export type AskSheet = <A extends Ask>(request: RequestFor<A>) => Promise<Answered<A>>;

/** The host's runner, or null when the panel was opened outside a sheet. */
export function hostRun(): ScriptRun | null {
  const host = globalThis as { google?: { script?: { run?: ScriptRun } } };
  return host.google?.script?.run ?? null;
}

const ACCOUNTS =
  "This often happens when two accounts are signed in to this browser. Open the sheet in a private window with one account, or sign out of the other.";

export const SENTENCES = {
  noSheet: "The panel is not connected to a sheet. Close it and open it from the sheet’s menu.",
  noAnswer: `The sheet gave no answer. ${ACCOUNTS}`,
  notAllowed: `The sheet refused the request. ${ACCOUNTS}`,
  connection: "The connection to the sheet was lost. Check that you are online.",
  unreadable:
    "The panel does not understand the sheet’s answer. Reload the browser page, so that both are the same version.",
} as const;

function failed(code: string, sentence: string): { ok: false; code: string; sentence: string } {
  return { ok: false, code, sentence };
}

/** A request that writes may have got through all the same; said after what went wrong. */
function unsure<F extends { readonly sentence: string }>(ask: Ask, no: F): F {
  return ONLY_READ.includes(ask) ? no : { ...no, sentence: `${no.sentence} ${MAY_HAVE_SAVED}` };
}

/** What a throw on the other side means. Only the message survives the way here. */
function thrown(error: unknown): { ok: false; code: string; sentence: string } {
  const message = (error as { message?: unknown } | null)?.message;
  const words = typeof message === "string" ? message.trim() : "";
  if (/permission|authori[sz]|PERMISSION_DENIED/i.test(words)) return failed("not allowed", SENTENCES.notAllowed);
  if (/network|connection|offline|HTTP 0/i.test(words)) return failed("connection", SENTENCES.connection);
  if (words === "") return failed("no answer", SENTENCES.noAnswer);
  return failed("thrown", `The sheet could not do this. It says: “${words}”`);
}

/** Reads an answer. Null is what the host hands over when it lost the real one. */
function readAnswer<A extends Ask>(ask: A, answer: unknown): Answered<A> {
  const unreadable = () => unsure(ask, failed("unreadable", SENTENCES.unreadable));
  if (answer === null || answer === undefined || answer === "") {
    return unsure(ask, failed("no answer", SENTENCES.noAnswer));
  }
  if (typeof answer !== "string") return unreadable();
  let value: unknown;
  try {
    value = JSON.parse(answer);
  } catch {
    return unreadable();
  }
  const no = failure.safeParse(value);
  if (no.success) return no.data;
  const yes = value as { ok?: unknown; reply?: unknown } | null;
  if (yes?.ok !== true) return unreadable();
  const reply = replies[ask].safeParse(yes.reply);
  if (!reply.success) return unreadable();
  // Checked against the schema of this very `ask` above; the compiler cannot follow the lookup.
  return { ok: true, reply: reply.data } as Answered<A>;
}

/** Makes the function the whole panel asks with. It never rejects: a failure is an answer. */
export function createAsk(run: () => ScriptRun | null): AskSheet {
  return <A extends Ask>(request: RequestFor<A>): Promise<Answered<A>> => {
    const checked = requestSchemas()[request.ask].safeParse(request);
    if (!checked.success) {
      const where = checked.error.issues[0]?.path.filter((step) => typeof step === "string").join(", ") ?? "";
      return Promise.resolve(failed("request", `One entry cannot be saved as it is: ${where}. Shorten or correct it.`));
    }
    const runner = run();
    if (runner === null) return Promise.resolve(failed("no sheet", SENTENCES.noSheet));
    return new Promise((answered) => {
      try {
        runner
          .withSuccessHandler((answer) => answered(readAnswer(request.ask as A, answer)))
          .withFailureHandler((error) => answered(unsure(request.ask, thrown(error))))
          .panelRequest(JSON.stringify(request));
      } catch (error) {
        answered(thrown(error));
      }
    });
  };
}
