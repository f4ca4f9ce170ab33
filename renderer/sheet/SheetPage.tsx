import { useDeferredValue, useEffect, useMemo, useState } from 'react';
import { useUnits } from '../look/units';
import { nameOfPlace } from '../files/places';
import { useBench } from '../shell/benchContext';
import { useNarrow } from '../shell/useNarrow';
import { benchOf, type Bench } from '../state/benchStore';
import { madeSheet, type MadeSheet } from './madeSheet';
import { saveHtml, savePdf } from './saveSheet';
import { SheetOptions } from './SheetOptions';
import { SheetPreview } from './SheetPreview';
import { dayOf, NO_PICKS, pickedSetups, sheetChoices, type SheetPicks } from './sheetChoices';
import { useSheetTypeface } from './useSheetTypeface';
import './sheet.css';

const isPrintKey = ({ key, ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent): boolean =>
  key.toLowerCase() === 'p' && (ctrlKey || metaKey) && !altKey && !shiftKey;

/** Ctrl P prints the pages: a browser would do so by itself, a window of one's own would not. */
const usePrintKey = (): void =>
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (!isPrintKey(event)) return;
      event.preventDefault();
      window.print();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, []);

const pagesInWords = (made: MadeSheet): string =>
  made.ok ? `${made.pages.length} ${made.pages.length === 1 ? 'page' : 'pages'} ${made.pages[0]?.paper.name ?? ''}` : 'no pages';

const Actions = ({ made, date }: { readonly made: MadeSheet; readonly date: string }) => (
  <div className="sheetactions">
    <span className="quiet" role="status">
      {pagesInWords(made)}
    </span>
    <button type="button" className="button primary printsheet" disabled={!made.ok} onClick={() => window.print()}>
      Print <span className="key">Ctrl P</span>
    </button>
    <button
      type="button"
      className="button"
      disabled={!made.ok}
      aria-label="Save as PDF"
      onClick={() => made.ok && savePdf(made.sheet, made.pages, date)}
    >
      PDF
    </button>
    <button
      type="button"
      className="button"
      disabled={!made.ok}
      aria-label="Save as HTML"
      onClick={() => made.ok && saveHtml(made.sheet, made.pages)}
    >
      HTML
    </button>
  </div>
);

const SheetOfBench = ({ bench, fileName }: { readonly bench: Bench; readonly fileName: string | null }) => {
  const preferences = useBench((state) => state.preferences);
  const units = useUnits();
  const narrow = useNarrow();
  const isSet = useSheetTypeface();
  const [picks, setPicks] = useState<SheetPicks>(NO_PICKS);
  const [date] = useState(() => dayOf(new Date()));
  usePrintKey();
  const { document } = bench;
  const choices = useMemo(() => sheetChoices(preferences), [preferences]);
  const { setup, onCar } = pickedSetups(document, bench.setup, picks);
  const asked = useMemo(
    () => ({ document, setup, onCar, choices, units, date, fileName }),
    [document, setup, onCar, choices, units, date, fileName],
  );
  const shown = useDeferredValue(asked);
  const made = useMemo(() => madeSheet(shown), [shown]);
  const options = (
    <SheetOptions
      document={document}
      setup={setup}
      onCar={onCar}
      choices={choices}
      made={made}
      onPick={(part) => setPicks({ ...picks, ...part })}
    />
  );
  return (
    <>
      <div className="column sheetcolumn">
        {narrow ? (
          <details className="sheetmenu">
            <summary>Sheet of {setup}: what is on it</summary>
            {options}
          </details>
        ) : (
          <>
            <div className="columnhead">
              <h2>Sheet</h2>
            </div>
            {options}
          </>
        )}
        <Actions made={made} date={date} />
      </div>
      <div className="sheetdesk" role="region" aria-label={`Set-up sheet of ${setup}, as it prints`} tabIndex={0}>
        {made.ok ? (
          isSet && <SheetPreview sheet={made.sheet} pages={made.pages} />
        ) : (
          <p className="nosheet">
            There is no sheet of {setup}: {made.message}
          </p>
        )}
      </div>
    </>
  );
};

/** The set-up sheet that goes to the car: what is on it on the left, its pages as they print on the right. */
export const SheetPage = () => {
  const bench = useBench(benchOf);
  const file = useBench((state) => state.file);
  if (!bench || !file) return <p className="nosheet">No car is open. Open one, or a sample, from the file menu.</p>;
  return <SheetOfBench bench={bench} fileName={file.isNeverSaved === true ? null : nameOfPlace(file.place)} />;
};
