import type { ReadingEntry } from '../../../geometry/index';
import { useUnits } from '../../look/units';
import type { MapPicture } from './mapPicture';
import { hasMarks, type MapMarks } from './mapSteps';
import { everyWords, written } from './mapWords';

interface LegendProps {
  readonly picture: MapPicture;
  readonly entry: ReadingEntry;
  readonly second: ReadingEntry | null;
  readonly marks: MapMarks;
}

/** What the signs of a map mean; only of those that are on it. */
export const Legend = ({ picture, entry, second, marks }: LegendProps) => {
  const units = useUnits();
  const { wanted, threshold } = marks;
  return (
    <ul className="maplegend">
      {picture.limits.length > 0 && (
        <li>
          <Key kind="forbidden" /> not allowed, the edge is the limit
        </li>
      )}
      {wanted && (
        <li>
          <Key kind="wanted" /> {entry.name.toLowerCase()} {written(wanted.value, entry, units)} ±{' '}
          {written(wanted.tolerance, entry, units)}
        </li>
      )}
      {picture.step > 0 && (
        <li>
          <Key kind="line" /> {entry.name.toLowerCase()}, {everyWords(picture.step, entry, units)}; stronger tone,{' '}
          {picture.isFalling ? 'more negative' : 'more'}
        </li>
      )}
      {second && picture.second && (
        <li>
          <Key kind="second" /> {second.name.toLowerCase()}
          {threshold ? ` ${threshold.sense} ${written(threshold.value, second, units)}, others` : ','}{' '}
          {everyWords(picture.second.step, second, units)}
        </li>
      )}
      <li>
        <Key kind="steps" /> real steps and marks
      </li>
      {hasMarks(marks) && (
        <li>
          <Key kind="fits" /> a step that fits all of it
        </li>
      )}
      {picture.blank.length > 0 && (
        <li>
          <Key kind="blank" /> no value there
        </li>
      )}
    </ul>
  );
};

const Key = ({ kind }: { readonly kind: 'forbidden' | 'wanted' | 'line' | 'second' | 'steps' | 'fits' | 'blank' }) => (
  <svg className="mapkey" width="34" height="15" viewBox="0 0 34 15" aria-hidden="true">
    <rect className="mapkeyground" x="0.5" y="0.5" width="33" height="14" />
    {kind === 'forbidden' && <path className="hatchline" d="M3,14L13,1M11,14L21,1M19,14L29,1M27,14L33,6" />}
    {kind === 'wanted' && (
      <>
        <path className="wantedband" d="M1,3H33V12H1z" />
        <path className="wantedline" d="M1,7.500H33" />
      </>
    )}
    {kind === 'line' && <path className="isoline" d="M1,7.500H33" />}
    {kind === 'second' && (
      <>
        <path className="thresholdline" d="M1,5H33" />
        <path className="secondline" d="M1,10.500H33" />
      </>
    )}
    {kind === 'steps' && [8, 17, 26].map((cx) => <circle key={cx} className="step" cx={cx} cy="7.5" r="1.7" />)}
    {kind === 'fits' && <circle className="stepfits" cx="17" cy="7.5" r="5" />}
    {kind === 'blank' && <path className="blank" d="M1,1H33V14H1z" />}
  </svg>
);
