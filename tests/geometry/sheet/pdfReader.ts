import { inflateSync } from 'node:zlib';

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
  /** what the tree of the order of reading lists, from its root on: kind, page (from 0) and mark on the page */
  readonly reading: readonly { readonly tag: string; readonly page: number; readonly mark: number }[];
  readonly catalog: string;
  readonly title: string;
  readonly created: string;
  readonly preferences: string;
  /** the fonts' own files */
  readonly fontFiles: readonly Uint8Array[];
}

const need = <Value>(value: Value | null | undefined, what: string): Value => {
  if (value === null || value === undefined) throw new Error(`The PDF has no ${what}.`);
  return value;
};

/** UTF-16 in hexadecimal digits. */
const unicode = (digits: string): string =>
  (digits.match(/.{4}/g) ?? []).map((code) => String.fromCharCode(Number.parseInt(code, 16))).join('');

/** What stands between the brackets of a text for readers: UTF-16 with its mark before it, or plain letters. */
const wordsOf = (text: string): string => {
  const plain = need(/^\((.*)\)$/s.exec(text), 'text')[1]!.replace(/\\(.)/gs, (_, letter: string) => ESCAPED[letter] ?? letter);
  return plain.startsWith('\xfe\xff') ? unicode(Buffer.from(plain.slice(2), 'latin1').toString('hex')) : plain;
};
const ESCAPED: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

/** Lengths of the layout have two places. */
const length = (text: string | number): number => Math.round(Number(text) * 100) / 100;

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
    const bytes = text.slice(from, from + length);
    return text.includes('/Filter /FlateDecode') ? inflateSync(Buffer.from(bytes, 'latin1')).toString('latin1') : bytes;
  };
  const lettersOf = (font: number): ReadonlyMap<string, string> =>
    new Map(
      [...streamOf(reference(object(font), 'ToUnicode')).matchAll(/<(.{4})> <.{4}> \[([^\]]*)\]/g)].flatMap(([, first, codes]) =>
        codes!.split(' ').map((code, index): [string, string] => {
          const glyph = (Number.parseInt(first!, 16) + index).toString(16).padStart(4, '0');
          return [glyph, unicode(code.slice(1, -1))];
        }),
      ),
    );

  const trailer = file.slice(file.indexOf('trailer', start));
  const catalog = object(reference(trailer, 'Root'));
  const kids = [...need(/\/Kids \[([^\]]*)\]/.exec(object(reference(catalog, 'Pages'))), 'pages')[1]!.matchAll(/(\d+) 0 R/g)];
  const pages = kids.map(([, number]) => {
    const page = object(Number(number));
    const [width, height] = need(/\/MediaBox \[0 0 (\S+) (\S+)\]/.exec(page), 'paper')
      .slice(1)
      .map(Number) as [number, number];
    const fonts = new Map(
      [...object(reference(page, 'Resources')).matchAll(/\/(F\d) (\d+) 0 R/g)].map(([, name, font]) => [
        name!,
        lettersOf(Number(font)),
      ]),
    );
    const content = streamOf(reference(page, 'Contents'));
    const turned = `1 0 0 -1 0 ${height} cm\n`;
    if (!content.startsWith(turned)) throw new Error('The page is not turned over at its height.');
    // a text stands on its feet: the page is turned once more for it
    const shown = content
      .replaceAll(turned, '')
      .matchAll(
        /\/(\w+) <<\n\/MCID (\d+)\n>> BDC\nq\nBT\n1 0 0 1 (\S+) (\S+) Tm\n\/(F\d) (\S+) Tf\n\[<([0-9a-f]*)> 0\] TJ\nET\nQ\nEMC\n/g,
      );
    const texts = [...shown].map(([, tag, mark, x, y, font, size, digits], index) => {
      if (Number(mark) !== index) throw new Error(`The text ${index} of a page has the mark ${mark}.`);
      return {
        tag: tag!,
        text: (digits!.match(/.{4}/g) ?? [])
          .map((glyph) => need(fonts.get(font!)?.get(glyph), `letter of glyph ${glyph}`))
          .join(''),
        x: length(x!),
        y: length(height - Number(y)),
        size: Number(size),
      };
    });
    if ((content.match(/T[jJ]\n/g) ?? []).length !== texts.length) throw new Error('A text of the page was not understood.');
    return { width, height, texts };
  });
  const children = (text: string): readonly number[] =>
    [...need(/\/K \[([^\]]*)\]/.exec(text), 'children')[1]!.matchAll(/(\d+) 0 R/g)].map(([, number]) => Number(number));
  const pageNumbers = kids.map(([, number]) => Number(number));
  /** A paragraph is one text, or pieces that are read one after the other. */
  const marksOf = (element: number): readonly { readonly tag: string; readonly page: number; readonly mark: number }[] => {
    const text = object(element);
    if (!/\/Pg \d/.test(text)) return children(text).flatMap(marksOf);
    return [
      {
        tag: need(/\/S \/(\w+)/.exec(text), 'kind')[1]!,
        page: pageNumbers.indexOf(reference(text, 'Pg')),
        mark: Number(need(/\/K \[(\d+)\]/.exec(text), 'mark')[1]),
      },
    ];
  };
  const reading = children(object(reference(catalog, 'StructTreeRoot')))
    .flatMap((whole) => children(object(whole)))
    .flatMap(marksOf);
  const info = object(reference(trailer, 'Info'));
  const fontFiles = [...file.matchAll(/\/FontFile2 (\d+) 0 R/g)].map(([, number]) =>
    Uint8Array.from(Buffer.from(streamOf(Number(number)), 'latin1')),
  );
  return {
    pages,
    reading,
    catalog,
    title: wordsOf(object(reference(info, 'Title'))),
    created: wordsOf(object(reference(info, 'CreationDate'))),
    preferences: object(reference(catalog, 'ViewerPreferences')),
    fontFiles,
  };
};
