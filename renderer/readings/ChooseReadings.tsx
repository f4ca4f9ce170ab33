import { useLayoutEffect, useRef } from 'react';
import { Dialog } from '../look/controls/Dialog';
import { useBench, useWindow } from '../shell/benchContext';
import { prefer } from '../state/actions/prefer';
import {
  groupId,
  hiddenReadings,
  movedGroups,
  movedOrder,
  orderedGroups,
  READINGS_GROUPS,
  READINGS_HIDDEN,
  READINGS_ORDER,
} from './chosenReadings';
import type { ReadingGroup, ReadingRow } from './readingRows';
import { useReorder } from './useReorder';

interface MoveButtonsProps {
  readonly name: string;
  readonly isFirst: boolean;
  readonly isLast: boolean;
  readonly onMove: (by: 1 | -1) => void;
}

/** Up and down by one place. The focus stays with what was moved, so that it can be moved on. */
const MoveButtons = ({ name, isFirst, isLast, onMove }: MoveButtonsProps) => {
  const place = useRef<HTMLSpanElement>(null);
  const moved = useRef<1 | -1 | null>(null);
  useLayoutEffect(() => {
    if (moved.current === null) return;
    const [up, down] = place.current?.querySelectorAll('button') ?? [];
    const wanted = moved.current < 0 ? up : down;
    moved.current = null;
    (wanted?.disabled ? (wanted === up ? down : up) : wanted)?.focus();
  });
  const move = (by: 1 | -1) => {
    moved.current = by;
    onMove(by);
  };
  return (
    <span ref={place} className="moves">
      <button type="button" disabled={isFirst} aria-label={`${name}: up`} onClick={() => move(-1)}>
        ▲
      </button>
      <button type="button" disabled={isLast} aria-label={`${name}: down`} onClick={() => move(1)}>
        ▼
      </button>
    </span>
  );
};

/** What a line or a group is dragged by; by keys its buttons move it. */
const Grip = (handlers: ReturnType<ReturnType<typeof useReorder>['gripOf']>) => (
  <span className="grip" title="Drag to another place" aria-hidden="true" {...handlers}>
    <svg width="8" height="14" viewBox="0 0 8 14">
      <path d="M1 1h2v2H1zM5 1h2v2H5zM1 6h2v2H1zM5 6h2v2H5zM1 11h2v2H1zM5 11h2v2H5z" fill="currentColor" />
    </svg>
  </span>
);

/** The list of the groups; those of readings are called by their group. */
const GROUPS = 'groups';

/** Which readings the table shows and in which order: of the groups, and inside each. */
export const ChooseReadings = ({
  groups,
  onClose,
}: {
  readonly groups: readonly ReadingGroup[];
  readonly onClose: () => void;
}) => {
  const { store } = useWindow();
  const preferences = useBench((state) => state.preferences);
  const hidden = hiddenReadings(preferences);
  const ordered = orderedGroups(groups, preferences);
  const show = (rows: readonly ReadingRow[], isShown: boolean) => {
    const ids = new Set(rows.map(({ id }) => id));
    const rest = [...hidden].filter((id) => !ids.has(id));
    prefer(store, READINGS_HIDDEN, isShown ? rest : [...rest, ...ids]);
  };
  const move = (list: string, id: string, by: number) =>
    list === GROUPS
      ? prefer(store, READINGS_GROUPS, movedGroups(groups, preferences, id, by))
      : prefer(store, READINGS_ORDER, movedOrder(groups, preferences, id, by));
  const { gripOf, itemOf } = useReorder(move);
  const showAll = () => {
    for (const list of [READINGS_HIDDEN, READINGS_ORDER, READINGS_GROUPS]) prefer(store, list, []);
  };
  return (
    <Dialog
      title="Readings shown"
      className="choosereadings"
      tools={
        <button type="button" className="button bare" onClick={showAll}>
          All, in their first order
        </button>
      }
      onClose={onClose}
    >
      <div className="groups" data-reorder>
        <div className="groupcolumns">
          {ordered.map(({ name, rows }, at) => (
            <fieldset key={name} {...itemOf(GROUPS, groupId(name), at, ordered.length)}>
              <legend>
                <Grip {...gripOf(GROUPS, groupId(name), at)} />
                <label>
                  <input
                    type="checkbox"
                    checked={rows.some(({ id }) => !hidden.has(id))}
                    onChange={(event) => show(rows, event.target.checked)}
                  />
                  {name}
                </label>
                <span className="spread" />
                <MoveButtons
                  name={`Group ${name}`}
                  isFirst={at === 0}
                  isLast={at === ordered.length - 1}
                  onMove={(by) => move(GROUPS, groupId(name), by)}
                />
              </legend>
              {rows.map((row, index) => (
                <div key={row.id} {...itemOf(groupId(name), row.id, index, rows.length)}>
                  <Grip {...gripOf(groupId(name), row.id, index)} />
                  <label>
                    <input
                      type="checkbox"
                      checked={!hidden.has(row.id)}
                      onChange={(event) => show([row], event.target.checked)}
                    />
                    {row.name}
                  </label>
                  <span className="spread" />
                  <MoveButtons
                    name={row.name}
                    isFirst={index === 0}
                    isLast={index === rows.length - 1}
                    onMove={(by) => move(groupId(name), row.id, by)}
                  />
                </div>
              ))}
            </fieldset>
          ))}
        </div>
      </div>
    </Dialog>
  );
};
