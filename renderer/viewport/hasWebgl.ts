/** Whether this machine can draw the view at all. Asked once, on a canvas that is thrown away. */
export const hasWebgl = (): boolean => {
  try {
    const context = document.createElement('canvas').getContext('webgl2');
    context?.getExtension('WEBGL_lose_context')?.loseContext();
    return context !== null;
  } catch {
    return false;
  }
};
