import type { AxleName, CarDocument } from '../../../geometry/index';
import type { MotionRanges } from '../../compute/motionRanges';
import { mmPerFileUnit } from '../../units/fileLength';
import type { QuestionForms } from '../kept/useQuestionPage';
import { EMPTY_FIELD, faultOfNumber, fieldOf, type FieldValue } from '../question/fieldValue';

export const GAUGES = ['bumpSteer', 'swing', 'rim', 'strings', 'camber', 'floor'] as const;
export type GaugeName = (typeof GAUGES)[number];
export const GAUGE_WORDS: Readonly<Record<GaugeName, string>> = {
  bumpSteer: 'a bump-steer gauge',
  swing: 'a caster gauge, by swing',
  rim: 'a tape across the rim, for toe',
  strings: 'strings along the car',
  camber: 'a camber gauge on a level floor',
  floor: 'a camber gauge on a floor that is not level',
};

export const WHEELS = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight'] as const;
export type WheelName = (typeof WHEELS)[number];
export const WHEEL_WORDS: Readonly<Record<WheelName, string>> = {
  frontLeft: 'front left',
  frontRight: 'front right',
  rearLeft: 'rear left',
  rearRight: 'rear right',
};
export type WheelFields = Readonly<Record<WheelName, FieldValue>>;

/** What the person says of an instrument; lengths in mm, angles in degrees. */
export interface GaugeForm {
  readonly gauge: GaugeName;
  readonly from: FieldValue;
  readonly to: FieldValue;
  readonly by: FieldValue;
  /** of the two dials */
  readonly spacing: FieldValue;
  readonly dials: 'mm' | 'thou';
  readonly swing: FieldValue;
  /** that tape, strings or plumb span on the rim */
  readonly diameter: FieldValue;
  /** of the strings from the car's centre line */
  readonly offset: FieldValue;
  /** of the rim's edge outboard of the wheel centre */
  readonly lip: FieldValue;
  readonly pads: WheelFields;
  readonly cambers: WheelFields;
}

/** About so many rows either way. */
const ROWS = 4;
/** The step that goes into the reach without a rest, nearest to what makes that many rows. */
const stepFor = (reach: number): number => {
  const whole = Array.from({ length: reach / 5 }, (_, index) => 5 * (index + 1)).filter((step) => reach % step === 0);
  return whole.reduce((best, step) => (Math.abs(step - reach / ROWS) < Math.abs(best - reach / ROWS) ? step : best), 5);
};
const mapWheels = (of: (wheel: WheelName) => FieldValue): WheelFields => ({
  frontLeft: of('frontLeft'),
  frontRight: of('frontRight'),
  rearLeft: of('rearLeft'),
  rearRight: of('rearRight'),
});
const perWheel = (field: FieldValue): WheelFields => mapWheels(() => field);

/** Where toe is measured across, in mm: what the file says, else its rim, else 16 in. */
const diameterOf = (document: CarDocument, axle: AxleName): number => {
  const wheel = document[axle]?.wheel;
  const given = wheel?.toeDiameter ?? wheel?.rimDiameter;
  return given === undefined ? 406.4 : given * mmPerFileUnit(document);
};

export const beginGauges = (document: CarDocument, axle: AxleName, ranges: MotionRanges): GaugeForm => {
  const reach = Math.max(10, Math.floor(Math.min(-ranges.travel.min, ranges.travel.max) / 10) * 10);
  const wide = Math.max(...(['front', 'rear'] as const).map((one) => document[one]?.points['wheelCentre']?.[1] ?? 0));
  const width = document[axle]?.wheel.rimWidth;
  const mm = mmPerFileUnit(document);
  return {
    gauge: 'bumpSteer',
    from: fieldOf(-reach),
    to: fieldOf(reach),
    by: fieldOf(stepFor(reach)),
    spacing: fieldOf(254),
    dials: 'mm',
    swing: fieldOf(20),
    diameter: fieldOf(diameterOf(document, axle)),
    offset: fieldOf(Math.ceil((wide * mm + 150) / 10) * 10),
    lip: fieldOf(width === undefined ? 0 : (width * mm) / 2),
    pads: perWheel(fieldOf(0)),
    cambers: perWheel(EMPTY_FIELD),
  };
};

/** Rows of a gauge, at most. */
export const MOST_BUMPS = 200;

/** The fields that an instrument has. */
export const FIELDS: Readonly<Record<GaugeName, readonly ('spacing' | 'swing' | 'diameter' | 'offset' | 'lip')[]>> = {
  bumpSteer: ['spacing'],
  swing: ['swing'],
  rim: ['diameter'],
  strings: ['offset', 'diameter', 'lip'],
  camber: ['diameter'],
  floor: [],
};

export type GaugeFault = Readonly<
  Partial<Record<'from' | 'to' | 'by' | 'spacing' | 'swing' | 'diameter' | 'offset' | 'lip', string>>
>;

const positive = (field: FieldValue): string | null =>
  faultOfNumber(field) ?? ((field.value ?? 0) > 0 ? null : 'it has to be more than 0');

/** What is wrong with a form, field by field; pads and cambers say it at their own fields. */
export const gaugeFaults = (form: GaugeForm): GaugeFault => {
  const faults: [keyof GaugeFault, string | null][] = FIELDS[form.gauge].map((name) => {
    if (name === 'swing') return [name, positive(form.swing) ?? ((form.swing.value ?? 0) <= 45 ? null : 'at most 45°')];
    return [name, name === 'spacing' || name === 'diameter' ? positive(form[name]) : faultOfNumber(form[name])];
  });
  if (form.gauge !== 'floor') {
    const span = (form.to.value ?? 0) - (form.from.value ?? 0);
    const by = form.by.value ?? 1;
    faults.push(
      ['from', faultOfNumber(form.from)],
      ['to', faultOfNumber(form.to) ?? (span < 0 ? 'it has to be over where it begins' : null)],
      ['by', positive(form.by) ?? (span / by > MOST_BUMPS ? `at most ${MOST_BUMPS} rows` : null)],
    );
  }
  return Object.fromEntries(faults.filter(([, fault]) => fault !== null));
};

/** The bumps that are jacked to: both ends, and between them whole steps from zero. */
export const bumpsOf = ({ from, to, by }: Pick<GaugeForm, 'from' | 'to' | 'by'>): readonly number[] => {
  const [low, high, step] = [from.value ?? 0, to.value ?? 0, by.value ?? 1];
  const bumps: number[] = [low];
  for (let index = Math.ceil(low / step - 1e-9); index * step <= high + 1e-9; index += 1) {
    const bump = index === 0 ? 0 : index * step;
    if (bump > low + 1e-9 && bump < high - 1e-9) bumps.push(bump);
  }
  if (high > low) bumps.push(high);
  return bumps;
};

const wheelsOf = (fields: WheelFields): Partial<Record<WheelName, number>> =>
  Object.fromEntries(WHEELS.flatMap((wheel) => (fields[wheel].value === null ? [] : [[wheel, fields[wheel].value] as const])));

const fieldsOf = (values: Partial<Readonly<Record<WheelName, number>>> | undefined, begun: WheelFields): WheelFields =>
  values === undefined ? begun : mapWheels((wheel) => fieldOf(values[wheel]));

/** How the form and the question of the file become one another. */
export const gaugesForms = (document: CarDocument, axle: AxleName, ranges: MotionRanges): QuestionForms<'gauges', GaugeForm> => ({
  ask: 'gauges',
  begin: () => beginGauges(document, axle, ranges),
  formOf: (question) => {
    const begun = beginGauges(document, axle, ranges);
    const field = (name: 'from' | 'to' | 'by' | 'spacing' | 'swing' | 'diameter' | 'offset' | 'lip'): FieldValue =>
      question[name] === undefined ? begun[name] : fieldOf(question[name]);
    return {
      gauge: question.gauge,
      from: field('from'),
      to: field('to'),
      by: field('by'),
      spacing: field('spacing'),
      dials: question.dials ?? begun.dials,
      swing: field('swing'),
      diameter: field('diameter'),
      offset: field('offset'),
      lip: field('lip'),
      pads: fieldsOf(question.pads, begun.pads),
      cambers: fieldsOf(question.cambers, begun.cambers),
    };
  },
  questionOf: (form) => {
    if (Object.keys(gaugeFaults(form)).length > 0) return { fault: null };
    const asked = { ask: 'gauges', axle, gauge: form.gauge } as const;
    if (form.gauge === 'floor') return { question: { ...asked, pads: wheelsOf(form.pads), cambers: wheelsOf(form.cambers) } };
    const own = FIELDS[form.gauge].map((name) => [name, form[name].value ?? 0] as const);
    return {
      question: {
        ...asked,
        from: form.from.value ?? 0,
        to: form.to.value ?? 0,
        by: form.by.value ?? 1,
        ...Object.fromEntries(own),
        ...(form.gauge === 'bumpSteer' && { dials: form.dials }),
      },
    };
  },
});
