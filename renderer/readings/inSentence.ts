/** Names of people keep their capital. */
const PROPER = ['Ackermann'];

/** A reading's name inside a sentence: "Go to roll centre height", and still "Go to Ackermann". */
export const inSentence = (name: string): string =>
  PROPER.reduce((said, proper) => said.replaceAll(proper.toLowerCase(), proper), name.toLowerCase());
