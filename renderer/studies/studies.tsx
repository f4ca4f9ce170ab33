import { lazy, type ComponentType, type LazyExoticComponent } from 'react';
import type { StudyName } from '../state/benchStore';

/** One question that can be asked of the car: a line of the list, and what stands beside it. */
export interface Study {
  readonly name: StudyName;
  readonly label: string;
  /** what it answers, as it stands under its name */
  readonly sentence: string;
  /** a chunk of its own; it takes no properties and fills its place */
  readonly Panel: LazyExoticComponent<ComponentType>;
}

/** The studies that there are, in the order of the list. */
export const STUDIES: readonly Study[] = [
  {
    name: 'sweep',
    label: 'Sweep',
    sentence: 'readings over travel, roll, steer',
    Panel: lazy(async () => ({ default: (await import('./sweep/SweepStudy')).SweepStudy })),
  },
  {
    name: 'compare',
    label: 'Compare',
    sentence: 'setups at the same positions',
    Panel: lazy(async () => ({ default: (await import('./compare/CompareStudy')).CompareStudy })),
  },
  {
    name: 'influence',
    label: 'Influence',
    sentence: 'what one step of each part does',
    Panel: lazy(async () => ({ default: (await import('./influence/InfluenceStudy')).InfluenceStudy })),
  },
  {
    name: 'ways',
    label: 'Ways',
    sentence: 'one change, every way to get it',
    Panel: lazy(async () => ({ default: (await import('./ways/WaysStudy')).WaysStudy })),
  },
  {
    name: 'reach',
    label: 'Reach',
    sentence: 'settings that give what I want',
    Panel: lazy(async () => ({ default: (await import('./reach/ReachStudy')).ReachStudy })),
  },
  {
    name: 'map',
    label: 'Map',
    sentence: 'two adjusters, one reading',
    Panel: lazy(async () => ({ default: (await import('./map/MapStudy')).MapStudy })),
  },
  {
    name: 'gauges',
    label: 'Gauges',
    sentence: 'as the shop’s dials read it',
    Panel: lazy(async () => ({ default: (await import('./gauges/GaugesStudy')).GaugesStudy })),
  },
];
