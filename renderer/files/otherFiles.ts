/** What a file is that is no car: said instead of faults of a car in it. */
export interface OtherFile {
  /** "a picture": what it is */
  readonly words: string;
  /** what can be done with it here */
  readonly advice: string;
  /** the page that takes it */
  readonly page?: 'points';
}

const CHOOSE = 'Nothing was read of it. Cars are text files that end in .json.';
const LISTS = 'A list of coordinates is taken on Points, by Coordinates in; a recorded list of positions on Studies, by Sweep.';

const startsWith = (bytes: Uint8Array, ...begin: readonly number[]): boolean => begin.every((byte, at) => bytes[at] === byte);

const PICTURES: readonly (readonly number[])[] = [
  [0x89, 0x50, 0x4e, 0x47], // PNG
  [0xff, 0xd8, 0xff], // JPEG
  [0x47, 0x49, 0x46, 0x38], // GIF
  [0x52, 0x49, 0x46, 0x46], // WebP
];
const ARCHIVE = [0x50, 0x4b, 0x03, 0x04];
const DOCUMENT = [0x25, 0x50, 0x44, 0x46]; // PDF

/** A text with bytes of zero is of an encoding with two bytes a letter, which is told as such; anything else with them is no text. */
const isText = (bytes: Uint8Array): boolean =>
  !bytes.subarray(0, 4096).includes(0) ||
  startsWith(bytes, 0xff, 0xfe) ||
  startsWith(bytes, 0xfe, 0xff) ||
  [bytes[0], bytes[1]].includes(0x7b);

/** Most lines are of three cells or more, and nothing in it begins as a car file does. */
const isList = (text: string): boolean => {
  if (/^\uFEFF?\s*[{[]/.test(text)) return false;
  const lines = text.split(/\r?\n/, 200).filter((line) => line.trim() !== '');
  const rows = lines.filter((line) => line.split(/[,;\t]/).length >= 3);
  return lines.length >= 2 && rows.length >= lines.length / 2;
};

/**
 * What a file is that could not be read as a car.
 * @returns null: it may be a car, and its faults say what is wrong with it
 */
export const otherFile = (name: string, bytes: Uint8Array): OtherFile | null => {
  if (PICTURES.some((begin) => startsWith(bytes, ...begin))) return { words: 'a picture', advice: CHOOSE };
  if (startsWith(bytes, ...DOCUMENT)) return { words: 'a PDF', advice: CHOOSE };
  if (startsWith(bytes, ...ARCHIVE) && /\.(xlsx|ods)$/i.test(name))
    return { words: 'a spreadsheet', advice: `Save it as CSV. ${LISTS}`, page: 'points' };
  if (!isText(bytes)) return { words: 'no text', advice: CHOOSE };
  if (isList(new TextDecoder().decode(bytes))) return { words: 'a list, not a car', advice: LISTS, page: 'points' };
  return null;
};
