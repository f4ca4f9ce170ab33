import { fanItems, fanPlaces } from '../fitup/joints/jointFan';
import type { OverlayContent } from './overlayContent';
import { movedItem } from './movedItem';
import type { OverlayItem } from './overlayTypes';

/** The fan that the maker of every joint allows, its bolt, and how far it is tilted now. */
export const tiltItems = ({ axles, tilts }: Pick<OverlayContent, 'axles' | 'tilts'>): readonly OverlayItem[] =>
  tilts.flatMap(({ axle, fan, words }) => {
    const content = axles.find(({ name }) => name === axle);
    if (!content) return [];
    const { toGround } = content.frame;
    const label: OverlayItem = {
      kind: 'label',
      text: words,
      at: fanPlaces(fan, fan.tilt).tilt,
      reach: [34, 26],
      plated: true,
      ...(fan.tilt > fan.rated && { strong: true }),
    };
    return [...fanItems(fan, fan.tilt), label].map((item) => movedItem(item, toGround));
  });
