/** The kinds of values that requests are made of: texts, ids, days, numbers within bounds. */

import * as z from "zod/mini";

/**
 * An object with none, some or all of these keys and no others. A record would check the same and take
 * 2 kB more of what the host loads for every formula.
 */
export function onlyThese<Key extends string, Value extends z.ZodMiniType>(keys: readonly Key[], value: Value) {
  const shape = Object.fromEntries(keys.map((key) => [key, z.exactOptional(value)]));
  return z.strictObject(shape as Record<Key, z.ZodMiniExactOptional<Value>>);
}

/** Made when the first request comes, since making schemas takes time that no formula has to spend. */
export function requestKinds() {
  const text = z.string().check(z.maxLength(2000));
  const name = z.string().check(z.minLength(1), z.maxLength(200));
  const sentence = z.string().check(z.minLength(1), z.maxLength(2000));
  /** Made by the panel once per record, kept through retries, so that a record is written once. */
  const id = z.string().check(z.regex(/^[a-z0-9-]{8,64}$/));
  const isoDay = z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/));
  const notNegative = z.number().check(z.nonnegative());
  const positive = z.number().check(z.positive());
  const pH = z.number().check(z.gte(0), z.lte(14));
  return { text, name, sentence, id, isoDay, notNegative, positive, pH };
}

export type RequestKinds = ReturnType<typeof requestKinds>;
