import { toRadians } from '../core/angle';
import type { SetupAxleDocument, SideName } from '../car/document';
import type { Adjuster, AxleMechanism } from '../car/mechanism';
import type { Settings } from '../adjusters/adjustment';

/** A setting of the file (its unit, degrees) in mm, radians or turns. */
export function settingInside(adjuster: Adjuster, value: number, mm: number): number {
  switch (adjuster.kind) {
    case 'slide':
      return value * mm;
    case 'eccentric-bolt':
    case 'offset-bushing':
    case 'clamp-eccentric':
      return toRadians(value);
    case 'turnbuckle':
    case 'perch':
      return value;
  }
}

/** The other way round: what the file would say. */
export function settingInFile(adjuster: Adjuster, value: number, mm: number): number {
  return value / settingInside(adjuster, 1, mm);
}

/** Settings of one side: its own entries replace those of both sides; null and absent mean zero, or a concentric bushing. */
export function settingsOf(axle: AxleMechanism, setup: SetupAxleDocument | undefined, side: SideName, mm: number): Settings {
  const settings: Record<string, number | null> = {};
  const both = setup?.both ?? {};
  const own = setup?.[side] ?? {};
  for (const adjuster of axle.adjusters) {
    const value = Object.hasOwn(own, adjuster.name) ? own[adjuster.name] : both[adjuster.name];
    settings[adjuster.name] = value === null || value === undefined ? null : settingInside(adjuster, value, mm);
  }
  return settings;
}
