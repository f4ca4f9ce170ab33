import { useEffect, useRef, useState } from 'react';
import { offsetOf } from '../mendFault';

/** How long nothing is typed until the text is judged again, ms. */
const JUDGED_AFTER = 250;

export interface FaultEditorProps {
  readonly text: string;
  /** the place that the caret is put at when the editor opens or another fault is gone to */
  readonly place: { readonly line: number; readonly column: number };
  readonly onChange: (text: string) => void;
  readonly onDone: () => void;
}

/** The file's text to be mended by hand; judged again whenever the typing rests. */
export const FaultEditor = ({ text, place, onChange, onDone }: FaultEditorProps) => {
  const area = useRef<HTMLTextAreaElement>(null);
  const [typed, setTyped] = useState(text);
  const [given, setGiven] = useState(text);
  if (given !== text) {
    // mended by a button meanwhile
    setGiven(text);
    setTyped(text);
  }
  useEffect(() => {
    if (typed === text) return;
    const timer = setTimeout(() => {
      setGiven(typed);
      onChange(typed);
    }, JUDGED_AFTER);
    return () => clearTimeout(timer);
  }, [typed, text, onChange]);
  useEffect(() => {
    const box = area.current;
    if (!box) return;
    const at = offsetOf(box.value, place.line, place.column);
    box.focus();
    box.setSelectionRange(at, at);
    const lineHeight = parseFloat(getComputedStyle(box).lineHeight);
    box.scrollTop = Math.max(0, (place.line - 6) * lineHeight);
  }, [place]);
  return (
    <section className="source" aria-label="The file">
      <div className="columnhead">
        <h3>The file</h3>
        <span className="quiet">judged again as you type</span>
        <span className="spread" />
        <button type="button" className="button" onClick={onDone}>
          Done
        </button>
      </div>
      <textarea
        ref={area}
        aria-label="Text of the file, to be mended"
        spellCheck={false}
        wrap="off"
        value={typed}
        onChange={({ target }) => setTyped(target.value)}
        onBlur={() => typed !== text && onChange(typed)}
      />
    </section>
  );
};
