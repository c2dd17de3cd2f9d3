/** A drawing by uPlot in the width of the panel, with its words for those who do not see it, in the colours of the panel. */

import type { JSX } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import uPlot from "uplot";

/** Colours as the panel has them now, light or dark. */
export interface PlotLook {
  readonly ink: string;
  readonly soft: string;
  readonly rule: string;
  readonly water: string;
  readonly feeds: string;
  readonly warn: string;
  readonly font: string;
}

function lookOf(element: Element): PlotLook {
  const style = getComputedStyle(element);
  const colour = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    ink: colour("ink"),
    soft: colour("soft"),
    rule: colour("rule"),
    water: colour("water"),
    feeds: colour("feeds"),
    warn: colour("warn"),
    font: `12px ${style.fontFamily}`,
  };
}

/** An axis in the panel's colours; `values` says the ticks. */
export function plotAxis(look: PlotLook, axis: uPlot.Axis): uPlot.Axis {
  return {
    stroke: look.soft,
    font: look.font,
    grid: { stroke: look.rule, width: 1 },
    ticks: { stroke: look.rule, width: 1, size: 4 },
    ...axis,
  };
}

export interface PlotProps {
  /** What there is to see, in a sentence; the numbers belong into a table beside it. */
  readonly label: string;
  readonly height: number;
  /** Changes when `data` or what `options` draw does. */
  readonly version: unknown;
  readonly data: uPlot.AlignedData;
  readonly options: (look: PlotLook) => Omit<uPlot.Options, "width" | "height">;
}

export function Plot(props: PlotProps): JSX.Element {
  const place = useRef<HTMLDivElement>(null);
  const [dark, turn] = useState(false);
  const latest = useRef(props);
  latest.current = props;
  const { height, label, version } = props;
  useLayoutEffect(() => {
    const scheme = matchMedia("(prefers-color-scheme: dark)");
    const heard = (): void => turn(scheme.matches);
    heard();
    scheme.addEventListener("change", heard);
    return () => scheme.removeEventListener("change", heard);
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: drawn anew when the data or the colours are others.
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return;
    const { data, options } = latest.current;
    const plot = new uPlot(
      {
        legend: { show: false },
        cursor: { show: false },
        ...options(lookOf(element)),
        width: element.clientWidth,
        height,
      },
      data,
      element,
    );
    return () => plot.destroy();
  }, [version, dark, height]);
  return <div class="plot" role="img" aria-label={label} ref={place} style={{ minHeight: `${height}px` }} />;
}
