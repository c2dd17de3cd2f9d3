/** What the panel needs from outside, and what its desks need from one another. */

import type { Loaded } from "../src/app/contract.ts";
import type { AskSheet } from "./calls.ts";
import type { DraftStorage } from "./drafts.ts";
import type { FunctionHelp } from "./formulas.ts";
import type { NewId } from "./ids.ts";
import type { After } from "./sending.ts";
import type { Store } from "./store.ts";

export interface PanelWorld {
  readonly ask: AskSheet;
  readonly after: After;
  readonly newId: NewId;
  /** Unix time of this browser, ms. */
  readonly nowMs: () => number;
  readonly storage: DraftStorage | null;
  readonly formulas: readonly FunctionHelp[];
}

/** What the desk needs of the rest of the panel. */
export interface DeskLinks {
  readonly loaded: Store<Loaded | null>;
  /** The name that goes under "Who", "" when there is none yet. */
  readonly who: () => string;
  /** Called after rows were written under that name. */
  readonly keepName: () => void;
  /** Reads the sheet again, where what was done changes more than the panel can tell. */
  readonly reload: () => void;
}
