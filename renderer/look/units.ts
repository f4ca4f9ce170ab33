import { createContext, useContext } from 'react';
import { STANDARD_UNITS, type ShownUnits } from '../units/unitChoice';

export const UnitsContext = createContext<ShownUnits>(STANDARD_UNITS);

/** The units that a person reads and types in, with the diameter for toe at the axle on the bench. */
export const useUnits = (): ShownUnits => useContext(UnitsContext);
