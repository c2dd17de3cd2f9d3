/**
 * Property tests draw the same cases in every run, so that what passed once passes in CI too.
 * `SEED=… npm test` draws others; a failure prints its seed.
 */

import fc from "fast-check";

const DEFAULT_SEED = 20261125;

const asked = process.env.SEED;
const seed = asked === undefined ? DEFAULT_SEED : Number(asked);
if (!Number.isInteger(seed)) throw new Error(`SEED is "${asked}"; give a whole number.`);
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed });
