/** The browser for the tests: the one that is there, else Debian's package (as root), else Playwright's own. */

import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { type Browser, chromium } from "playwright-core";

const PLACES = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

function installed(): string | null {
  const named = process.env.CHROMIUM;
  if (named !== undefined && named !== "") {
    if (!existsSync(named)) throw new Error(`CHROMIUM names "${named}", and there is no such file.`);
    return named;
  }
  const own = chromium.executablePath();
  return PLACES.find((path) => existsSync(path)) ?? (own !== "" && existsSync(own) ? own : null);
}

/** Makes sure that a browser is there; says what it does, since it may take a minute. */
export function ensureBrowser(): string {
  const there = installed();
  if (there !== null) return there;
  const isRoot = process.getuid?.() === 0;
  if (isRoot && existsSync("/usr/bin/apt-get")) {
    console.log("No browser found: installing Debian's chromium.");
    execFileSync("apt-get", ["update", "-qq"], { stdio: "inherit" });
    execFileSync("apt-get", ["install", "-y", "-qq", "chromium"], {
      stdio: ["ignore", "ignore", "inherit"],
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    });
  } else {
    console.log("No browser found: asking Playwright for its Chromium.");
    execFileSync("npx", ["playwright-core", "install", "chromium"], { stdio: "inherit" });
  }
  const now = installed();
  if (now === null) throw new Error("A browser was installed but is not found. Name one in the variable CHROMIUM.");
  return now;
}

/** Starts the browser without any traffic of its own; the flags without which a closed network breaks it. */
export function launch(): Promise<Browser> {
  return chromium.launch({
    executablePath: ensureBrowser(),
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}
