/**
 * Objects of a PDF file, written one after another with the table that finds them.
 * @see ISO 32000-1:2008, 7.5: header, body, cross-reference table, trailer
 */
export class PdfFile {
  private readonly objects: (Uint8Array | null)[] = [];

  /** A number for an object that is written later. */
  reserve(): number {
    this.objects.push(null);
    return this.objects.length;
  }

  /** Writes an object under a reserved number. @param body - as it stands between `obj` and `endobj` */
  write(number: number, body: string): void {
    this.objects[number - 1] = latin(`${number} 0 obj\n${body}\nendobj\n`);
  }

  add(body: string): number {
    const number = this.reserve();
    this.write(number, body);
    return number;
  }

  /** Writes bytes with a dictionary before them. @param entries - of the dictionary, its length left out */
  stream(entries: string, bytes: Uint8Array): number {
    const number = this.reserve();
    const before = latin(`${number} 0 obj\n<< ${entries} /Length ${bytes.length} >>\nstream\n`);
    this.objects[number - 1] = joined([before, bytes, latin('\nendstream\nendobj\n')]);
    return number;
  }

  /** The whole file. */
  bytes(catalog: number, info: number): Uint8Array {
    // bytes over 127 in the second line tell whoever moves files that this one is no text
    const header = joined([latin('%PDF-1.7\n%'), new Uint8Array([0xe2, 0xe3, 0xcf, 0xd3]), latin('\n')]);
    const places: number[] = [];
    let at = header.length;
    for (const object of this.objects) {
      places.push(at);
      at += object?.length ?? 0;
    }
    const rows = places.map((place) => `${String(place).padStart(10, '0')} 00000 n \n`).join('');
    const count = this.objects.length + 1;
    const trailer = `trailer\n<< /Size ${count} /Root ${catalog} 0 R /Info ${info} 0 R >>\nstartxref\n${at}\n%%EOF\n`;
    return joined([
      header,
      ...this.objects.filter((object) => object !== null),
      latin(`xref\n0 ${count}\n0000000000 65535 f \n${rows}${trailer}`),
    ]);
  }
}

/** Text of plain letters as bytes. */
export const latin = (text: string): Uint8Array => {
  const bytes = new Uint8Array(text.length);
  for (let index = 0; index < text.length; index += 1) bytes[index] = text.charCodeAt(index);
  return bytes;
};

const joined = (parts: readonly Uint8Array[]): Uint8Array => {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
};

export const hex4 = (value: number): string => value.toString(16).toUpperCase().padStart(4, '0');

/** Text for readers, in any letters: UTF-16 with its mark before it. */
export const pdfText = (text: string): string => {
  let digits = 'FEFF';
  for (let index = 0; index < text.length; index += 1) digits += hex4(text.charCodeAt(index));
  return `<${digits}>`;
};
