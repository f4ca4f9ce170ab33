import { useState, type RefObject } from 'react';
import { saveFile } from '../look/saveFile';
import { useWindow } from '../shell/benchContext';
import type { DrawnView } from './drawing/carDrawing';
import { pictureWords } from './pictureWords';
import type { SceneControl } from './runScene';
import { keptName } from '../state/carTitle';

/** A picture as wide as a page at 300 dots to the inch, 10 inches of it [px]. */
const PRINT_WIDTH = 3000;

const VIEWS: readonly { readonly name: DrawnView; readonly label: string }[] = [
  { name: 'front', label: 'from behind' },
  { name: 'side', label: 'side' },
  { name: 'top', label: 'top' },
];

/** The picture as it stands, and drawings true to scale, to files. */
export const SavePicture = ({ control }: { readonly control: RefObject<SceneControl | null> }) => {
  const { store } = useWindow();
  const [said, setSaid] = useState('');
  const picture = async () => {
    setSaid('Drawing the picture…');
    const blob = await control.current?.print(PRINT_WIDTH, pictureWords(store.getState()));
    if (blob) saveFile(`${keptName(store.getState(), 'picture')}.png`, blob);
    setSaid(blob ? 'Picture saved with the downloads.' : 'This machine could not draw so large a picture.');
  };
  const drawing = async (view: DrawnView) => {
    const { drawingOf } = await import('./drawing/drawingOf');
    const text = drawingOf(store.getState(), view);
    if (text === null) return setSaid('There is nothing to draw at this position.');
    saveFile(
      `${keptName(store.getState(), view === 'front' ? 'from behind' : `${view} view`)}.svg`,
      new Blob([text], { type: 'image/svg+xml' }),
    );
    setSaid('Drawing saved with the downloads.');
  };
  return (
    <div className="savepicture" role="group" aria-label="Pictures to keep">
      <button type="button" className="button" onClick={() => void picture()}>
        Picture, PNG for print
      </button>
      <span>Drawing with dimensions, SVG</span>
      <span className="drawings">
        {VIEWS.map(({ name, label }) => (
          <button
            key={name}
            type="button"
            className="button"
            aria-label={`Drawing ${label}, SVG`}
            onClick={() => void drawing(name)}
          >
            {label}
          </button>
        ))}
      </span>
      <span role="status">{said}</span>
    </div>
  );
};
