import { Canvas } from '@react-three/fiber';
import { Scene, type SceneProps } from './Scene';
import '../fitup/joints/fan.css';

/** The canvas with the scene behind it. Loaded by itself: three is the largest part of the window, and numbers do not wait for it. */
export const Picture = (props: SceneProps) => (
  <Canvas frameloop="demand" dpr={[1, 2]} gl={{ antialias: true, alpha: true }} aria-hidden="true">
    <Scene {...props} />
  </Canvas>
);
