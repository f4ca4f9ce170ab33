import {
  CanvasTexture,
  Group,
  LinearFilter,
  Mesh,
  MeshBasicMaterial,
  PlaneGeometry,
  type Vector3,
  type BufferGeometry,
} from 'three';
import type { AxleName } from '../../geometry/index';
import type { Materials } from './materials';

const PX_PER_MM = 2;
const STRIP = 150;
const SIDE = 340;
/** Plate before and behind the wheels. */
const MARGIN = 150;

export interface GroundModel {
  readonly object: Group;
  /** draws the rule anew in the colours and type that are in force */
  readonly draw: () => void;
  readonly dispose: () => void;
}

/** The rule along the axle: millimetres from the car's middle, and which end of the car this is. */
const drawRule = (canvas: HTMLCanvasElement, half: number, axle: AxleName): void => {
  const pen = canvas.getContext('2d');
  if (!pen) return;
  const styles = getComputedStyle(document.documentElement);
  pen.clearRect(0, 0, canvas.width, canvas.height);
  pen.strokeStyle = pen.fillStyle = styles.getPropertyValue('--ink-3').trim();
  pen.scale(PX_PER_MM, PX_PER_MM);
  pen.lineWidth = 2;
  const sense = axle === 'front' ? 1 : -1;
  for (let mm = -Math.floor(half / 10) * 10; mm <= half; mm += 10) {
    const at = half + sense * mm;
    const long = mm % 100 === 0 ? 26 : mm % 50 === 0 ? 18 : 10;
    pen.lineWidth = mm % 100 === 0 ? 3 : 1.6;
    pen.beginPath();
    pen.moveTo(at, 4);
    pen.lineTo(at, 4 + long);
    pen.stroke();
  }
  pen.textAlign = 'center';
  const family = styles.getPropertyValue('--sans').trim();
  pen.font = `500 34px ${family}`;
  for (let mm = -Math.floor(half / 200) * 200; mm <= half; mm += 200) pen.fillText(String(Math.abs(mm)), half + sense * mm, 66);
  pen.font = `600 58px ${family}`;
  for (const side of [-1, 1]) {
    pen.fillText(axle === 'front' ? 'FRONT' : 'REAR', half + side * Math.min(360, half * 0.45), 128);
  }
  pen.setTransform(1, 0, 0, 1, 0, 0);
};

/**
 * The surface plate under the axle, its rule at the edge towards the eye.
 * @param x - of the axle [mm]
 */
export const buildGround = (
  axle: AxleName,
  x: number,
  halfTrack: number,
  wheelRadius: number,
  materials: Materials,
): GroundModel => {
  const object = new Group();
  const half = halfTrack + SIDE;
  const reach = wheelRadius + MARGIN;
  const sense = axle === 'front' ? 1 : -1;
  const plateGeometry = new PlaneGeometry(2 * reach, 2 * half);
  const plate = new Mesh(plateGeometry, materials.plate);
  plate.position.set(x, 0, 0);
  const origin = materials.plate.uniforms['origin']?.value as Vector3 | undefined;
  origin?.set(x, 0, 0);
  object.add(plate);

  const canvas = document.createElement('canvas');
  canvas.width = Math.round(2 * half * PX_PER_MM);
  canvas.height = STRIP * PX_PER_MM;
  const texture = new CanvasTexture(canvas);
  texture.minFilter = LinearFilter;
  texture.anisotropy = 8;
  const material = new MeshBasicMaterial({
    map: texture,
    transparent: true,
    depthWrite: false,
    toneMapped: false,
    polygonOffset: true,
    polygonOffsetFactor: -1,
    polygonOffsetUnits: -1,
  });
  const ruleGeometry = new PlaneGeometry(2 * half, STRIP);
  const rule = new Mesh(ruleGeometry, material);
  rule.position.set(x + sense * (reach - STRIP / 2 - 6), 0, 0.4);
  rule.rotation.z = sense * (Math.PI / 2);
  object.add(rule);

  const geometries: BufferGeometry[] = [plateGeometry, ruleGeometry];
  for (const side of [-1, 1]) {
    const shadeGeometry = new PlaneGeometry(620, 460);
    geometries.push(shadeGeometry);
    const shade = new Mesh(shadeGeometry, materials.shade);
    shade.position.set(x, side * (halfTrack - 20), 0.8);
    object.add(shade);
  }
  return {
    object,
    draw: () => {
      drawRule(canvas, half, axle);
      texture.needsUpdate = true;
    },
    dispose: () => {
      geometries.forEach((geometry) => geometry.dispose());
      material.dispose();
      texture.dispose();
    },
  };
};
