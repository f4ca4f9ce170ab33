import { useMemo } from 'react';
import { useNextStep } from '../adjusters/useNextStep';
import { useUnits } from '../look/units';
import { useBench } from '../shell/benchContext';
import { LimitChips } from './LimitChips';
import { positionWords } from './positionWords';
import { hasOwnChanges, readingGroups, type ReadingGroup } from './readingRows';
import { ReadingLine } from './ReadingLine';
import { useLimitsByReading } from './useLimits';
import { Unreachable } from './Unreachable';

/** A reading that one step of the held part moves by this part of what matters is washed. */
const MOVED = 0.2;

const useMoved = (): ReadonlySet<string> => {
  const next = useNextStep();
  return useMemo(() => new Set(next?.effects.filter(({ weight }) => weight >= MOVED).map(({ key }) => key)), [next]);
};

interface GroupProps {
  readonly group: ReadingGroup;
  readonly moved: ReadonlySet<string>;
  readonly own: boolean;
  readonly limits: ReturnType<typeof useLimitsByReading>;
}

const Group = ({ group, moved, own, limits }: GroupProps) => (
  <tbody>
    <tr>
      <th scope="rowgroup" colSpan={own ? 5 : 4} className="groupname">
        {group.name}
      </th>
    </tr>
    {group.rows.map((row) => (
      <ReadingLine key={row.id} row={row} moved={moved.has(row.entry.key)} own={own} limits={limits.get(row.id)} />
    ))}
  </tbody>
);

/** Every reading of the axle at the position shown, and its difference from the compared setup. */
export const Readings = () => {
  const units = useUnits();
  const shown = useBench((state) => state.shown);
  const against = useBench((state) => state.shown?.against ?? null);
  const position = useBench((state) => positionWords(state.position, units));
  const groups = useMemo(() => (shown ? readingGroups(shown, units) : []), [shown, units]);
  const own = useMemo(() => hasOwnChanges(groups), [groups]);
  const againstWords = against === null ? 'no other setup to compare with' : `difference from ${against}`;
  const moved = useMoved();
  const limits = useLimitsByReading();
  return (
    <section className="column readings" aria-label="Readings">
      <div className="columnhead">
        <h2>Readings</h2>
        <span className="spread" />
        <LimitChips />
      </div>
      <Unreachable />
      {shown && (
        <div className="scroll" tabIndex={0} role="region" aria-label="Table of readings">
          <table className={own ? 'readingtable own' : 'readingtable'}>
            <thead>
              <tr>
                <th scope="col" className="at">
                  {position}
                </th>
                <th scope="col" className="number left">
                  Left
                </th>
                <th scope="col" className="number right">
                  Right
                </th>
                <th scope="col" className="number" title={againstWords} aria-label={againstWords}>
                  {own ? '± L' : <span className="againstname">{against === null ? 'no other setup' : `± ${against}`}</span>}
                </th>
                {own && (
                  <th scope="col" className="number" title={againstWords} aria-label={`${againstWords}, right`}>
                    ± R
                  </th>
                )}
              </tr>
            </thead>
            {groups.map((group) => (
              <Group key={group.name} group={group} moved={moved} own={own} limits={limits} />
            ))}
          </table>
        </div>
      )}
    </section>
  );
};
