import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef, type RefObject } from 'react';
import { useWindow } from '../shell/benchContext';
import { runScene, type RunningScene, type SceneControl } from './runScene';

export interface SceneProps {
  readonly host: RefObject<HTMLElement | null>;
  readonly overlay: RefObject<SVGSVGElement | null>;
  readonly control: RefObject<SceneControl | null>;
  readonly theme: string;
}

/** Ties the scene to the canvas: starts and ends it, tells it of sizes and themes, and lets it draw. */
export const Scene = ({ host, overlay, control, theme }: SceneProps) => {
  const { store } = useWindow();
  const { scene, gl, size, invalidate } = useThree();
  const running = useRef<RunningScene | null>(null);

  useEffect(() => {
    if (!host.current || !overlay.current) return;
    const begun = runScene({ store, gl, scene, overlay: overlay.current, host: host.current, invalidate });
    running.current = begun;
    control.current = begun;
    return () => {
      control.current = null;
      running.current = null;
      begun.end();
    };
  }, [store, gl, scene, host, overlay, control, invalidate]);

  useEffect(() => running.current?.resize(size.width, size.height), [size]);
  useEffect(() => running.current?.retheme(), [theme]);
  // A positive priority: the scene renders by itself, once for every view.
  useFrame(() => running.current?.frame(), 1);
  return null;
};
