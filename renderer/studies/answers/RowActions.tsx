import type { FoundAnswer } from '../../state/answeredSetup';
import { Popover } from '../../look/controls/Popover';
import { useWindow } from '../../shell/benchContext';
import { choosePage } from '../../state/actions/lookAt';
import { showAnswer, takeAnswer } from '../../state/actions/takeAnswer';

/** A setup's name is so long at most. */
const LONGEST = 60;
const cut = (text: string): string => (text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1)}…`);

interface RowActionsProps {
  /** the chosen row; null: none */
  readonly found: FoundAnswer | null;
  /** what is done in it, in the fitter's words */
  readonly words: string;
  /** why it cannot be taken; null where it can */
  readonly refused: string | null;
  /** points of the drawing that it moves, in words: those are the car's, of all its setups */
  readonly moved?: readonly string[];
}

const NOT_A_SETTING = 'It moves points of the drawing, which no setup holds: take it to the bench, where the car is changed';

/** What can be done with the chosen row. */
export const RowActions = ({ found, words, refused, moved = [] }: RowActionsProps) => {
  const { store } = useWindow();
  if (!found) return null;
  const step = `Take ${cut(words)}`;
  const take = (as: 'new' | 'change') => {
    if (takeAnswer(store, found, as, step) !== null) choosePage(store, 'bench');
  };
  const isRefused = refused !== null;
  const isOfDrawing = moved.length > 0;
  const refusedAsSetting = refused ?? (isOfDrawing ? NOT_A_SETTING : null);
  return (
    <>
      <Popover
        button={{
          className: 'button',
          label: 'More to do with this row',
          title: refused ?? 'More to do with this row',
          content: (
            <>
              Row <span className="opens" aria-hidden="true" />
            </>
          ),
        }}
        label="The chosen row"
        role="menu"
      >
        {(close) => (
          <>
            <button
              type="button"
              role="menuitem"
              disabled={refusedAsSetting !== null}
              title={refusedAsSetting ?? undefined}
              onClick={() => {
                close();
                take('change');
              }}
            >
              Change {found.from} to this, on the bench
            </button>
            <button
              type="button"
              role="menuitem"
              disabled={isRefused}
              onClick={() => {
                close();
                showAnswer(store, found, cut(words));
                choosePage(store, 'bench');
              }}
            >
              Ghost on bench
            </button>
          </>
        )}
      </Popover>
      <button
        type="button"
        className="button"
        disabled={refusedAsSetting !== null}
        title={refusedAsSetting ?? `As a new setup beside ${found.from}; one step of undo`}
        onClick={() => {
          if (takeAnswer(store, found, 'new', step) !== null) choosePage(store, 'sheet');
        }}
      >
        To the sheet
      </button>
      {isOfDrawing && !isRefused ? (
        <Popover
          button={{
            className: 'button primary',
            label: 'Take to bench',
            title: 'It moves points of the car itself: asks first',
            content: 'Take to bench…',
          }}
          label="Points of the car would move"
          role="group"
          className="askmove"
        >
          {(close) => (
            <>
              <p>
                <b>The car itself is changed:</b> {moved.join('; ')}. Points are of the drawing and not of a setup, so that every
                setup of this car is another one then, and no sheet will name it as work to do: write down where the new hole is.
              </p>
              <p className="actions">
                <button
                  type="button"
                  className="button primary"
                  onClick={() => {
                    close();
                    take('new');
                  }}
                >
                  Move them, one step of undo
                </button>
                <button type="button" className="button" onClick={close}>
                  Leave the car as it is
                </button>
              </p>
            </>
          )}
        </Popover>
      ) : (
        <button
          type="button"
          className="button primary"
          disabled={isRefused}
          title={refused ?? `As a new setup beside ${found.from}; one step of undo`}
          onClick={() => take('new')}
        >
          Take to bench
        </button>
      )}
    </>
  );
};
