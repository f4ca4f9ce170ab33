export const squared = (value: number): number => value * value;
