import type { BenchPosition } from '../state/benchStore';
import { formatSigned } from '../units/format';

/** Whether the car is shown anywhere but standing, straight ahead. */
export const isMoved = ({ travel, rollDeg, rack }: BenchPosition): boolean => travel !== 0 || rollDeg !== 0 || rack !== 0;

/** "at bump +10.0, roll +1.50°", or that the car stands. */
export const positionWords = ({ travel, rollDeg, rack }: BenchPosition): string => {
  const parts = [
    travel !== 0 ? `bump ${formatSigned(travel, 1)}` : null,
    rollDeg !== 0 ? `roll ${formatSigned(rollDeg, 2)}°` : null,
    rack !== 0 ? `rack ${formatSigned(rack, 1)}` : null,
  ].filter((part) => part !== null);
  return parts.length === 0 ? 'standing' : `at ${parts.join(', ')}`;
};
