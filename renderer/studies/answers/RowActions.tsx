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
}

/** What can be done with the chosen row. */
export const RowActions = ({ found, words, refused }: RowActionsProps) => {
  const { store } = useWindow();
  if (!found) return null;
  const step = `Take ${cut(words)}`;
  const take = (as: 'new' | 'change') => {
    if (takeAnswer(store, found, as, step) !== null) choosePage(store, 'bench');
  };
  const isRefused = refused !== null;
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
              disabled={isRefused}
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
        disabled={isRefused}
        title={refused ?? `As a new setup beside ${found.from}; one step of undo`}
        onClick={() => {
          if (takeAnswer(store, found, 'new', step) !== null) choosePage(store, 'sheet');
        }}
      >
        To the sheet
      </button>
      <button
        type="button"
        className="button primary"
        disabled={isRefused}
        title={refused ?? `As a new setup beside ${found.from}; one step of undo`}
        onClick={() => take('new')}
      >
        Take to bench
      </button>
    </>
  );
};
