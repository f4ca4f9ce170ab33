import { createContext, useCallback, useContext, useLayoutEffect, useState } from 'react';

/** @param words - the spoken name of a field that refuses what stands in it; null: it does not any more */
export type TellFault = (id: string, words: string | null) => void;

/** Who is told that a number field below refuses what stands in it: what is worked out is then not of what the fields say. */
export const FieldFaults = createContext<TellFault | null>(null);

/** Tells the form around a field that it refuses what stands in it. @param label - the spoken name of the field */
export const useTellFault = (id: string, label: string, isFaulty: boolean): void => {
  const tell = useContext(FieldFaults);
  // before the click is taken by which the field was left
  useLayoutEffect(() => {
    if (!tell || !isFaulty) return;
    tell(id, label);
    return () => tell(id, null);
  }, [tell, id, label, isFaulty]);
};

/** The spoken names of the fields of a form that refuse what stands in them, and what goes to `FieldFaults` around it. */
export const useFieldFaults = (): readonly [readonly string[], TellFault] => {
  const [faults, setFaults] = useState<Readonly<Record<string, string>>>({});
  const tell = useCallback<TellFault>(
    (id, words) => setFaults(({ [id]: _before, ...others }) => (words === null ? others : { ...others, [id]: words })),
    [],
  );
  return [Object.values(faults), tell];
};
