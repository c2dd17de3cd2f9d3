/** Before any test: build dist/ from the working tree, so that bundle and browser tests see what is there. */

import { execFileSync } from "node:child_process";

export default function setup(): void {
  execFileSync("npm", ["run", "--silent", "build"], { stdio: "inherit" });
}
