import { clockTime } from '../files/times';
import { chooseCar, openRecentPicked } from '../state/actions/chooseCar';
import { openHanded } from '../state/actions/openCar';
import { offerCopy } from '../state/actions/recoverCar';
import { saveCar, saveCarAs } from '../state/actions/saveCar';
import type { CommandMaker } from './command';
import { newCar } from './newCar';

export const filing: CommandMaker = ({ store, files }, state) => [
  ...(state.file
    ? [
        { id: 'file.save', label: 'Save', where: 'File', keys: 'Ctrl S', run: () => void saveCar(store, files) },
        { id: 'file.saveAs', label: 'Save as', where: 'File', keys: 'Ctrl Shift S', run: () => void saveCarAs(store, files) },
      ]
    : []),
  { id: 'file.open', label: 'Open a car file', where: 'File', keys: 'Ctrl O', run: () => void chooseCar(store, files) },
  { id: 'file.newCar', label: 'New car', where: 'Points', run: () => newCar(store) },
];

/** What was open before, and what was kept of it. */
export const earlier: CommandMaker = ({ store, files }, { files: { recent, copies } }) => [
  ...recent.map(({ id, name, folder }) => ({
    id: `recent.${id ?? name}`,
    label: `Open ${name.replace(/\.jounce\.json$/, '')} again`,
    where: folder ?? 'File, recent',
    words: ['recent'],
    run: () =>
      void (id === null ? openRecentPicked(store, files, name) : openHanded(store, files, { id, name, folder: folder ?? '' })),
  })),
  ...copies.map((copy) => ({
    id: `copy.${copy.id}`,
    label: `Kept copy of ${copy.title}, ${clockTime(copy.keptAt)}…`,
    where: 'File, kept copies',
    words: ['recovery'],
    run: () => void offerCopy(store, files, copy),
  })),
];
