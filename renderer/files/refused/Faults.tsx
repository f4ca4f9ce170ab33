import { useCallback, useEffect, useState } from 'react';
import { useWindow } from '../../shell/benchContext';
import { recheckRefused } from '../../state/actions/mendRefused';
import type { RefusedFile } from '../../state/benchStore';
import { FaultEditor, type FaultEditorProps } from './FaultEditor';
import { FaultSource } from './FaultSource';
import { FaultTable } from './FaultTable';

const NOTHING = { line: 1, column: 1 };

/** The list of faults, and beside it the file: to be read with the chosen one marked, or to be mended by hand. */
export const Faults = ({ refused }: { readonly refused: RefusedFile }) => {
  const { store } = useWindow();
  const [at, setChosen] = useState(0);
  const [place, setPlace] = useState<FaultEditorProps['place'] | null>(null);
  const { faults, text } = refused;
  const chosen = Math.min(at, Math.max(0, faults.length - 1));
  const next = () => setChosen((index) => (index + 1) % faults.length);
  const mend = useCallback((mended: string) => recheckRefused(store, mended), [store]);
  const goTo = (index: number) => {
    const fault = faults[index];
    setChosen(index);
    const line = fault?.line ?? null;
    setPlace(line === null ? { ...NOTHING } : { line, column: fault?.column ?? 1 });
  };
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== 'F8' || faults.length === 0) return;
      event.preventDefault();
      setChosen((index) => (index + (event.shiftKey ? faults.length - 1 : 1)) % faults.length);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [faults]);
  return (
    <div className="faultpanes">
      <FaultTable faults={faults} text={text} chosen={chosen} onChoose={setChosen} onMend={mend} onGo={goTo} />
      {text !== null && place && <FaultEditor text={text} place={place} onChange={mend} onDone={() => setPlace(null)} />}
      {text !== null && !place && (
        <FaultSource text={text} faults={faults} chosen={chosen} onNext={next} onEdit={() => goTo(chosen)} />
      )}
    </div>
  );
};
