/** The kept sheet: whole or not at all, and what cannot be read is set aside, never written over. */

import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { readKept, startFresh, writeKept } from "../../sample-sheet/workbench/kept.ts";

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "kept-"));
  file = join(folder, "workbench.json");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const CONTENT = JSON.stringify({ workbook: { name: "Big monstera’s sheet" }, timeZone: "Europe/Zurich" });

test("what was written is read back, and nothing else lies beside it", async () => {
  await writeKept(file, CONTENT);
  expect(readKept(file)).toEqual({ content: CONTENT, notice: null });
  expect(readdirSync(folder)).toEqual(["workbench.json"]);
});

test("no file: nothing to go on from, nothing to say", () => {
  expect(readKept(file)).toEqual({ content: null, notice: null });
});

test("a write that died half-way leaves the file before it as it was", async () => {
  await writeKept(file, CONTENT);
  writeFileSync(`${file}.part`, '{"format":"stillroot work');
  expect(readKept(file).content).toBe(CONTENT);
  const next = JSON.stringify({ workbook: 2 });
  await writeKept(file, next);
  expect(readKept(file).content).toBe(next);
});

test.each([
  ["cut off", (text: string) => text.slice(0, text.length / 2), "it is cut off or not JSON"],
  ["empty", () => "", "it is cut off or not JSON"],
  ["changed inside", (text: string) => text.replace("monstera", "pothosxx"), "its content is not what was written"],
  ["of another make", () => '{"rows": []}', "its format is"],
  ["no object", () => "null", "cannot be read"],
])("a file that is %s is set aside, byte for byte, with a sentence", async (_what, spoil, why) => {
  await writeKept(file, CONTENT);
  const spoilt = spoil(readFileSync(file, "utf8"));
  writeFileSync(file, spoilt);
  const { content, notice } = readKept(file);
  expect(content).toBe(null);
  expect(notice).toContain(why === "cannot be read" ? "could not be read" : why);
  expect(notice).toContain("workbench.unreadable-1.json");
  expect(existsSync(file)).toBe(false);
  expect(readFileSync(join(folder, "workbench.unreadable-1.json"), "utf8")).toBe(spoilt);
});

test("a second unreadable file does not take the place of the first", () => {
  writeFileSync(file, "one");
  readKept(file);
  writeFileSync(file, "two");
  expect(readKept(file).notice).toContain("workbench.unreadable-2.json");
  expect(readFileSync(join(folder, "workbench.unreadable-1.json"), "utf8")).toBe("one");
});

test("a fresh start sets the kept sheet aside and says where", async () => {
  expect(startFresh(file)).toBe(null);
  await writeKept(file, CONTENT);
  expect(startFresh(file)).toContain("workbench.before-fresh-1.json");
  expect(readKept(file).content).toBe(null);
  expect(readKept(join(folder, "workbench.before-fresh-1.json")).content).toBe(CONTENT);
});
