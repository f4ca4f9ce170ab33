import { useEffect, useRef, useState } from 'react';

export interface PlotMenuItem {
  readonly label: string;
  readonly run: () => void;
}

/** What can be done with a plot, behind one button: files of it, the whole again, away with it. */
export const PlotMenu = ({ of, items }: { readonly of: string; readonly items: readonly PlotMenuItem[] }) => {
  const [isOpen, setOpen] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (!isOpen) return;
    place.current?.querySelector<HTMLButtonElement>('[role="menuitem"]')?.focus();
    const away = (event: Event) => {
      if (event.target instanceof Node && !place.current?.contains(event.target)) setOpen(false);
    };
    window.addEventListener('pointerdown', away, true);
    return () => window.removeEventListener('pointerdown', away, true);
  }, [isOpen]);
  const close = () => {
    setOpen(false);
    button.current?.focus();
  };
  const focusNext = (steps: number) => {
    const all = [...(place.current?.querySelectorAll<HTMLButtonElement>('[role="menuitem"]') ?? [])];
    const at = all.findIndex((one) => one === document.activeElement);
    all[(at + steps + all.length) % all.length]?.focus();
  };
  return (
    <div className="plotmenu" ref={place}>
      <button
        ref={button}
        type="button"
        className="more"
        aria-haspopup="menu"
        aria-expanded={isOpen}
        aria-label={`${of}: save and more`}
        title="Save and more"
        onClick={() => setOpen(!isOpen)}
      >
        <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
          <path d="M8 2v8M4.500 7L8 10.500 11.500 7M2.500 13.500h11" fill="none" stroke="currentColor" strokeWidth="1.5" />
        </svg>
      </button>
      {isOpen && (
        <div
          className="menu"
          role="menu"
          aria-label={of}
          onKeyDown={(event) => {
            if (event.key === 'Escape') close();
            else if (event.key === 'ArrowDown') focusNext(1);
            else if (event.key === 'ArrowUp') focusNext(-1);
            else if (event.key === 'Tab') setOpen(false);
            else return;
            if (event.key !== 'Tab') event.preventDefault();
            event.stopPropagation();
          }}
        >
          {items.map(({ label, run }) => (
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
          ))}
        </div>
      )}
    </div>
  );
};
