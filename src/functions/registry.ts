/** The one list of all custom functions, in the order of the reference. */

import { CHECK_RECORDS } from "./check.ts";
import { FEED_RECORDS } from "./feed.ts";
import { FEED_CHEMISTRY_RECORDS } from "./feed-chemistry.ts";
import { FEED_LEFT_RECORDS } from "./feed-left.ts";
import { METER_RECORDS } from "./meter.ts";
import { METER_HISTORY_RECORDS } from "./meter-history.ts";
import { POT_RECORDS } from "./pot.ts";
import type { FunctionRecord } from "./record.ts";
import { ROOT_RECORDS } from "./root.ts";
import { TRIAL_RECORDS } from "./trial.ts";
import { WATER_RECORDS } from "./water.ts";
import { WATER_CHEMISTRY_RECORDS } from "./water-chemistry.ts";

export const REGISTRY: readonly FunctionRecord[] = [
  ...FEED_RECORDS,
  ...FEED_CHEMISTRY_RECORDS,
  ...FEED_LEFT_RECORDS,
  ...WATER_RECORDS,
  ...WATER_CHEMISTRY_RECORDS,
  ...METER_RECORDS,
  ...METER_HISTORY_RECORDS,
  ...ROOT_RECORDS,
  ...POT_RECORDS,
  ...CHECK_RECORDS,
  ...TRIAL_RECORDS,
];
