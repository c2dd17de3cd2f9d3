/** The one place through which every call of a script to the host goes: counted, permitted or refused, and made to fail. */

/**
 * What the running script may do. "none": an add-on that was not yet allowed here, as in onOpen. "formula": a
 * custom function. "loading": the script's own top level, before any function runs. "full": anything else.
 */
export type Permission = "loading" | "none" | "formula" | "full";

export type CallKind = "read" | "write" | "service" | "ui";

export interface GateOptions {
  /** Sees the name of every call that reaches the spreadsheet before it is done; throw to make it fail undone. */
  readonly onCall?: (name: string, permission: Permission) => void;
  /** Sees it after it was done; throw to imitate an answer that was lost on the way. */
  readonly afterCall?: (name: string) => void;
  /** The same for the services beside the spreadsheet: the lock, properties, messages. */
  readonly onService?: (name: string) => void;
  readonly afterService?: (name: string) => void;
}

export class Gate {
  permission: Permission = "full";
  /** Sentences on things the host forgives in silence and that go wrong later. */
  readonly warnings: string[] = [];
  private unflushed = false;
  private readonly options: GateOptions;

  constructor(options: GateOptions) {
    this.options = options;
  }

  /** A call that reaches the spreadsheet, or a service beside it ("service", "ui": permitted or not, not counted). */
  reach<T>(name: string, kind: CallKind, act: () => T): T {
    this.permit(name, kind);
    if (kind === "ui") return act();
    if (kind === "service") {
      this.options.onService?.(name);
      const given = act();
      this.options.afterService?.(name);
      return given;
    }
    this.options.onCall?.(name, this.permission);
    const answer = act();
    if (kind === "write") this.unflushed = true;
    this.options.afterCall?.(name);
    return answer;
  }

  flush(): void {
    this.reach("SpreadsheetApp.flush", "read", () => {
      this.unflushed = false;
    });
  }

  lockReleased(): void {
    if (this.unflushed)
      this.warnings.push("A lock was released before SpreadsheetApp.flush(): others may read old rows.");
  }

  private permit(name: string, kind: CallKind): void {
    const { permission } = this;
    if (permission === "full") return;
    if (permission === "formula" && (kind === "read" || kind === "service")) return;
    if (permission === "none" && kind === "ui") return;
    const method = name.replace(/^.*\./, "");
    if (permission === "formula") throw new Error(`You do not have permission to call ${method}`);
    throw new Error(`You do not have permission to call ${method}. Authorization is required to perform that action.`);
  }
}

/** Asked for by inspectors and by `await`, never by a script that means the host. */
const ASKED_OF_ANY_OBJECT = new Set([
  "then",
  "toJSON",
  "constructor",
  "valueOf",
  "nodeType",
  "tagName",
  "asymmetricMatch",
]);

/**
 * An object of the host with the methods given; any other name throws "not imitated: Class.method". Every
 * method is held against the host's own types. Use: `imitate<Sheet>()("Sheet", { getName: … })`.
 */
export function imitate<T extends object>() {
  return <K extends keyof T>(name: string, methods: Pick<T, K>): T =>
    new Proxy(methods, {
      get(target, key) {
        if (typeof key === "symbol" || key in target) return Reflect.get(target, key);
        if (key === "toString") return () => name;
        if (ASKED_OF_ANY_OBJECT.has(key) || key.startsWith("@@") || key.startsWith("$$")) return undefined;
        throw new Error(`not imitated: ${name}.${key}`);
      },
      set(_target, key) {
        throw new Error(`not imitated: setting ${name}.${String(key)}`);
      },
    }) as T;
}
