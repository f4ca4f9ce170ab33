import { lazy, Suspense, useCallback, useMemo, useState } from 'react';
import { useNextStep } from '../adjusters/useNextStep';
import { useUnits } from '../look/units';
import { KeepTable } from '../lengths/KeepTable';
import { useBench, useWindow } from '../shell/benchContext';
import { prefer } from '../state/actions/prefer';
import { closedGroups, groupId, READINGS_CLOSED, shownGroups } from './chosenReadings';
import { LimitChips } from './LimitChips';
import { isMoved, lastReachedWords, positionWords, ridingWords } from './positionWords';
import { hasOwnChanges, readingGroups, type ReadingGroup } from './readingRows';
import { ReadingLine } from './ReadingLine';
import { readingTable } from './readingTable';
import { useLimitsByReading } from './useLimits';
import { Unreachable } from './Unreachable';

const ChooseReadings = lazy(async () => ({ default: (await import('./ChooseReadings')).ChooseReadings }));

/** A reading that one step of the held part moves by this part of what matters is washed. */
const MOVED = 0.2;

const useMoved = (): ReadonlySet<string> => {
  const next = useNextStep();
  return useMemo(() => {
    const effects = next?.kind === 'step' ? next.effects : [];
    return new Set(effects.filter(({ weight }) => weight >= MOVED).map(({ key }) => key));
  }, [next]);
};

interface GroupProps {
  readonly group: ReadingGroup;
  readonly moved: ReadonlySet<string>;
  readonly own: boolean;
  readonly limits: ReturnType<typeof useLimitsByReading>;
  readonly isClosed: boolean;
  readonly onClose: (name: string) => void;
  /** the reading whose explanation is open */
  readonly opened: string | null;
  readonly onOpen: (id: string) => void;
}

const Group = ({ group, moved, own, limits, isClosed, onClose, opened, onOpen }: GroupProps) => (
  <tbody>
    <tr>
      <th scope="rowgroup" colSpan={own ? 5 : 4} className="groupname">
        <button type="button" aria-expanded={!isClosed} onClick={() => onClose(group.name)}>
          <svg width="9" height="9" viewBox="0 0 9 9" aria-hidden="true">
            <path d={isClosed ? 'M2.5 1l4 3.5-4 3.500z' : 'M1 2.500h7L4.500 6.500z'} fill="currentColor" />
          </svg>
          {group.name}
          {isClosed && <span className="quiet">{group.rows.length}</span>}
        </button>
      </th>
    </tr>
    {!isClosed &&
      group.rows.map((row) => (
        <ReadingLine
          key={row.id}
          row={row}
          moved={moved.has(row.entry.key)}
          own={own}
          limits={limits.get(row.id)}
          isOpen={opened === row.id}
          onOpen={onOpen}
        />
      ))}
  </tbody>
);

/** Which group is folded, which explanation is open, and which readings are shown. */
const useTable = () => {
  const { store } = useWindow();
  const preferences = useBench((state) => state.preferences);
  const [opened, setOpened] = useState<string | null>(null);
  const closed = useMemo(() => closedGroups(preferences), [preferences]);
  const onOpen = useCallback((id: string) => setOpened((now) => (now === id ? null : id)), []);
  const onClose = useCallback(
    (name: string) => {
      const now = closedGroups(store.getState().preferences);
      const id = groupId(name);
      prefer(store, READINGS_CLOSED, now.has(id) ? [...now].filter((one) => one !== id) : [...now, id]);
    },
    [store],
  );
  return { preferences, opened, closed, onOpen, onClose };
};

/** Every reading of the axle at the position shown, and its difference from the compared setup. */
export const Readings = () => {
  const units = useUnits();
  const shown = useBench((state) => state.shown);
  const against = useBench((state) => state.shown?.against ?? null);
  const position = useBench(({ answer, shown: last, position: asked, isPlaying }) =>
    answer?.ok === false && last
      ? lastReachedWords(last.position, units)
      : (isPlaying ? ridingWords : positionWords)(asked, units),
  );
  const isAway = useBench(({ answer, position: asked, isPlaying }) => answer?.ok === false || isPlaying || isMoved(asked));
  const { preferences, opened, closed, onOpen, onClose } = useTable();
  const all = useMemo(() => (shown ? readingGroups(shown, units) : []), [shown, units]);
  const groups = useMemo(() => shownGroups(all, preferences), [all, preferences]);
  const [isChoosing, setChoosing] = useState(false);
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
                <th scope="col" className={isAway ? 'at moved' : 'at'}>
                  {position}
                </th>
                <th scope="col" className="number left">
                  Left
                </th>
                <th scope="col" className="number right">
                  Right
                </th>
                <th scope="col" className="number" title={againstWords} aria-label={againstWords}>
                  {own ? '± L' : <span className="againstname">{against === null ? '±' : `± ${against}`}</span>}
                </th>
                {own && (
                  <th scope="col" className="number" title={againstWords} aria-label={`${againstWords}, right`}>
                    ± R
                  </th>
                )}
              </tr>
            </thead>
            {groups.map((group) => (
              <Group
                key={group.name}
                group={group}
                moved={moved}
                own={own}
                limits={limits}
                isClosed={closed.has(groupId(group.name))}
                onClose={onClose}
                opened={opened}
                onOpen={onOpen}
              />
            ))}
          </table>
        </div>
      )}
      {shown && (
        <div className="tablefoot">
          <button
            type="button"
            className="button choosebutton"
            title="Which readings are shown, and in which order"
            onClick={() => setChoosing(true)}
          >
            Choose…
          </button>
          <span className="spread" />
          <KeepTable name="readings" isOfPosition table={() => readingTable(shown, groups, limits, units)} />
        </div>
      )}
      {isChoosing && (
        <Suspense>
          <ChooseReadings groups={all} onClose={() => setChoosing(false)} />
        </Suspense>
      )}
    </section>
  );
};
