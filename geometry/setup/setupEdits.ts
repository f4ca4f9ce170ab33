import type { AxleName, SetupAxleDocument, SetupDocument } from '../car/document';

export type Sides = 'both' | 'left' | 'right';

/** The number of one adjuster on one side in a setup; null where nothing is set (zero, or a concentric bushing). */
export function settingOf(
  setup: SetupDocument | undefined,
  axle: AxleName,
  adjuster: string,
  side: 'left' | 'right',
): number | null {
  const entries = setup?.[axle];
  const own = entries?.[side];
  if (own && Object.hasOwn(own, adjuster)) return own[adjuster] ?? null;
  return entries?.both?.[adjuster] ?? null;
}

function without<Value>(record: Readonly<Record<string, Value>>, key: string): Readonly<Record<string, Value>> | undefined {
  const rest = Object.fromEntries(Object.entries(record).filter(([name]) => name !== key));
  return Object.keys(rest).length > 0 ? rest : undefined;
}

/** The same entries with empty sides left out, so that a setting put back leaves no trace in the file. */
function tidy(entries: SetupAxleDocument): SetupAxleDocument {
  return Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined));
}

/** A setup with one adjuster set; `both` takes the sides' own numbers away. */
export function withSetting(
  setup: SetupDocument,
  axle: AxleName,
  adjuster: string,
  sides: Sides,
  value: number | null,
): SetupDocument {
  const entries = setup[axle] ?? {};
  const changed = { ...entries, [sides]: { ...entries[sides], [adjuster]: value } };
  if (sides === 'both')
    for (const side of ['left', 'right'] as const)
      if (changed[side]) Object.assign(changed, { [side]: without(changed[side], adjuster) });
  return { ...setup, [axle]: tidy(changed) };
}

/** A setup with a height or toe of the axle given, or taken out with null. */
export function withAxleValue(
  setup: SetupDocument,
  axle: AxleName,
  key: 'setToe' | 'rideHeight',
  value: number | null,
): SetupDocument {
  return { ...setup, [axle]: tidy({ ...setup[axle], [key]: value ?? undefined }) };
}
