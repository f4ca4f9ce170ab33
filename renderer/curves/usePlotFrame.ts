import { useMemo, useState } from 'react';
import type { PlotContent } from './plotContent';
import type { PlotFrame } from './plotLines';
import { keepRange, mainRange, minuteStep, niceRange, rangeOfLines, valueStep, type Range } from './plotScale';
import type { Size } from './useSize';

/** Room beside the frame for numerals and letters [px]. */
const MARGIN = { left: 42, right: 18, top: 9, bottom: 21 } as const;
const LEAST_HEIGHT = 24;
/** Room for a numeral of the scale [px]. */
const NUMERAL = 22;

const valuesOf = ({ own, compared, measured, least }: PlotContent): Range | null => {
  const lines = [own, compared].flatMap((lines) =>
    lines ? [lines.left.values, ...(lines.right ? [lines.right.values] : [])] : [],
  );
  const points = measured.flatMap((set) =>
    set.points.flatMap(({ value, sigma }) => [value - (sigma ?? 0), value + (sigma ?? 0)]),
  );
  return rangeOfLines([mainRange(lines, least) ?? [], points]);
};

/**
 * The frame of a plot: fits its lines, stays while something is dragged and while the lines still fill it, and follows the
 * person's own zoom.
 * @param x - the part of the motion shown, in the units shown
 */
export const usePlotFrame = (size: Size, content: PlotContent, x: Range, isDragged: boolean) => {
  const parts = Math.max(1, Math.floor((size.height - MARGIN.top - MARGIN.bottom) / NUMERAL));
  const values = useMemo(() => valuesOf(content), [content]);
  const [fitted, setFitted] = useState<{ readonly range: Range; readonly parts: number } | null>(null);
  const [own, setOwn] = useState<Range | null>(null);
  const shown = fitted?.parts === parts ? fitted.range : null;
  const stepFor = content.isInMinutes ? minuteStep : valueStep;
  const next = keepRange(shown, values, isDragged, (low, high) => niceRange(low, high, content.least, parts, stepFor));
  if (size.height > 0 && next !== shown) setFitted({ range: next, parts });
  const [low, high] = own ?? next;
  const [from, to] = x;
  const frame = useMemo<PlotFrame | null>(() => {
    const bottom = size.height - MARGIN.bottom;
    if (size.width <= MARGIN.left + MARGIN.right || bottom - MARGIN.top < LEAST_HEIGHT) return null;
    return { left: MARGIN.left, right: size.width - MARGIN.right, top: MARGIN.top, bottom, x: [from, to], y: [low, high] };
  }, [size, from, to, low, high]);
  return { frame, isZoomed: own !== null, zoomTo: setOwn };
};
