/**
 * Opens the workbench: the sample sheet in a browser, running the files of dist/.
 * Options: --fresh starts from the samples again; PORT in the environment, else 4173 or the next free one;
 * KEPT names another file to keep changes in, SAMPLES another folder of CSV files; BROWSER=none only prints the address.
 */

import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { pageBundle } from "./bundle.ts";
import { startFresh } from "./kept.ts";
import { createWorkbench, hasBuild, listen } from "./server.ts";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "..", "..");
const dist = join(root, "dist");
const keptFile = process.env.KEPT ?? join(root, "sample-sheet", ".kept", "workbench.json");

/** Asks the desktop for its browser; where there is none, the printed address is enough. */
function showPage(address: string): void {
  const openers: Partial<Record<NodeJS.Platform, readonly string[]>> = {
    darwin: ["open"],
    win32: ["cmd", "/c", "start"],
  };
  const [opener, ...rest] = openers[process.platform] ?? ["xdg-open"];
  const child = spawn(opener as string, [...rest, address], { stdio: "ignore", detached: true });
  child.on("error", () => {});
  child.unref();
}

if (!hasBuild(dist)) {
  console.error("There is no dist/ yet. Run npm run build first, or npm start, which does both.");
  process.exit(1);
}
const notice = process.argv.includes("--fresh") ? startFresh(keptFile) : null;
const server = createWorkbench({
  dist,
  samples: process.env.SAMPLES ?? join(root, "sample-sheet"),
  keptFile,
  bundle: await pageBundle(root),
  pageHtml: readFileSync(join(here, "page", "page.html"), "utf8"),
  notice,
});
const port = await listen(server, Number(process.env.PORT ?? 4173));
if (notice !== null) console.log(notice);
console.log(`The sample sheet is open at http://127.0.0.1:${port}/ (Ctrl+C ends it; changes are kept).`);
if (process.stdout.isTTY && process.env.BROWSER !== "none") showPage(`http://127.0.0.1:${port}/`);
