import { useRef, useState, type ChangeEvent, type KeyboardEvent } from 'react';
import { nameOfKey } from '../adjusters/fitterWords';
import { newCar } from '../commands/newCar';
import { useBench, useWindow } from '../shell/benchContext';
import { chooseCar, openRecentPicked } from '../state/actions/chooseCar';
import { openGiven, openHanded, openSample } from '../state/actions/openCar';
import { offerCopy } from '../state/actions/recoverCar';
import { saveCar, saveCarAs } from '../state/actions/saveCar';
import { FILE_INPUT_ID } from './browserFiles';
import { clockTime } from './times';
import './files.css';

interface Item {
  readonly key: string;
  readonly label: string;
  /** smaller, behind the label */
  readonly note?: string;
  readonly keys?: string;
  readonly run: () => void;
}

interface Group {
  readonly label: string | null;
  readonly items: readonly Item[];
}

/** Everything that there is to do with files, in groups. */
const useGroups = (): readonly Group[] => {
  const { store, files } = useWindow();
  const samples = useBench((state) => state.samples);
  const { recent, copies, reopenable } = useBench((state) => state.files);
  const hasCar = useBench((state) => state.file !== null);
  const groups: readonly Group[] = [
    {
      label: null,
      items: [
        { key: 'open', label: 'Open…', keys: 'Ctrl O', run: () => void chooseCar(store, files) },
        ...(hasCar
          ? [
              { key: 'save', label: 'Save', keys: 'Ctrl S', run: () => void saveCar(store, files) },
              { key: 'saveAs', label: 'Save as…', keys: 'Ctrl Shift S', run: () => void saveCarAs(store, files) },
            ]
          : []),
      ],
    },
    {
      label: 'Kept copies',
      items: copies.map((copy) => ({
        key: copy.id,
        label: copy.title,
        note: `kept ${clockTime(copy.keptAt)}`,
        run: () => void offerCopy(store, files, copy),
      })),
    },
    {
      label: 'Open recent',
      items: recent.map(({ id, name, folder }) => ({
        key: id ?? name,
        label: name.replace(/\.jounce\.json$/, ''),
        note: folder ?? (reopenable.includes(name) ? 'opened by the browser' : 'choose it again'),
        run: () =>
          void (id === null
            ? openRecentPicked(store, files, name)
            : openHanded(store, files, { id, name, folder: folder ?? '' })),
      })),
    },
    { label: 'New', items: [{ key: 'new-car', label: 'New car from its layouts…', run: () => newCar(store) }] },
    {
      label: 'New from a sample',
      items: samples.map((name) => ({ key: name, label: nameOfKey(name), run: () => void openSample(store, files, name) })),
    },
  ];
  return groups.filter(({ items }) => items.length > 0);
};

const MOVES: Readonly<Record<string, (at: number, count: number) => number>> = {
  ArrowDown: (at, count) => (at + 1) % count,
  ArrowUp: (at, count) => (at - 1 + count) % count,
  Home: () => 0,
  End: (_at, count) => count - 1,
};

/** The file menu: a button with words, and what it opens. */
export const FileMenu = () => {
  const { store, files } = useWindow();
  const groups = useGroups();
  const menu = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const [isOpen, setOpen] = useState(false);

  const itemsOf = (): HTMLElement[] => [...(menu.current?.querySelectorAll<HTMLElement>('[role="menuitem"]') ?? [])];

  const onToggle = (open: boolean) => {
    setOpen(open);
    if (!open || !menu.current || !button.current) return;
    menu.current.style.left = `${button.current.getBoundingClientRect().left}px`;
    itemsOf()[0]?.focus();
  };

  const onKeyDown = (event: KeyboardEvent) => {
    const items = itemsOf();
    const at = items.indexOf(document.activeElement as HTMLElement);
    const letter = event.key.length === 1 && !event.ctrlKey && !event.metaKey ? event.key.toLowerCase() : null;
    const byLetter = (): number => {
      const order = items.map((_, index) => (at + 1 + index) % items.length);
      return order.find((index) => items[index]?.innerText.toLowerCase().startsWith(letter ?? '')) ?? at;
    };
    const next = MOVES[event.key]?.(at, items.length) ?? (letter && letter !== ' ' ? byLetter() : null);
    if (event.key === 'Tab') menu.current?.hidePopover();
    if (next === null) return;
    event.preventDefault();
    event.stopPropagation();
    items[next]?.focus();
  };

  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    if (file) await openGiven(store, files, file);
    event.target.value = '';
  };

  return (
    <>
      <button
        ref={button}
        type="button"
        className="button filebutton"
        aria-haspopup="menu"
        aria-expanded={isOpen}
        popoverTarget="file-menu"
      >
        File <span className="arrow" aria-hidden="true" />
      </button>
      <div
        ref={menu}
        id="file-menu"
        popover="auto"
        role="menu"
        aria-label="File"
        className="filemenu"
        onToggle={(event) => onToggle(event.newState === 'open')}
        onKeyDown={onKeyDown}
      >
        {groups.map(({ label, items }) => (
          <div key={label ?? ''} role="group" aria-label={label ?? 'This car'}>
            {label && <div className="grouphead">{label}</div>}
            {items.map(({ key, label: name, note, keys, run }) => (
              <button
                key={key}
                type="button"
                role="menuitem"
                tabIndex={-1}
                aria-keyshortcuts={keys?.replace(/Ctrl/g, 'Control').replaceAll(' ', '+')}
                onClick={() => {
                  menu.current?.hidePopover();
                  run();
                }}
              >
                <span className="itemname">{name}</span>
                {note && (
                  <span className="quiet itemnote">
                    {/* cut at its beginning, but read from left to right: a leading slash stays in front */}
                    <bdi>{note}</bdi>
                  </span>
                )}
                {keys && <span className="key">{keys}</span>}
              </button>
            ))}
          </div>
        ))}
      </div>
      <input
        id={FILE_INPUT_ID}
        type="file"
        hidden
        accept=".json,application/json"
        aria-label="Car file"
        onChange={(event) => void take(event)}
      />
    </>
  );
};
