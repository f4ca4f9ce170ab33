import type { FileFailure } from './fileService';

/** The file by its name and its folder, or what stands for it. */
const whatAndWhere = ({ name, folder }: FileFailure): string => {
  if (name === null) return 'What was asked for';
  return folder === undefined ? `“${name}”` : `“${name}” in ${folder}`;
};

/** What, where and what to do, for a file that could not be opened. */
export const failureWords = (failure: FileFailure): string => {
  const what = whatAndWhere(failure);
  switch (failure.code) {
    case 'notFound':
      return `${what} is not there any more: it was moved, renamed or deleted. Choose another one.`;
    case 'noFolder':
      return `${what}: the folder is not there any more. Choose another one.`;
    case 'unreadable':
      return `${what} could not be read: the system refused. Check that the file may be read, then choose it again.`;
    case 'notAFile':
      return `${what} is a folder or a device, not a file. Choose a car file.`;
    case 'tooLarge':
      return `${what} is larger than 16 MiB. Keep large meshes in files of their own beside the car file.`;
    case 'disconnected':
      return `${what} could not be had: the program behind this window does not answer. Start it again with npm start.`;
    case 'badRequest':
      return `${what} could not be had: window and program are not of one version. Start Jounce again.`;
    case 'unwritable':
    case 'readOnly':
    case 'full':
    case 'changed':
      return saveFailureWords(failure);
  }
};

/** What, where and what to do, for a car that could not be saved. The car itself is still open, and its copy kept. */
export const saveFailureWords = (failure: FileFailure): string => {
  const what = whatAndWhere(failure);
  switch (failure.code) {
    case 'readOnly':
      return `${what} may not be written: the file or its folder is read-only. Save under another name or in another place, or allow writing and save again.`;
    case 'full':
      return `${what} was not written: the disk is full. The file is as it was. Make room and save again, or save on another disk.`;
    case 'noFolder':
      return `${what} was not written: the folder is not there any more (a drive that was taken out?). Save in another place.`;
    case 'notFound':
      return `${what} is not there any more: it was moved, renamed or deleted. Save under a name of your choice.`;
    case 'changed':
      return failure.there === null
        ? `${what} was deleted or moved since it was opened. Write it anew, or save in another place.`
        : `${what} was changed by somebody else since it was opened.`;
    case 'notAFile':
      return `${what} is a folder or a device now. Save under another name.`;
    case 'tooLarge':
      return `${what} would be larger than 16 MiB, more than a car file may be. Keep meshes in files of their own and save again.`;
    case 'disconnected':
      return `${what} was not written: the program behind this window does not answer. Download a copy, then start Jounce again with npm start.`;
    case 'badRequest':
      return `${what} was not written: window and program are not of one version. Download a copy, then start Jounce again.`;
    case 'unreadable':
    case 'unwritable':
      return `${what} was not written: the system refused. The file is as it was. Try again, or save in another place.`;
  }
};
