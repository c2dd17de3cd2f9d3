/** Names and words of the custom functions, read from the JSDoc in dist/Code.js, as the host reads them. */

import { FunctionType, type IFunctionInfo } from "@univerjs/preset-sheets-core";

/** `code`: the text of dist/Code.js. Only functions with @customfunction are for cells. */
export function functionWords(code: string): readonly IFunctionInfo[] {
  const found: IFunctionInfo[] = [];
  for (const [, comment = "", name = ""] of code.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*function\s+(\w+)\s*\(/g)) {
    if (!comment.includes("@customfunction") || name.endsWith("_")) continue;
    const text = comment.replace(/^\s*\* ?/gm, "").trim();
    const summary = text.split(/^@/m)[0]?.trim() ?? "";
    const params = [...text.matchAll(/^@param\s+\{([^}]*)\}\s+(\w+)\s+(.*)$/gm)];
    found.push({
      functionName: name,
      functionType: FunctionType.User,
      description: summary,
      abstract: summary,
      functionParameter: params.map(([, type = "", parameter = "", help = ""]) => ({
        name: parameter,
        detail: help,
        example: "",
        require: /^optional/i.test(help) ? 0 : 1,
        repeat: 0,
        kind: type,
      })),
    });
  }
  return found;
}
