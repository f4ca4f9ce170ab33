/** What is said of left and right: once where it is the same, else both, each by its name. */
export const sideWords = (left: string, right: string): string => (left === right ? left : `left ${left}; right ${right}`);
