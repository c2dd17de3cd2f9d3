/** Before any test: a browser, and dist/ built from the working tree, so that bundle and browser tests see what is there. */

import { execFileSync } from "node:child_process";
import { ensureBrowser } from "./browser/chromium.ts";

export default function setup(): void {
  ensureBrowser();
  execFileSync("npm", ["run", "--silent", "build"], { stdio: "inherit" });
}
