/** A line of a stream: its text, or why it cannot be read. */
export type Line = { readonly text: string } | { readonly fault: string };

const NEW_LINE = 10;

/**
 * The lines of a stream of bytes, one by one. No more of the stream is held than one line; of a line that is too long
 * nothing is kept. A byte-order mark at the start and a carriage return at the end of a line are dropped.
 *
 * @param longest - bytes past which a line is a fault
 */
export async function* readLines(stream: AsyncIterable<Uint8Array>, longest: number): AsyncGenerator<Line> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let pieces: Uint8Array[] = [];
  let size = 0;
  const finish = (): Line => {
    const tooLong = size > longest;
    const bytes = tooLong ? new Uint8Array() : Buffer.concat(pieces);
    pieces = [];
    size = 0;
    if (tooLong) return { fault: `the line is longer than ${longest / 1024 / 1024} MiB` };
    try {
      return { text: decoder.decode(bytes) };
    } catch {
      return { fault: 'the line is not UTF-8' };
    }
  };
  const take = (piece: Uint8Array): void => {
    size += piece.length;
    if (size > longest) pieces = [];
    else pieces.push(piece);
  };
  for await (const chunk of stream) {
    let start = 0;
    for (let end = chunk.indexOf(NEW_LINE); end >= 0; end = chunk.indexOf(NEW_LINE, start)) {
      take(chunk.subarray(start, end));
      yield finish();
      start = end + 1;
    }
    take(chunk.subarray(start));
  }
  if (size > 0) yield finish();
}
