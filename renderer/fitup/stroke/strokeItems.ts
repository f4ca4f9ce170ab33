import type { PlacedCorner, Vector } from '../../../geometry/index';
import type { OverlayItem } from '../../viewport/overlayTypes';
import { NOTHING_SHOWN, type Shown } from '../view/FitUpView';
import type { StrokeLine } from './strokeLines';

const middle = (a: Vector, b: Vector): Vector => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
/** How much of the corner is worth seeing around what is chosen [mm]. */
const REACH = 46;

/** The two ends between which a line is measured, on the corner as it is drawn; null where they have no one place. */
const endsOf = (
  { kind, of }: Pick<StrokeLine, 'kind' | 'of'>,
  corner: PlacedCorner,
  spans: Readonly<Record<string, readonly [Vector, Vector]>>,
  rod: string | null,
): readonly [Vector, Vector] | null => {
  const pair = (found: { readonly upper: Vector; readonly lower: Vector } | null): readonly [Vector, Vector] | null =>
    found && [found.upper, found.lower];
  const strut: readonly [Vector, Vector] | null = corner.strut && [corner.strut.top, corner.strut.foot];
  switch (kind) {
    case 'damper':
      return pair(corner.damper) ?? strut;
    case 'spring':
      return pair(corner.spring) ?? strut;
    case 'bar':
      return corner.bar && [corner.bar.armEnd, corner.bar.linkEnd];
    case 'span':
      return spans[of] ?? null;
    case 'thread': {
      if (rod === 'barLink') return corner.bar && [corner.bar.armEnd, corner.bar.linkEnd];
      const found = corner.rods.find(({ name }) => name === rod);
      return found ? [found.inner, found.outer] : null;
    }
    case 'shaft':
      return null;
  }
};

/** What is chosen of the stroke, drawn on the corner: between what it is measured, and what is found there. */
export const strokeShown = (
  line: Pick<StrokeLine, 'kind' | 'of' | 'name'>,
  words: string,
  rod: string | null,
  corner: PlacedCorner,
  spans: Readonly<Record<string, readonly [Vector, Vector]>>,
): Shown => {
  const ends = endsOf(line, corner, spans, rod);
  if (!ends) {
    const at = corner.wheelCentre;
    const isShaft = line.kind === 'shaft';
    const items: readonly OverlayItem[] = [{ kind: 'label', text: words, at, reach: [36, -40], plated: true, strong: true }];
    return { ...NOTHING_SHOWN, about: isShaft ? ['driveShaft'] : [], items, focus: { at, reach: REACH, square: null } };
  }
  const at = middle(ends[0], ends[1]);
  return {
    ...NOTHING_SHOWN,
    items: [
      { kind: 'line', className: 'strokehalo', points: ends },
      { kind: 'line', className: 'strokeline', points: ends },
      { kind: 'mark', className: 'strokeend', shape: 'dot', at: ends[0] },
      { kind: 'mark', className: 'strokeend', shape: 'dot', at: ends[1] },
      { kind: 'label', text: words, at, reach: [48, -30], plated: true, strong: true },
    ],
    focus: { at, reach: REACH, square: null },
  };
};
