import { lazy, Suspense, useEffect, useState } from 'react';
import { isUnderDialog } from '../shell/windowKeys';
import './commands.css';

/** The list is a chunk of its own: a window is painted before anybody looks for a command. */
const CommandList = lazy(async () => ({ default: (await import('./CommandList')).CommandList }));

const isCommandKey = (event: KeyboardEvent): boolean =>
  event.key.toLowerCase() === 'k' && (event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey;

/** The command list, and what opens it: its sign at the foot of the rail, or Ctrl K. */
export const Commands = () => {
  // Counted, since Escape shuts the list a moment before it is told of, and the key may have opened the next one meanwhile.
  const [opened, setOpened] = useState(0);
  const open = () => setOpened((before) => before + 1);
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (!isCommandKey(event)) return;
      event.preventDefault();
      if (!isUnderDialog()) setOpened((before) => before + 1);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, []);
  return (
    <>
      <button type="button" className="end" title="Command list (Ctrl K)" aria-haspopup="dialog" onClick={open}>
        <svg width="26" height="22" viewBox="0 0 26 22" aria-hidden="true">
          <rect x="3" y="4" width="20" height="14" rx="2" />
          <path d="M7 8h2M12 8h2M17 8h2M7 14h12" />
        </svg>
        Commands
      </button>
      {opened > 0 && (
        <Suspense>
          <CommandList key={opened} onClose={() => setOpened((now) => (now === opened ? 0 : now))} />
        </Suspense>
      )}
    </>
  );
};
