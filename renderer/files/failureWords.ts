import type { FileFailure } from './fileService';

/** What, where and what to do, for a file that could not be had. */
export const failureWords = ({ code, name }: FileFailure): string => {
  const what = name ? `The car "${name}"` : 'The list of sample cars';
  switch (code) {
    case 'notFound':
      return `${what} is not there any more. Choose another one.`;
    case 'unreadable':
      return `${what} could not be read: the system refused. Check that the file may be read, then choose it again.`;
    case 'disconnected':
      return `${what} could not be had: the program behind this window does not answer. Start it again with npm start.`;
  }
};
