export const LimitChips = () => null;
