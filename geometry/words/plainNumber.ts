/** No more than three decimals, no zeros at the end, a true minus. */
export const plainNumber = (value: number): string => String(Number(value.toFixed(3)) + 0).replace('-', '−');
