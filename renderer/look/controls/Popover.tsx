import { useId, useRef, useState, type KeyboardEvent, type ReactNode } from 'react';
import { popoverPlace } from './popoverPlace';

interface PopoverProps {
  /** the button that opens it */
  readonly button: { readonly className: string; readonly label: string; readonly title: string; readonly content: ReactNode };
  /** name of what opens */
  readonly label: string;
  /** a menu has items, walked through with the arrow keys; a group has controls */
  readonly role: 'menu' | 'group';
  readonly className?: string;
  readonly children: ReactNode | ((close: () => void) => ReactNode);
}

const MOVES: Readonly<Record<string, (at: number, count: number) => number>> = {
  ArrowDown: (at, count) => (at + 1) % count,
  ArrowUp: (at, count) => (at - 1 + count) % count,
  Home: () => 0,
  End: (_at, count) => count - 1,
};

/** A button and the card that it opens beside itself, over everything. Escape or a press elsewhere closes it. */
export const Popover = ({ button, label, role, className, children }: PopoverProps) => {
  const id = useId();
  const opener = useRef<HTMLButtonElement>(null);
  const card = useRef<HTMLDivElement>(null);
  const [isOpen, setOpen] = useState(false);
  const items = (): HTMLElement[] => [
    ...(card.current?.querySelectorAll<HTMLElement>('[role^="menuitem"]:not(:disabled)') ?? []),
  ];
  const close = () => {
    card.current?.hidePopover();
    opener.current?.focus();
  };
  const onToggle = (open: boolean) => {
    setOpen(open);
    if (!open || !card.current || !opener.current) return;
    const { left, top } = popoverPlace(
      opener.current.getBoundingClientRect(),
      { width: card.current.offsetWidth, height: card.current.offsetHeight },
      { width: window.innerWidth, height: window.innerHeight },
    );
    card.current.style.left = `${left}px`;
    card.current.style.top = `${top}px`;
    (items().find((item) => item.ariaChecked === 'true') ?? items()[0])?.focus();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (role !== 'menu') return;
    if (event.key === 'Tab') return card.current?.hidePopover();
    const all = items();
    const next = MOVES[event.key]?.(all.indexOf(document.activeElement as HTMLElement), all.length);
    if (next === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    all[next]?.focus();
  };
  return (
    <>
      <button
        ref={opener}
        type="button"
        className={button.className}
        popoverTarget={id}
        aria-haspopup={role === 'menu' ? 'menu' : undefined}
        aria-expanded={isOpen}
        aria-label={button.label}
        title={button.title}
      >
        {button.content}
      </button>
      <div
        ref={card}
        id={id}
        className={`popover ${className ?? ''}`}
        popover="auto"
        role={role}
        aria-label={label}
        onToggle={(event) => onToggle(event.newState === 'open')}
        onKeyDown={onKeyDown}
      >
        {typeof children === 'function' ? children(close) : children}
      </div>
    </>
  );
};
