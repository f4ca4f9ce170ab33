import { nameOfKey } from '../adjusters/fitterWords';
import { chooseAxle, choosePage } from '../state/actions/lookAt';
import { choosePoint } from '../state/actions/viewing';
import type { CommandGroup } from './command';
import { press } from './goTo';

/** The tabs of the page of points in their order, but for the last, which is fit-up's. */
const TABS = [
  { id: 'points', label: 'Table of points', words: ['coordinates', 'pickup'] },
  { id: 'axle', label: 'Axle: wheel, spring, damper, bar, steering', words: ['rate', 'rack', 'tyre', 'travel'] },
  { id: 'adjusters', label: 'Adjusters of the axle: make, change, lock', words: ['range', 'step', 'slide', 'bolt', 'bushing'] },
  { id: 'car', label: 'Car: name, units of the file, masses, limits, tolerances', words: ['rename', 'weight', 'margin'] },
] as const;

const HEAD = '.pointpanel > .pagehead';

export const pointsPage: CommandGroup = ({ store }) => [
  ...TABS.map(({ id, label, words }, place) => ({
    id: `points.${id}`,
    label,
    where: 'Points',
    words,
    run: () => {
      choosePage(store, 'points');
      press(`${HEAD} .segments button:nth-child(${place + 1})`, `${HEAD} .segments`);
    },
  })),
  {
    id: 'points.coordinates',
    label: 'Coordinates in…',
    where: 'Points',
    words: ['csv', 'list', 'import', 'survey'],
    run: () => {
      choosePage(store, 'points');
      press(`${HEAD} .button[aria-expanded="false"]`, HEAD);
    },
  },
];

/** Every point of the car, chosen in the table and in the pictures. */
export const points: CommandGroup = ({ store }, _state, { document }) =>
  (['front', 'rear'] as const).flatMap((axle) =>
    Object.keys(document[axle]?.points ?? {}).map((point) => ({
      id: `point.${axle}.${point}`,
      label: `Go to the point ${nameOfKey(point).toLowerCase()}, ${axle}`,
      where: 'Points, point',
      words: [point],
      run: () => {
        choosePage(store, 'points');
        chooseAxle(store, axle);
        choosePoint(store, { axle, side: 'left', point });
      },
    })),
  );
