import { useEffect, useRef, useState } from 'react';
import { useBench } from '../shell/benchContext';
import { PlanTitles } from './PlanTitles';
import { PointCard } from './PointCard';
import type { SceneControl } from './runScene';
import { usePicture } from './usePicture';
import { useViewInput } from './useViewInput';
import { useWebgl } from './useWebgl';
import { ViewTools } from './ViewTools';
import './asked.css';

const NoPicture = ({ why }: { readonly why: string }) => (
  <div className="nopicture" role="status">
    <p>
      <b>No picture: {why}</b>
    </p>
    <p>Adjusters, motion and readings work all the same.</p>
  </div>
);

/** Whether the graphics driver has let go of the canvas under an element. */
const useLostContext = (section: { readonly current: HTMLElement | null }): boolean => {
  const [lost, setLost] = useState(false);
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
  }, [section]);
  return lost;
};

/**
 * The car as solid parts, drawn only when something changed. One canvas for the whole window: it stays mounted, and
 * `state.viewing.layout` says which views it shows. The bench leaves that empty and has its one view with the tools; a
 * page that wants two views side by side, as lines and without tools, calls `layViews(store, ['front', 'top'])` when it
 * opens and `layViews(store, [])` when it closes. `askPick` has a point or a direction picked in it.
 */
export const Viewport = ({ theme }: { readonly theme: string }) => {
  const axle = useBench((state) => state.axle);
  const isLaid = useBench((state) => state.viewing.layout.length > 0);
  const asked = useBench((state) => state.viewing.pick?.say ?? null);
  const section = useRef<HTMLElement>(null);
  const overlay = useRef<SVGSVGElement>(null);
  const control = useRef<SceneControl | null>(null);
  const webgl = useWebgl();
  const { Picture, failed } = usePicture(webgl === true);
  const lost = useLostContext(section);
  const input = useViewInput(section, control);
  const picture = webgl === true && !lost && !failed;
  return (
    <section
      ref={section}
      className="viewport"
      role="group"
      tabIndex={picture ? 0 : undefined}
      aria-label={
        picture
          ? isLaid
            ? `Two pictures of the ${axle} axle, square to the car. Arrow keys move them, plus and minus zoom, 0 shows all of it.`
            : `View of the ${axle} axle. Arrow keys turn it, with Shift they move it; plus and minus zoom.`
          : `View of the ${axle} axle`
      }
      {...input}
    >
      {webgl === true && (
        <>
          {Picture !== null && <Picture host={section} overlay={overlay} control={control} theme={theme} />}
          <svg ref={overlay} className="overlay" aria-hidden="true" />
        </>
      )}
      {webgl === false && <NoPicture why="this machine or browser offers no WebGL." />}
      {failed && <NoPicture why="what draws it could not be fetched. Save your work and reload the window." />}
      {lost && <NoPicture why="the graphics driver let go of it. It comes back by itself; if not, reload the window." />}
      {asked !== null && (
        <p className="asked" role="status" data-over-view>
          {asked}
        </p>
      )}
      {picture && isLaid && <PlanTitles control={control} />}
      {picture && !isLaid && <ViewTools control={control} />}
      {picture && !isLaid && <PointCard />}
    </section>
  );
};
