/** The page's own script and style, bundled once and kept until something it is made of changes. */

import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build, version as esbuildVersion } from "esbuild";

export interface PageBundle {
  readonly script: string;
  readonly style: string;
}

function sourcesUnder(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((file) => join(folder, file))
    .filter((file) => statSync(file).isFile())
    .sort();
}

/** Changes whenever a source of the page, the bundler or any installed package does. */
function keyOf(root: string, folders: readonly string[]): string {
  const hash = createHash("sha256").update(esbuildVersion);
  hash.update(readFileSync(join(root, "package-lock.json")));
  for (const folder of folders) {
    for (const file of sourcesUnder(folder)) hash.update(file).update(readFileSync(file));
  }
  return hash.digest("hex").slice(0, 20);
}

/** Files of the bundle, made if they are not there. `root` is the project's folder. */
export async function pageBundle(root: string): Promise<PageBundle> {
  const here = join(root, "sample-sheet", "workbench");
  const cache = join(root, ".cache", "workbench");
  const key = keyOf(root, [join(here, "page"), join(here, "standin")]);
  const script = join(cache, `${key}.js`);
  const style = join(cache, `${key}.css`);
  if (!existsSync(script) || !existsSync(style)) {
    mkdirSync(cache, { recursive: true });
    const result = await build({
      entryPoints: [join(here, "page", "main.ts"), join(here, "page", "page.css")],
      outdir: cache,
      bundle: true,
      minify: true,
      write: false,
      format: "iife",
      target: "es2022",
      define: { "process.env.NODE_ENV": '"production"' },
      loader: { ".woff": "dataurl", ".woff2": "dataurl", ".ttf": "dataurl", ".svg": "dataurl", ".png": "dataurl" },
      logLevel: "warning",
      absWorkingDir: root,
    });
    for (const [ending, file] of [
      [".css", style],
      [".js", script],
    ] as const) {
      const made = result.outputFiles.find((output) => output.path.endsWith(ending));
      if (!made) throw new Error(`The bundle of the workbench page has no ${ending} file.`);
      const beside = `${file}.${process.pid}.part`;
      writeFileSync(beside, made.contents);
      renameSync(beside, file);
    }
  }
  return { script, style };
}
