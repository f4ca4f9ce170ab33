import { CanvasTexture, Group, LinearMipmapLinearFilter, Mesh, MeshBasicMaterial, PlaneGeometry, type Vector3 } from 'three';
import type { AxleName, SideName } from '../../geometry/index';
import type { Materials } from './materials';
import type { Point } from './points';

const PX_PER_MM = 2;
const STRIP = 150;
const SIDE = 340;
/** Plate before and behind the wheels. */
const MARGIN = 110;
/** Plate past the middle of the car where one corner is shown. */
const PAST_MIDDLE = 170;

export interface GroundModel {
  readonly object: Group;
  /** draws the rule anew in the colours and type that are in force */
  readonly draw: () => void;
  /** Turns the rules so that they stand upright for an eye. @param away - along its line of sight, X forward */
  readonly readTo: (away: Point) => void;
  readonly dispose: () => void;
}

/** From which end of the car a rule is read: its numbers would else stand on their heads. */
type ReadFrom = 'before' | 'behind';
const READ_FROM = ['before', 'behind'] as const satisfies readonly ReadFrom[];

/** One axle on the plate [mm], in the ground's frame. */
export interface GroundedAxle {
  readonly name: AxleName;
  readonly x: number;
  readonly halfTrack: number;
}

/** The rule along an axle: millimetres from the car's middle, and which end of the car this is. White where there is ink. */
const drawRule = (canvas: HTMLCanvasElement, from: number, to: number, axle: AxleName, readFrom: ReadFrom): void => {
  const pen = canvas.getContext('2d');
  if (!pen) return;
  const styles = getComputedStyle(document.documentElement);
  pen.fillStyle = '#000';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.strokeStyle = pen.fillStyle = '#fff';
  pen.scale(PX_PER_MM, PX_PER_MM);
  const at = (mm: number): number => (readFrom === 'before' ? mm - from : to - mm);
  for (let mm = Math.ceil(from / 10) * 10; mm <= to; mm += 10) {
    const long = mm % 100 === 0 ? 26 : mm % 50 === 0 ? 18 : 10;
    pen.lineWidth = mm % 100 === 0 ? 3.4 : 2;
    pen.beginPath();
    pen.moveTo(at(mm), 4);
    pen.lineTo(at(mm), 4 + long);
    pen.stroke();
  }
  pen.textAlign = 'center';
  const family = styles.getPropertyValue('--sans').trim();
  pen.font = `500 34px ${family}`;
  for (let mm = Math.ceil(from / 200) * 200; mm <= to; mm += 200) pen.fillText(String(Math.abs(mm)), at(mm), 66);
  pen.font = `600 58px ${family}`;
  for (const mm of [-300, 300])
    if (mm > from + 100 && mm < to - 100) {
      const name = axle === 'front' ? 'FRONT' : 'REAR';
      pen.fillText(name, at(mm), 128);
      if (axle === 'front') drawArrow(pen, at(mm) + pen.measureText(name).width / 2 + 34, readFrom);
    }
  pen.setTransform(1, 0, 0, 1, 0, 0);
};

/** Which way is forward: down, for who reads the rule from before the car. */
const drawArrow = (pen: CanvasRenderingContext2D, x: number, readFrom: ReadFrom): void => {
  const [tail, tip, back] = readFrom === 'before' ? [86, 127, 111] : [127, 86, 102];
  pen.lineWidth = 6;
  pen.beginPath();
  pen.moveTo(x, tail);
  pen.lineTo(x, tip);
  pen.moveTo(x - 15, back);
  pen.lineTo(x, tip);
  pen.lineTo(x + 15, back);
  pen.stroke();
};

interface Rule {
  readonly object: Mesh;
  readonly readFrom: ReadFrom;
  readonly draw: () => void;
  readonly dispose: () => void;
}

const buildRule = (axle: AxleName, x: number, from: number, to: number, readFrom: ReadFrom): Rule => {
  const canvas = document.createElement('canvas');
  canvas.width = Math.round((to - from) * PX_PER_MM);
  canvas.height = STRIP * PX_PER_MM;
  const texture = new CanvasTexture(canvas);
  // Seen at a slant and from afar: without smaller copies of itself the rule would fall into dots.
  texture.minFilter = LinearMipmapLinearFilter;
  texture.anisotropy = 16;
  const material = new MeshBasicMaterial({
    alphaMap: texture,
    transparent: true,
    depthWrite: false,
    toneMapped: false,
    polygonOffset: true,
    polygonOffsetFactor: -1,
    polygonOffsetUnits: -1,
  });
  const geometry = new PlaneGeometry(to - from, STRIP);
  const object = new Mesh(geometry, material);
  object.position.set(x, (from + to) / 2, 0.4);
  object.rotation.z = readFrom === 'before' ? Math.PI / 2 : -Math.PI / 2;
  return {
    object,
    readFrom,
    draw: () => {
      drawRule(canvas, from, to, axle, readFrom);
      material.color.set(getComputedStyle(document.documentElement).getPropertyValue('--ink-2').trim());
      texture.needsUpdate = true;
    },
    dispose: () => {
      geometry.dispose();
      material.dispose();
      texture.dispose();
    },
  };
};

/** The surface plate under what is shown, a rule along its edge before the front axle and behind the rear one. */
export const buildGround = (
  axles: readonly GroundedAxle[],
  sides: readonly SideName[],
  wheelRadius: number,
  materials: Materials,
): GroundModel => {
  const object = new Group();
  const half = Math.max(...axles.map(({ halfTrack }) => halfTrack)) + SIDE;
  const [from, to] = [sides.includes('right') ? -half : -PAST_MIDDLE, sides.includes('left') ? half : PAST_MIDDLE];
  const reach = wheelRadius + MARGIN;
  const xs = axles.map(({ x }) => x);
  const [rearmost, foremost] = [Math.min(...xs) - reach, Math.max(...xs) + reach];
  const plateGeometry = new PlaneGeometry(foremost - rearmost, to - from);
  const plate = new Mesh(plateGeometry, materials.plate);
  plate.position.set((rearmost + foremost) / 2, (from + to) / 2, 0);
  const origin = materials.plate.uniforms['origin']?.value as Vector3 | undefined;
  origin?.copy(plate.position);
  const halfSize = materials.plate.uniforms['halfSize']?.value as Vector3 | undefined;
  halfSize?.set((foremost - rearmost) / 2, (to - from) / 2, 0);
  object.add(plate);

  const edge = STRIP / 2 + 6;
  const rules = axles.flatMap(({ name }) =>
    READ_FROM.map((readFrom) => buildRule(name, name === 'front' ? foremost - edge : rearmost + edge, from, to, readFrom)),
  );
  object.add(...rules.map((rule) => rule.object));

  const shadeGeometry = new PlaneGeometry(620, 460);
  for (const { x, halfTrack } of axles)
    for (const side of sides) {
      const shade = new Mesh(shadeGeometry, materials.shade);
      shade.position.set(x, (side === 'left' ? 1 : -1) * (halfTrack - 20), 0.8);
      object.add(shade);
    }
  return {
    object,
    draw: () => rules.forEach((rule) => rule.draw()),
    readTo: (away) =>
      rules.forEach(({ object: rule, readFrom }) => {
        rule.visible = (readFrom === 'before') === away[0] < 0;
      }),
    dispose: () => {
      plateGeometry.dispose();
      shadeGeometry.dispose();
      rules.forEach((rule) => rule.dispose());
    },
  };
};
