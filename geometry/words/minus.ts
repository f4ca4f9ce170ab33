/** A number as people read it: with a true minus sign. */
export const withMinus = (value: number): string => String(value).replace('-', '−');
