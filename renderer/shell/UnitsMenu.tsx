import { Popover } from '../look/controls/Popover';
import { Segments } from '../look/controls/Segments';
import { useUnits } from '../look/units';
import { prefer } from '../state/actions/prefer';
import { UNIT_PREFERENCES } from '../state/chosenUnits';
import { unitWords, type UnitChoice } from '../units/unitChoice';
import { useWindow } from './benchContext';

const CHOICES = [
  {
    of: 'length',
    label: 'Lengths',
    options: [
      { name: 'mm', label: 'mm' },
      { name: 'in', label: 'inches' },
    ],
  },
  {
    of: 'angle',
    label: 'Angles',
    options: [
      { name: 'degrees', label: 'degrees' },
      { name: 'minutes', label: 'degrees, minutes' },
    ],
  },
  {
    of: 'toe',
    label: 'Toe',
    options: [
      { name: 'angle', label: 'angle' },
      { name: 'rim', label: 'across the rim' },
    ],
  },
  {
    of: 'force',
    label: 'Forces and rates',
    options: [
      { name: 'newton', label: 'N, N/mm' },
      { name: 'pound', label: 'lb, lb/in' },
    ],
  },
] as const satisfies readonly {
  of: keyof UnitChoice;
  label: string;
  options: readonly { name: UnitChoice[keyof UnitChoice]; label: string }[];
}[];

/** More than "mm · degrees" and its like: short sooner, so that the names in the header stay whole for longer. */
const FEW_LETTERS = 16;

/** The same where there is little room: signs for words. */
const shortUnitWords = (words: string): string =>
  words.replace('degrees, minutes', '°′').replace('degrees', '°').replace('toe at the rim', 'rim');

/** The units that the window reads and types in, and the choice of others. The car file keeps its own. */
export const UnitsMenu = () => {
  const { store } = useWindow();
  const units = useUnits();
  // what cannot be read across the rim is not said to be
  const lacksRim = units.toe === 'rim' && units.toeDiameter === null;
  const words = unitWords(lacksRim ? { ...units, toe: 'angle' } : units);
  return (
    <Popover
      label="Units"
      role="group"
      className="unitsmenu"
      button={{
        className: `button bare unitline${words.length > FEW_LETTERS ? ' many' : ''}`,
        label: `Units: ${words}`,
        title: `Units to read and type in: ${words}${lacksRim ? '. Toe across the rim: this axle has no diameter to read it at' : ''}`,
        content: (
          <>
            <span className="ellipsis wholewords">{words}</span>
            <span className="ellipsis shortwords">{shortUnitWords(words)}</span>
          </>
        ),
      }}
    >
      {CHOICES.map(({ of, label, options }) => (
        <div key={of} className="unitchoice">
          <span>{label}</span>
          <Segments
            label={label}
            options={options}
            chosen={units[of]}
            onChoose={(word) => prefer(store, UNIT_PREFERENCES[of].name, word)}
          />
        </div>
      ))}
      {lacksRim && (
        <p className="quiet">
          Toe stays an angle: the car file gives this axle no diameter to read it at. It is given under Points, Axle.
        </p>
      )}
      <p className="quiet">The car file keeps its own units; a field also takes others when they are typed: 0.2 in, 5 mm, 12′.</p>
    </Popover>
  );
};
