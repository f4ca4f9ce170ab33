/** Characters that no file system takes in a name. */
const UNWANTED = /[\\/:*?"<>|\p{Cc}]+/gu;

/** Hands a picture or a table to the browser's downloads, where the person finds it under `name`. */
export const saveFile = (name: string, content: Blob): void => {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name.replace(UNWANTED, ' ').trim();
  link.click();
  // The download has taken hold of it by the next turn of the loop.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
};
