export const LimitBars = (_: { reading: string; columns: number }) => null;
