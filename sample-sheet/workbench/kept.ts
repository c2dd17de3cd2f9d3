/** What a person did in the workbench, kept in one local file: written whole or not at all, never over something unreadable. */

import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, renameSync } from "node:fs";
import { open, rename } from "node:fs/promises";
import { dirname } from "node:path";

const FORMAT = "stillroot workbench 1";

interface Wrapped {
  readonly format: string;
  /** Of `content`, so that a file changed by accident is seen. */
  readonly sha256: string;
  readonly content: string;
}

export interface Kept {
  /** JSON text of the page's own making; null when there is nothing to go on from. */
  readonly content: string | null;
  /** For the person, when a file had to be set aside. */
  readonly notice: string | null;
}

function digest(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}

function unwrap(text: string): string {
  const wrapped = JSON.parse(text) as Partial<Wrapped>;
  if (wrapped.format !== FORMAT) throw new Error(`its format is “${String(wrapped.format)}”, not “${FORMAT}”`);
  if (typeof wrapped.content !== "string" || digest(wrapped.content) !== wrapped.sha256) {
    throw new Error("its content is not what was written");
  }
  JSON.parse(wrapped.content);
  return wrapped.content;
}

/** Moves a file out of the way under a name that is free; answers with that name. */
export function setAside(file: string, word: string): string {
  for (let n = 1; ; n++) {
    const other = file.replace(/(\.json)?$/, `.${word}-${n}.json`);
    if (existsSync(other)) continue;
    renameSync(file, other);
    return other;
  }
}

function plainName(file: string): string {
  return file.slice(file.lastIndexOf("/") + 1);
}

/** Reads the file; one that cannot be read is set aside, and the notice says so. */
export function readKept(file: string): Kept {
  if (!existsSync(file)) return { content: null, notice: null };
  try {
    return { content: unwrap(readFileSync(file, "utf8")), notice: null };
  } catch (error) {
    const why = error instanceof SyntaxError ? "it is cut off or not JSON" : (error as Error).message;
    const other = plainName(setAside(file, "unreadable"));
    return {
      content: null,
      notice: `The kept sheet could not be read: ${why}. It was set aside as ${other}, untouched, and the samples were loaded instead.`,
    };
  }
}

/** Writes beside the file, makes sure it is on the disk, then takes its place in one step. */
export async function writeKept(file: string, content: string): Promise<void> {
  mkdirSync(dirname(file), { recursive: true });
  const wrapped: Wrapped = { format: FORMAT, sha256: digest(content), content };
  const beside = `${file}.part`;
  const handle = await open(beside, "w");
  try {
    await handle.writeFile(JSON.stringify(wrapped));
    await handle.sync();
  } finally {
    await handle.close();
  }
  await rename(beside, file);
  const folder = await open(dirname(file), "r");
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}

/** `--fresh`: the samples again, the old file set aside; a sentence on where it went. */
export function startFresh(file: string): string | null {
  if (!existsSync(file)) return null;
  return `The sheet kept so far was set aside as ${plainName(setAside(file, "before-fresh"))}.`;
}
