/** Makes dist/: the files that go into a sheet, and the sample workbook. */

import { copyFile, mkdir, rename, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import { functionHelp } from "../functions/catalogue.ts";
import { REFERENCE } from "../functions/reference.ts";
import { writeSampleWorkbook } from "./sample-xlsx.ts";
import { BUNDLE_NAME, stubs } from "./stubs.ts";

const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");

/** Writes beside the file and renames, so that nobody who reads dist/ meanwhile sees half a file. */
async function place(file: string, write: (temporary: string) => Promise<unknown>): Promise<void> {
  const temporary = path.join(path.dirname(file), `.${process.pid}-${path.basename(file)}`);
  try {
    await write(temporary);
    await rename(temporary, file);
  } finally {
    await rm(temporary, { force: true });
  }
}

async function bundled(options: esbuild.BuildOptions): Promise<string> {
  const result = await esbuild.build({
    bundle: true,
    minify: true,
    charset: "utf8",
    legalComments: "none",
    logLevel: "warning",
    absWorkingDir: ROOT,
    ...options,
    write: false,
  });
  const [file] = result.outputFiles;
  if (file === undefined) throw new Error("The bundler gave no file.");
  return file.text;
}

/** Code.js: the bundle bound to one name, then the stubs the host looks for. */
async function serverCode(): Promise<string> {
  const bundle = await bundled({
    entryPoints: ["src/host/main.ts"],
    format: "iife",
    globalName: BUNDLE_NAME,
    target: "es2019",
    platform: "neutral",
    mainFields: ["module", "main"],
  });
  return `${bundle}\n${stubs(REFERENCE)}`;
}

/** Sidebar.html: script and style inside the one file. */
async function panelPage(): Promise<string> {
  const script = await bundled({
    entryPoints: ["sidebar/main.tsx"],
    format: "iife",
    target: "es2020",
    jsx: "automatic",
    jsxImportSource: "preact",
    loader: { ".css": "empty" },
    define: { "process.env.NODE_ENV": '"production"' },
  });
  const style = await bundled({ entryPoints: ["sidebar/panel.css"] });
  for (const [text, end] of [
    [script, /<\/script|<!--/i],
    [style, /<\/style/i],
  ] as const) {
    const found = end.exec(text);
    if (found) throw new Error(`The panel holds "${found[0]}", which would break the page it is put into.`);
  }
  // No "<" in it, so no text of the help can end or begin a tag.
  const formulas = JSON.stringify(functionHelp()).replace(/</g, "\\u003c");
  return [
    "<!doctype html>",
    '<html lang="en">',
    "<head>",
    '<meta charset="utf-8">',
    '<base target="_top">',
    "<title>Stillroot</title>",
    `<style>${style}</style>`,
    "</head>",
    "<body>",
    '<div id="panel"></div>',
    `<script type="application/json" id="formulas">${formulas}</script>`,
    `<script>${script}</script>`,
    "</body>",
    "</html>",
    "",
  ].join("\n");
}

/** Builds everything into `outDir`. */
export async function build(outDir: string): Promise<void> {
  await mkdir(outDir, { recursive: true });
  const [code, page] = await Promise.all([serverCode(), panelPage()]);
  await place(path.join(outDir, "Code.js"), (file) => writeFile(file, code));
  await place(path.join(outDir, "Sidebar.html"), (file) => writeFile(file, page));
  await place(path.join(outDir, "appsscript.json"), (file) => copyFile(path.join(ROOT, "appsscript.json"), file));
  await place(path.join(outDir, "sample-sheet.xlsx"), writeSampleWorkbook);
}

if (process.argv[1] !== undefined && path.resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  await build(path.join(ROOT, "dist"));
}
