import type { AdjusterDocument, AdjusterKind } from '../../../geometry/index';

interface SamplePart {
  readonly title: string;
  readonly does: string;
  /** a part of the kind as it is drawn on its button */
  readonly drawn: AdjusterDocument;
  /** what a new one begins with: only what is usual for the kind; all lengths are left to be measured */
  readonly start: Readonly<Record<string, unknown>>;
}

const SAMPLES: Readonly<Record<AdjusterKind, SamplePart>> = {
  slide: {
    title: 'Slide',
    does: 'along a line',
    drawn: { kind: 'slide', moves: 'strutTop', along: [0, 1, 0], range: [-10, 10], step: 1 },
    start: {},
  },
  'eccentric-bolt': {
    title: 'Eccentric bolt',
    does: 'cam in a slot',
    drawn: { kind: 'eccentric-bolt', moves: 'armFront', slot: [0, 1, 0], throw: 6, mark: 15 },
    start: { mark: 15 },
  },
  'offset-bushing': {
    title: 'Offset bushing',
    does: 'hole off centre',
    drawn: { kind: 'offset-bushing', moves: 'armRear', axis: [1, 0, 0], twelve: [0, 0, 1], offset: 6, index: 30 },
    start: { index: 30 },
  },
  'clamp-eccentric': {
    title: 'Clamp eccentric',
    does: 'strut clamp',
    drawn: { kind: 'clamp-eccentric', pivot: 'clampLower', bolt: 'clampUpper', axis: [1, 0, 0], throw: 3, mark: 15 },
    start: { pivot: 'clampLower', bolt: 'clampUpper', axis: [1, 0, 0], mark: 15 },
  },
  turnbuckle: {
    title: 'Turnbuckle',
    does: 'rod length',
    drawn: { kind: 'turnbuckle', rod: 'tieRod', perTurn: 1.5, range: [-10, 10], step: 0.5 },
    start: { rod: 'tieRod' },
  },
  perch: {
    title: 'Perch',
    does: 'spring seat',
    drawn: { kind: 'perch', perTurn: 2, range: [-10, 10], step: 0.5 },
    start: {},
  },
};

/** What a kind of adjuster looks like, and what a new one begins with. */
export const sampleOfKind = (kind: AdjusterKind): SamplePart => SAMPLES[kind];
