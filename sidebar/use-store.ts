/** Reads a store in a component and draws it again when the store changes. */

import { useLayoutEffect, useState } from "preact/hooks";
import type { Store } from "./store.ts";

export function useStore<T>(store: Store<T>): T {
  const [, draw] = useState(0);
  const value = store.get();
  useLayoutEffect(() => {
    const heard = (): void => draw((count) => count + 1);
    // The store may have changed between the first drawing and this effect.
    if (!Object.is(store.get(), value)) heard();
    return store.listen(heard);
  }, [store, value]);
  return value;
}
