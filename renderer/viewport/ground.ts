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

/** What a rule is graduated in: the finest mark in mm, and how many of them make a longer one, the longest and a numeral. */
interface Graduation {
  readonly mm: number;
  readonly middle: number;
  readonly long: number;
  readonly numeral: number;
  /** what a numeral says of one mark */
  readonly worth: number;
}
export type RuleUnit = 'mm' | 'in';
const GRADUATIONS: Readonly<Record<RuleUnit, Graduation>> = {
  mm: { mm: 10, middle: 5, long: 10, numeral: 20, worth: 10 },
  in: { mm: 25.4, middle: 5, long: 10, numeral: 10, worth: 1 },
};

/** Where the marks of a rule stand [mm from the car's middle], and what is written at them: the unit once on either side. */
export const ruleMarks = (from: number, to: number, unit: RuleUnit) => {
  const { mm, middle, long, numeral, worth } = GRADUATIONS[unit];
  const [first, last] = [Math.ceil(from / mm), Math.floor(to / mm)];
  return Array.from({ length: last - first + 1 }, (_, index) => {
    const mark = first + index;
    const size: 'long' | 'middle' | 'short' = mark % long === 0 ? 'long' : mark % middle === 0 ? 'middle' : 'short';
    const text = mark % numeral === 0 ? `${Math.abs(mark) * worth}${Math.abs(mark) === numeral ? ` ${unit}` : ''}` : null;
    return { mm: mark * mm, size, text };
  });
};

const MARK_LENGTHS = { long: 26, middle: 18, short: 10 } as const;

interface RuleOf {
  readonly from: number;
  readonly to: number;
  readonly axle: AxleName;
  readonly unit: RuleUnit;
  readonly readFrom: ReadFrom;
}

/** The rule along an axle: lengths from the car's middle, and which end of the car this is. White where there is ink. */
const drawRule = (canvas: HTMLCanvasElement, { from, to, axle, unit, readFrom }: RuleOf): void => {
  const pen = canvas.getContext('2d');
  if (!pen) return;
  const styles = getComputedStyle(document.documentElement);
  pen.fillStyle = '#000';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.strokeStyle = pen.fillStyle = '#fff';
  pen.scale(PX_PER_MM, PX_PER_MM);
  const at = (mm: number): number => (readFrom === 'before' ? mm - from : to - mm);
  const marks = ruleMarks(from, to, unit);
  for (const { mm, size } of marks) {
    pen.lineWidth = size === 'long' ? 3.4 : 2;
    pen.beginPath();
    pen.moveTo(at(mm), 4);
    pen.lineTo(at(mm), 4 + MARK_LENGTHS[size]);
    pen.stroke();
  }
  pen.textAlign = 'center';
  const family = styles.getPropertyValue('--sans').trim();
  pen.font = `500 34px ${family}`;
  for (const { mm, text } of marks) if (text !== null) pen.fillText(text, at(mm), 66);
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

const buildRule = (x: number, rule: RuleOf): Rule => {
  const { from, to, readFrom } = rule;
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
      drawRule(canvas, rule);
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
  unit: RuleUnit,
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
    READ_FROM.map((readFrom) =>
      buildRule(name === 'front' ? foremost - edge : rearmost + edge, { from, to, axle: name, unit, readFrom }),
    ),
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
