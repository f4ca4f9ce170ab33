import { Popover } from '../look/controls/Popover';

export interface PlotMenuItem {
  readonly label: string;
  readonly run: () => void;
}

/** What can be done with a plot, behind one button: files of it, the whole again, away with it. */
export const PlotMenu = ({ of, items }: { readonly of: string; readonly items: readonly PlotMenuItem[] }) => (
  <Popover
    label={of}
    role="menu"
    button={{
      className: 'plotmore',
      label: `${of}: save and more`,
      title: 'Save and more',
      content: (
        <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
          <path d="M8 2v8M4.500 7L8 10.500 11.500 7M2.500 13.500h11" fill="none" stroke="currentColor" strokeWidth="1.5" />
        </svg>
      ),
    }}
  >
    {(close) =>
      items.map(({ label, run }) => (
        <button
          key={label}
          type="button"
          role="menuitem"
          tabIndex={-1}
          onClick={() => {
            close();
            run();
          }}
        >
          {label}
        </button>
      ))
    }
  </Popover>
);
