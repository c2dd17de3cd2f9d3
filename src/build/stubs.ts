/** The top-level functions of Code.js: one stub per custom function with the help the host shows, and the entry points. */

import type { Argument } from "../functions/record.ts";
import type { FunctionReference } from "../functions/words.ts";

/** What the menu, the triggers and the sidebar call; all other public globals are custom functions. */
export const ENTRY_POINTS = [
  "onOpen",
  "onInstall",
  "openPanel",
  "setUpTabs",
  "makeBoardTabs",
  "refreshToday",
  "archiveOldCare",
  "panelRequest",
] as const;

/** Name the bundle is bound to; it is an object, so no cell and no sidebar can call it. */
export const BUNDLE_NAME = "Stillroot";

/** The host joins lines and shows the text as it is: one line per tag, nothing that could end the comment. */
function oneLine(text: string): string {
  const line = text.replace(/\s+/g, " ").trim();
  if (line.includes("*/")) throw new Error(`A help text holds "*/", which would end the comment: ${line}`);
  return line;
}

function hostType(argument: Argument): string {
  switch (argument.kind) {
    case "number":
      return "number";
    case "day":
      return "date";
    case "table":
    case "rows":
    case "numbers":
    case "key":
      return "range";
    case "yesNo":
      return "boolean";
    case "label":
    case "choice":
    case "text":
    case "heading":
      return "string";
  }
}

/** The stub of one custom function with its JSDoc directly above, as the host wants it. */
export function formulaStub(record: FunctionReference): string {
  const names = record.args.map((argument) => argument.name).join(", ");
  const params = record.args.map(
    (argument) => ` * @param {${hostType(argument)}} ${argument.name} ${oneLine(argument.help)}`,
  );
  return [
    "/**",
    ` * ${oneLine(record.summary)}`,
    " *",
    ...params,
    " * @customfunction",
    " */",
    `function ${record.name}(${names}) { return ${BUNDLE_NAME}.call("${record.name}", arguments); }`,
  ].join("\n");
}

/** All stubs: custom functions first, then the entry points. */
export function stubs(reference: readonly FunctionReference[]): string {
  const entries = ENTRY_POINTS.map((name) => `function ${name}(e) { return ${BUNDLE_NAME}.${name}(e); }`);
  return `${[...reference.map(formulaStub), ...entries].join("\n\n")}\n`;
}
