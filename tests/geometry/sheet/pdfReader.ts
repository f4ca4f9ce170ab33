/**
 * Reads back what `sheetPdf` may write, by the table of references of the file: enough to hold every text of a page against the
 * layout. It knows nothing of how the file was made.
 */
export interface PdfText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly tag: string;
}

export interface ReadPdf {
  readonly pages: readonly { readonly width: number; readonly height: number; readonly texts: readonly PdfText[] }[];
  readonly catalog: string;
  readonly info: string;
  readonly object: (number: number) => string;
}

const need = <Value>(value: Value | null | undefined, what: string): Value => {
  if (value === null || value === undefined) throw new Error(`The PDF has no ${what}.`);
  return value;
};

/** UTF-16 in hexadecimal digits. */
const unicode = (digits: string): string =>
  (digits.match(/.{4}/g) ?? []).map((code) => String.fromCharCode(Number.parseInt(code, 16))).join('');

export const readPdf = (bytes: Uint8Array): ReadPdf => {
  const file = Buffer.from(bytes).toString('latin1');
  const start = Number(need(/startxref\n(\d+)\n%%EOF\n$/.exec(file), 'startxref')[1]);
  const table = need(/^xref\n0 (\d+)\n/.exec(file.slice(start)), 'table of references');
  const places = [...file.slice(start).matchAll(/(\d{10}) (\d{5}) ([nf]) \n/g)].map(([, place, , kind]) =>
    kind === 'n' ? Number(place) : -1,
  );
  if (places.length !== Number(table[1])) throw new Error('The table of references has another length than it says.');
  const object = (number: number): string => {
    const place = need(places[number], `object ${number}`);
    const head = `${number} 0 obj\n`;
    if (!file.startsWith(head, place)) throw new Error(`Object ${number} is not where the table says.`);
    return file.slice(place + head.length, file.indexOf('\nendobj', place));
  };
  const reference = (text: string, name: string): number => Number(need(new RegExp(`/${name} (\\d+) 0 R`).exec(text), name)[1]);
  const streamOf = (number: number): string => {
    const text = object(number);
    const length = Number(need(/\/Length (\d+)/.exec(text), 'length')[1]);
    const from = text.indexOf('stream\n') + 'stream\n'.length;
    if (!text.startsWith('\nendstream', from + length)) throw new Error(`The stream ${number} has another length than it says.`);
    return text.slice(from, from + length);
  };
  const lettersOf = (font: number): ReadonlyMap<string, string> =>
    new Map(
      [...streamOf(reference(object(font), 'ToUnicode')).matchAll(/<(.{4})> <(.{4})>/g)].map(([, glyph, code]) => [
        glyph!,
        unicode(code!),
      ]),
    );

  const trailer = file.slice(file.indexOf('trailer', start));
  const catalog = object(reference(trailer, 'Root'));
  const kids = [...need(/\/Kids \[([^\]]*)\]/.exec(object(reference(catalog, 'Pages'))), 'pages')[1]!.matchAll(/(\d+) 0 R/g)];
  const pages = kids.map(([, number]) => {
    const page = object(Number(number));
    const [width, height] = need(/\/MediaBox \[0 0 (\S+) (\S+)\]/.exec(page), 'paper')
      .slice(1)
      .map(Number) as [number, number];
    const fonts = new Map([...page.matchAll(/\/(F\d) (\d+) 0 R/g)].map(([, name, font]) => [name!, lettersOf(Number(font))]));
    const content = streamOf(reference(page, 'Contents'));
    const [, turnedAt] = need(/^1 0 0 -1 0 (\S+) cm\n/.exec(content), 'turn of the page');
    if (Number(turnedAt) !== height) throw new Error('The page is not turned over at its height.');
    const shown = content.matchAll(
      /\/(\w+) << \/MCID \d+ >> BDC BT [\d. ]+ rg \/(F\d) (\S+) Tf 1 0 0 -1 (\S+) (\S+) Tm <([0-9A-F]*)> Tj ET EMC/g,
    );
    const texts = [...shown].map(([, tag, font, size, x, y, digits]) => ({
      tag: tag!,
      text: (digits!.match(/.{4}/g) ?? [])
        .map((glyph) => need(fonts.get(font!)?.get(glyph), `letter of glyph ${glyph}`))
        .join(''),
      x: Number(x),
      y: Number(y),
      size: Number(size),
    }));
    if ((content.match(/ Tj/g) ?? []).length !== texts.length) throw new Error('A text of the page was not understood.');
    return { width, height, texts };
  });
  return { pages, catalog, info: object(reference(trailer, 'Info')), object };
};
