/** Steps that an arrow or page key asks for, a tenth with Shift; Home is 0, null any other key. */
export const keySteps = (key: string, fine: boolean): number | null => {
  const one = fine ? 0.1 : 1;
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return one;
    case 'ArrowLeft':
    case 'ArrowDown':
      return -one;
    case 'PageUp':
      return 5;
    case 'PageDown':
      return -5;
    case 'Home':
      return 0;
    default:
      return null;
  }
};
