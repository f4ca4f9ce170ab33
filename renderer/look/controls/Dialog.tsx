import { useEffect, useId, useRef, type KeyboardEvent, type ReactNode } from 'react';

interface DialogProps {
  readonly title: string;
  readonly className: string;
  /** quiet words behind the title */
  readonly note?: string;
  /** buttons before Close */
  readonly tools?: ReactNode;
  readonly onClose: () => void;
  readonly onKeyDown?: (event: KeyboardEvent) => void;
  readonly children: ReactNode;
}

/** A dialog over the whole window with its title, its tools and Close in one bar. Escape closes it. */
export const Dialog = ({ title, className, note, tools, onClose, onKeyDown, children }: DialogProps) => {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
  }, []);
  return (
    <dialog ref={dialog} className={`framed ${className}`} aria-labelledby={id} onClose={onClose} onKeyDown={onKeyDown}>
      <div className="bar">
        <h2 id={id}>{title}</h2>
        {note !== undefined && <span className="quiet ellipsis">{note}</span>}
        <span className="spread" />
        {tools}
        <form method="dialog">
          <button type="submit" className="button">
            Close
          </button>
        </form>
      </div>
      {children}
    </dialog>
  );
};
