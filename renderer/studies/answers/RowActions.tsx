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

const NOT_A_SETTING =
  'It moves points of the drawing, which no setup holds: taken as a new setup it changes the car, and says what is to be done';

/** What can be done with the chosen row. */
export const RowActions = ({ found, words, refused, moved = [] }: RowActionsProps) => {
  const { store } = useWindow();
  if (!found) return null;
  const step = `Take ${cut(words)}`;
  const takeTo = (page: 'bench' | 'sheet', as: 'new' | 'change' = 'new') => {
    if (takeAnswer(store, found, as, step) !== null) choosePage(store, page);
  };
  const isRefused = refused !== null;
  const isOfDrawing = moved.length > 0;
  const asNew = refused ?? `As a new setup beside ${found.from}; one step of undo`;
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
                takeTo('bench', 'change');
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
            {refusedAsSetting !== null && (
              <p className="menureason" role="note">
                {refusedAsSetting}
              </p>
            )}
          </>
        )}
      </Popover>
      {isOfDrawing && !isRefused ? (
        (['sheet', 'bench'] as const).map((page) => <AskMove key={page} page={page} moved={moved} onMove={() => takeTo(page)} />)
      ) : (
        <>
          <button type="button" className="button" disabled={isRefused} title={asNew} onClick={() => takeTo('sheet')}>
            To the sheet
          </button>
          <button type="button" className="button primary" disabled={isRefused} title={asNew} onClick={() => takeTo('bench')}>
            Take to bench
          </button>
        </>
      )}
    </>
  );
};

interface AskMoveProps {
  readonly page: 'sheet' | 'bench';
  /** what is moved, in words */
  readonly moved: readonly string[];
  readonly onMove: () => void;
}

/** Points are of the car: it is asked first whether they shall move. */
const AskMove = ({ page, moved, onMove }: AskMoveProps) => {
  const words = page === 'sheet' ? 'To the sheet' : 'Take to bench';
  return (
    <Popover
      button={{
        className: `button${page === 'bench' ? ' primary' : ''}`,
        label: words,
        title: 'It moves points of the car itself: asks first',
        content: `${words}…`,
      }}
      label="Points of the car would move"
      role="group"
      className="askmove"
    >
      {(close) => (
        <>
          <p>
            <b>The car itself is changed:</b> {moved.join('; ')}. No adjuster does this, and points are of the drawing and not of
            a setup: every setup of this car is another one then. The sheet names it as work to do, from the notes of the new
            setup.
          </p>
          <p className="actions">
            <button
              type="button"
              className="button primary"
              onClick={() => {
                close();
                onMove();
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
  );
};
