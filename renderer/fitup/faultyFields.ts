/**
 * What is said where fields refuse what stands in them, and what is shown is of what they held before.
 * @param labels - the spoken names of the fields, with units
 */
export const faultyWords = (labels: readonly string[]): string => {
  const names = labels.map((label) => label.replace(/, [^,]*$/, ''));
  const [first = '', ...more] = names;
  const listed = more.length === 0 ? first : `${[first, ...more.slice(0, -1)].join(', ')} and ${more.at(-1)}`;
  return `${listed} ${more.length === 0 ? 'is' : 'are'} not taken as ${more.length === 0 ? 'it stands' : 'they stand'}: what is shown is of before. Type another number, or press Escape there.`;
};
