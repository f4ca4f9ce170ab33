import { useState } from 'react';
import { useKept } from '../../shell/keptState';
import type { Field } from './fieldTree';
import { useForm } from './formHost';

/** A part that was begun and is not made yet. */
export interface Draft {
  /** empty until it is given, and where the part has none */
  readonly name: string;
  readonly value: unknown;
}

export const beginDraft = (field: Field): Draft => ({ name: '', value: field.kind === 'leaf' ? undefined : {} });

/** Nothing was typed into it yet. */
export const isFresh = ({ name, value }: Draft): boolean =>
  name === '' && (value === undefined || Object.keys(value as object).length === 0);

export type SetDraft = (next: Draft | null | ((now: Draft | null) => Draft | null)) => void;

/**
 * The part that is being made at a place, null where none is. What was typed for the car is there again when one comes back from
 * another page, step or axle; a part inside of one that is being made lives as long as that is on the screen.
 * @param place - unlike any other of this car
 */
export const useDraft = (place: string): readonly [Draft | null, SetDraft] => {
  const { isOfCar } = useForm();
  const ofCar = useKept<Draft | null>(`points.draft.${place}`, () => null);
  const inside = useState<Draft | null>(null);
  return isOfCar ? ofCar : inside;
};
