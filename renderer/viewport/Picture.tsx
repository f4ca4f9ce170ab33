import { Canvas } from '@react-three/fiber';
import type { RefObject } from 'react';
import { Scene, type EyeControl } from './Scene';

/** The canvas with the scene behind it. Loaded by itself: three is the largest part of the window, and numbers do not wait for it. */
export const Picture = (props: {
  readonly overlay: RefObject<SVGSVGElement | null>;
  readonly control: RefObject<EyeControl | null>;
  readonly theme: string;
}) => (
  <Canvas frameloop="demand" dpr={[1, 2]} gl={{ antialias: true, alpha: true }} aria-hidden="true">
    <Scene {...props} />
  </Canvas>
);
