/** A formula as it is typed into a sheet that writes decimals with a comma. */

/**
 * Arguments are then parted by semicolons, cells of a row in braces by backslashes, and decimals get a comma; what
 * stands in quotes stays. Common practice in such sheets; the host's own help says it of argument separators.
 */
export function withDecimalCommas(formula: string): string {
  let braces = 0;
  return formula.replace(/"[^"]*"|'[^']*'|\d\.\d|[{},]\s*/g, (part) => {
    const sign = part.charAt(0);
    if (sign === '"' || sign === "'") return part;
    if (sign === "{") braces++;
    else if (sign === "}") braces--;
    else if (sign === ",") return braces > 0 ? "\\" : part.replace(",", ";");
    else return part.replace(".", ",");
    return part;
  });
}
