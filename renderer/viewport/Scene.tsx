import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef, type RefObject } from 'react';
import { PerspectiveCamera, Vector3, type Camera } from 'three';
import { toDegrees } from '../../geometry/index';
import { useWindow } from '../shell/benchContext';
import type { BenchState } from '../state/benchStore';
import { mmPerFileUnit } from '../units/fileLength';
import { buildAxleModel, type AxleModel } from './axleModel';
import { eyeOf, eyePoint, type Eye, type Point } from './camera';
import { buildMaterials, type Materials } from './materials';
import { buildOverlay, type Project } from './overlay';
import { overlayItems } from './overlayItems';
import { heldKeys, overlayContent } from './sceneContent';

/** What the view's buttons and the hand on it may do to the eye. */
export interface EyeControl {
  readonly turn: (change: (eye: Eye) => Eye) => void;
}

const DEPTH = 4000;

const aim = (camera: PerspectiveCamera, eye: Eye, aspect: number): void => {
  camera.fov = toDegrees(eye.lens);
  camera.aspect = aspect;
  camera.near = Math.max(20, eye.distance - DEPTH);
  camera.far = eye.distance + DEPTH;
  camera.up.set(0, 0, 1);
  camera.position.set(...eyePoint(eye));
  camera.lookAt(...eye.target);
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
};

const projector = (camera: Camera, width: number, height: number): Project => {
  const point = new Vector3();
  return (from: Point) => {
    point.set(from[0], from[1], from[2]).project(camera);
    return Math.abs(point.z) > 1 ? null : [((point.x + 1) / 2) * width, ((1 - point.y) / 2) * height];
  };
};

interface Stage {
  model: AxleModel;
  /** what the model was built for */
  axle: object;
}

/** The scene behind the canvas: follows the store without React, and draws only when something moved. */
export const Scene = (props: {
  readonly overlay: RefObject<SVGSVGElement | null>;
  readonly control: RefObject<EyeControl | null>;
  readonly theme: string;
}) => {
  const { store } = useWindow();
  const { scene, gl, size, invalidate, camera } = useThree();
  const materials = useRef<Materials | null>(null);
  const stage = useRef<Stage | null>(null);
  const eye = useRef<Eye | null>(null);
  const aspect = size.width / Math.max(1, size.height);
  const aspectNow = useRef(aspect);
  const drawing = useRef<ReturnType<typeof buildOverlay> | null>(null);
  const { control, overlay, theme } = props;

  useEffect(() => {
    const made = buildMaterials();
    made.readTokens();
    materials.current = made;
    if (overlay.current) drawing.current ??= buildOverlay(overlay.current);

    const clear = () => {
      if (!stage.current) return;
      scene.remove(stage.current.model.object);
      stage.current.model.dispose();
      stage.current = null;
    };
    const show = (state: BenchState, before: BenchState | null) => {
      const document = state.history?.present.document;
      const axle = document?.[state.axle];
      if (!state.shown || !document || !axle) return clear();
      const { placed, rack } = state.shown.row;
      const built = stage.current?.axle === axle ? stage.current : null;
      if (!built) clear();
      const { model } = built ?? { model: buildAxleModel(state.axle, axle, placed, mmPerFileUnit(document), made) };
      if (!built) {
        stage.current = { model, axle };
        scene.add(model.object);
        model.drawGround();
      }
      if (!built || before?.view !== state.view) eye.current = eyeOf(state.view, model.subject, aspectNow.current);
      if (!built || before?.shown !== state.shown) model.place(placed, rack);
      model.hold(heldKeys(state));
      invalidate();
    };
    show(store.getState(), null);
    const leave = store.subscribe(show);
    control.current = {
      turn: (change) => {
        if (!eye.current) return;
        eye.current = change(eye.current);
        invalidate();
      },
    };
    void document.fonts.ready.then(() => {
      stage.current?.model.drawGround();
      invalidate();
    });
    return () => {
      leave();
      control.current = null;
      clear();
      made.dispose();
    };
  }, [store, scene, invalidate, control, overlay]);

  useEffect(() => {
    materials.current?.readTokens();
    stage.current?.model.drawGround();
    invalidate();
  }, [theme, invalidate]);

  useEffect(() => {
    const before = aspectNow.current;
    aspectNow.current = aspect;
    if (stage.current && before !== aspect) eye.current = eyeOf(store.getState().view, stage.current.model.subject, aspect);
    invalidate();
  }, [aspect, invalidate, store]);

  useFrame(() => {
    if (!eye.current || !stage.current || !(camera instanceof PerspectiveCamera)) return;
    aim(camera, eye.current, aspect);
    const { model } = stage.current;
    const outlines = model.cutFor(eyePoint(eye.current));
    const content = overlayContent(store.getState(), model, outlines);
    gl.domElement.dataset['drawn'] = String(Number(gl.domElement.dataset['drawn'] ?? 0) + 1);
    if (content)
      drawing.current?.draw(overlayItems(content), projector(camera, size.width, size.height), size.width, size.height);
  });
  return null;
};
