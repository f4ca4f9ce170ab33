import { choosePage } from '../state/actions/lookAt';
import type { CommandGroup } from './command';
import { goTo, press } from './goTo';

/** The tabs of fit-up in their order, with what else one might call them. */
const TABS = [
  { id: 'clearance', label: 'Clearance of parts', words: ['touch', 'gap', 'margin', 'collision', 'fit-up'] },
  { id: 'joints', label: 'Tilt of joints', words: ['bind', 'rod end', 'angle', 'fit-up'] },
  { id: 'stroke', label: 'Stroke, shafts, hoses and threads', words: ['damper', 'plunge', 'spring', 'studs', 'fit-up'] },
  { id: 'loads', label: 'Loads in the links', words: ['force', 'buckling', 'bending', 'push', 'pull', 'load case', 'fit-up'] },
  {
    id: 'keepOut',
    label: 'Keep-out: space that parts sweep',
    words: ['stl', 'envelope', 'duct', 'bracket', 'template', 'true scale', 'dxf', 'pdf', 'fit-up'],
  },
] as const;

/** What fit-up shows, from anywhere; and on its page what can be done there. */
export const fitUp: CommandGroup = ({ store }, { page }) => [
  ...TABS.map(({ id, label, words }, place) => ({
    id: `fitup.${id}`,
    label,
    where: 'Fit-up',
    words,
    run: () => {
      choosePage(store, 'fitup');
      press(`.fituptabs button:nth-child(${place + 1})`, '.fituptabs');
    },
  })),
  {
    id: 'fitup.parts',
    label: 'Parts, joints and hoses of the car',
    where: 'Points',
    words: ['stl', 'mesh', 'shape', 'fit-up'],
    run: () => {
      choosePage(store, 'points');
      press('.pointpanel > .pagehead .segments button:last-child', '.pointpanel > .pagehead .segments');
    },
  },
  ...(page === 'fitup'
    ? [
        { id: 'fitup.rows', label: 'Go to the chosen row', where: 'Fit-up', run: () => goTo('.fitupanswers .pickrow:checked') },
        {
          id: 'fitup.bench',
          label: 'Take the position of the row to the bench',
          where: 'Fit-up',
          run: () => press('[data-press="to-bench"]', '[data-press="to-bench"]'),
        },
        {
          id: 'fitup.csv',
          label: 'Save the table of fit-up as CSV',
          where: 'Fit-up',
          run: () => press('.fitupask [aria-label$="as CSV"]', '.fitupask [aria-label$="as CSV"]'),
        },
        {
          id: 'fitup.copy',
          label: 'Copy the table of fit-up',
          where: 'Fit-up',
          run: () => press('.fitupask [aria-label^="Copy"]', '.fitupask [aria-label^="Copy"]'),
        },
      ]
    : []),
];
