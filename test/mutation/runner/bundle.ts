/** The test files and what they import as one script that can be run again and again, a file at a time. */

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { pathToFileURL } from "node:url";
import vm from "node:vm";
import { build, type Metafile } from "esbuild";

export interface Bundle {
  /** Test files that reach one of these files, those that import one directly first. */
  near(changed: readonly string[]): string[];
  /** A fresh evaluation, with the setup files loaded; load(file) evaluates one more. `api` stands for "vitest". */
  open(api: unknown): (file: string) => void;
}

/** How many imports lie between a file and the nearest of `targets`, for all that there is a way from. */
function distances(inputs: Metafile["inputs"], targets: ReadonlySet<string>): Map<string, number> {
  const importers = new Map<string, string[]>();
  for (const [file, { imports }] of Object.entries(inputs)) {
    for (const { path: imported } of imports) importers.set(imported, [...(importers.get(imported) ?? []), file]);
  }
  const far = new Map<string, number>([...targets].map((file) => [file, 0]));
  const queue = [...targets];
  for (let file = queue.shift(); file !== undefined; file = queue.shift()) {
    for (const importer of importers.get(file) ?? []) {
      if (far.has(importer)) continue;
      far.set(importer, (far.get(file) ?? 0) + 1);
      queue.push(importer);
    }
  }
  return far;
}

/** `setup` runs before the others at each load; all paths are relative to the working folder. */
export async function bundleOf(tests: readonly string[], setup: readonly string[]): Promise<Bundle> {
  const line = (file: string): string => `${JSON.stringify(file)}: () => require(${JSON.stringify(`./${file}`)})`;
  const contents = `module.exports = { ${[...setup, ...tests].map(line).join(", ")} };`;
  const { outputFiles, metafile } = await build({
    stdin: { contents, resolveDir: process.cwd(), loader: "js" },
    absWorkingDir: process.cwd(),
    bundle: true,
    write: false,
    metafile: true,
    platform: "node",
    format: "cjs",
    target: "node20",
    packages: "external",
    jsx: "automatic",
    jsxImportSource: "preact",
    logLevel: "error",
    plugins: [
      {
        name: "in-process",
        setup(on) {
          on.onResolve({ filter: /^vitest$/ }, () => ({ path: "vitest", namespace: "shim" }));
          on.onLoad({ filter: /.*/, namespace: "shim" }, () => ({ contents: "module.exports = vitestApi;" }));
          on.onLoad({ filter: /\.tsx?$/ }, ({ path: file }) => ({
            contents: readFileSync(file, "utf8").replaceAll(
              "import.meta.url",
              JSON.stringify(pathToFileURL(file).href),
            ),
            loader: file.endsWith("x") ? "tsx" : "ts",
          }));
        },
      },
    ],
  });
  const text = outputFiles[0]?.text ?? "";
  const script = new vm.Script(`(function (module, exports, require, vitestApi) {${text}\n})`, {
    filename: path.resolve("bundled-tests.js"),
  });
  const require = createRequire(path.resolve("package.json"));
  return {
    near: (changed) => {
      const far = distances(metafile.inputs, new Set(changed));
      const steps = (file: string): number => far.get(file) ?? Number.POSITIVE_INFINITY;
      return tests.filter((file) => far.has(file)).sort((a, b) => steps(a) - steps(b));
    },
    open: (api) => {
      const module = { exports: {} as Record<string, () => void> };
      (script.runInThisContext() as (...given: unknown[]) => void)(module, module.exports, require, api);
      for (const file of setup) module.exports[file]?.();
      return (file) => module.exports[file]?.();
    },
  };
}
