const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes as text that any file and any address takes. */
export const toBase64 = (bytes: Uint8Array): string => {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 3) {
    const [a, b, c] = [bytes[at] ?? 0, bytes[at + 1], bytes[at + 2]];
    parts.push(LETTERS[a >> 2] ?? '', LETTERS[((a & 3) << 4) | ((b ?? 0) >> 4)] ?? '');
    parts.push(b === undefined ? '=' : (LETTERS[((b & 15) << 2) | ((c ?? 0) >> 6)] ?? ''));
    parts.push(c === undefined ? '=' : (LETTERS[c & 63] ?? ''));
  }
  return parts.join('');
};

/** The bytes of such a text. */
export const fromBase64 = (text: string): Uint8Array => {
  const size = (text.length / 4) * 3 - (text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0);
  const values = new Uint8Array(128);
  for (let index = 0; index < LETTERS.length; index += 1) values[LETTERS.charCodeAt(index)] = index;
  const bytes = new Uint8Array(size);
  let at = 0;
  for (let place = 0; place < text.length; place += 4) {
    const four = [0, 1, 2, 3].reduce((sum, next) => sum * 64 + (values[text.charCodeAt(place + next)] ?? 0), 0);
    for (let part = 2; part >= 0 && at < size; part -= 1) {
      bytes[at] = (four >> (8 * part)) & 255;
      at += 1;
    }
  }
  return bytes;
};
