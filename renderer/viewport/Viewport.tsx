import { lazy, Suspense, useEffect, useRef, useState } from 'react';
import { Segments } from '../look/controls/Segments';
import { useBench, useWindow } from '../shell/benchContext';
import { chooseView } from '../state/actions/lookAt';
import type { ViewName } from '../state/benchStore';
import { hasWebgl } from './hasWebgl';
import type { EyeControl } from './Scene';
import { useEyeInput } from './useEyeInput';

const Picture = lazy(async () => ({ default: (await import('./Picture')).Picture }));

const viewsOf = (axle: 'front' | 'rear'): readonly { name: ViewName; label: string }[] => [
  { name: 'corner', label: 'Corner' },
  { name: 'front', label: axle === 'front' ? 'Front' : 'Behind' },
  { name: 'side', label: 'Side' },
  { name: 'top', label: 'Top' },
];

const NoPicture = ({ why }: { readonly why: string }) => (
  <div className="nopicture" role="status">
    <p>
      <b>No picture: {why}</b>
    </p>
    <p>Adjusters, motion and readings work all the same.</p>
  </div>
);

/** The linkage of the axle as solid parts. Drawn only when something changed. */
export const Viewport = ({ theme }: { readonly theme: string }) => {
  const { store } = useWindow();
  const axle = useBench((state) => state.axle);
  const view = useBench((state) => state.view);
  const section = useRef<HTMLElement>(null);
  const overlay = useRef<SVGSVGElement>(null);
  const control = useRef<EyeControl | null>(null);
  const [webgl] = useState(hasWebgl);
  const [lost, setLost] = useState(false);
  const input = useEyeInput(section, control);

  useEffect(() => {
    const element = section.current;
    if (!element) return;
    const onLost = (event: Event) => {
      event.preventDefault();
      setLost(true);
    };
    const onRestored = () => setLost(false);
    element.addEventListener('webglcontextlost', onLost, true);
    element.addEventListener('webglcontextrestored', onRestored, true);
    return () => {
      element.removeEventListener('webglcontextlost', onLost, true);
      element.removeEventListener('webglcontextrestored', onRestored, true);
    };
  }, []);

  const picture = webgl && !lost;
  return (
    <section
      ref={section}
      className="viewport"
      role="group"
      tabIndex={picture ? 0 : undefined}
      aria-label={
        picture
          ? `View of the ${axle} axle. Arrow keys turn it, with Shift they move it; plus and minus zoom.`
          : `View of the ${axle} axle`
      }
      {...input}
    >
      {webgl ? (
        <>
          <Suspense>
            <Picture overlay={overlay} control={control} theme={theme} />
          </Suspense>
          <svg ref={overlay} className="overlay" aria-hidden="true" />
        </>
      ) : (
        <NoPicture why="this machine or browser offers no WebGL." />
      )}
      {lost && <NoPicture why="the graphics driver let go of it. It comes back by itself; if not, reload the window." />}
      {picture && (
        <div className="viewtools">
          <Segments
            label="View"
            className="upright"
            options={viewsOf(axle)}
            chosen={view}
            onChoose={(name) => chooseView(store, name)}
          />
        </div>
      )}
    </section>
  );
};
