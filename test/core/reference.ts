/** Reads a file of outside values from test/reference. */

import { readFileSync } from "node:fs";

export function readReference<Shape>(file: string): Shape {
  return JSON.parse(readFileSync(new URL(`../reference/${file}`, import.meta.url), "utf8")) as Shape;
}
