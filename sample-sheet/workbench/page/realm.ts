/** A realm of its own for dist/Code.js: an iframe with the host's services as globals and without what the host lacks. */

import type { Permission } from "../standin/gate.ts";
import type { StandIn } from "../standin/host.ts";

/** Absent on the host; a script that leans on them must fail here too. */
const ABSENT = [
  "fetch",
  "XMLHttpRequest",
  "WebSocket",
  "setTimeout",
  "setInterval",
  "setImmediate",
  "queueMicrotask",
  "requestAnimationFrame",
  "URL",
  "URLSearchParams",
  "TextEncoder",
  "TextDecoder",
  "atob",
  "btoa",
  "crypto",
  "structuredClone",
  "performance",
  "localStorage",
  "sessionStorage",
  "indexedDB",
];

type RealmWindow = Window & typeof globalThis & Record<string, unknown>;
type Callable = (...args: readonly unknown[]) => unknown;

export class Realm {
  private readonly window: RealmWindow;
  private readonly own: ReadonlySet<string>;
  private host: StandIn | null = null;

  /** An empty realm; Dates can be made in it before any script is loaded. */
  constructor() {
    const frame = document.createElement("iframe");
    frame.className = "realm";
    frame.title = "Script";
    document.body.append(frame);
    this.window = frame.contentWindow as RealmWindow;
    this.own = new Set(Object.getOwnPropertyNames(this.window));
  }

  makeDate = (instantMs: number): Date => new this.window.Date(instantMs);

  /** Rows as arrays of this realm, as a script on the host would get them. */
  rows(values: readonly (readonly unknown[])[]): unknown[][] {
    return this.window.Array.from(values, (row) => this.window.Array.from(row));
  }

  /** Loads the script with the host's services as its globals; its top level may call none of them. */
  async load(host: StandIn, source: string): Promise<void> {
    this.host = host;
    Object.assign(this.window, host.services);
    for (const name of ABSENT) Object.defineProperty(this.window, name, { value: undefined, configurable: true });
    const script = this.window.document.createElement("script");
    script.src = source;
    const loaded = new Promise<void>((resolve, reject) => {
      script.onload = () => resolve();
      script.onerror = () => reject(new Error(`${source} could not be loaded.`));
      this.window.onerror = (message) => reject(new Error(`${source}: ${String(message)}`));
    });
    const done = host.hold("loading");
    try {
      this.window.document.head.append(script);
      await loaded;
    } finally {
      done();
    }
  }

  /** Functions anyone may call: those the script left as globals, but for names that end with an underscore. */
  publicNames(): readonly string[] {
    return Object.getOwnPropertyNames(this.window).filter(
      (name) => !this.own.has(name) && !name.endsWith("_") && typeof this.window[name] === "function",
    );
  }

  run(name: string, args: readonly unknown[], permission: Permission): unknown {
    if (!this.publicNames().includes(name) || this.host === null) throw new Error(`Script function not found: ${name}`);
    return this.host.as(permission, () => (this.window[name] as Callable)(...args));
  }
}
