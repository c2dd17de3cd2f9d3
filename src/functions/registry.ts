/** The one list of all custom functions, in the order of the reference. */

import type { FunctionRecord } from "./record.ts";

export const REGISTRY: readonly FunctionRecord[] = [];
