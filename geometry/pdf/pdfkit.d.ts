/**
 * What is used of the library `pdfkit` 0.20. It comes without types, and those of others are of an older version and ask for
 * Node's, which the window does not know.
 */
declare module 'pdfkit' {
  interface DocumentOptions {
    readonly pdfVersion: '1.7';
    readonly autoFirstPage: boolean;
    /** the font to begin with; none for null */
    readonly font: null;
    readonly tagged: boolean;
    readonly lang: string;
    /** viewers head their window by the title instead of the file's name */
    readonly displayTitle: boolean;
    readonly info: { readonly Title: string; readonly Creator: string; readonly CreationDate: Date };
  }

  interface TextOptions {
    readonly lineBreak: false;
    readonly baseline: 'alphabetic';
    readonly structParent: StructureElement;
    readonly structType: string;
  }

  interface StructureElement {
    add(child: StructureElement): this;
    end(): void;
  }

  /** Lengths in points from the page's top left corner, y down. */
  class PDFDocument {
    constructor(options: DocumentOptions);
    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): this;
    registerFont(name: string, bytes: Uint8Array): this;
    font(name: string, size: number): this;
    text(text: string, x: number, y: number, options: TextOptions): this;
    struct(type: string): StructureElement;
    addStructure(element: StructureElement): this;
    markContent(tag: 'Artifact'): this;
    endMarkedContent(): this;
    save(): this;
    restore(): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): this;
    closePath(): this;
    fillColor(colour: string): this;
    strokeColor(colour: string): this;
    lineWidth(width: number): this;
    lineCap(cap: 'round'): this;
    dash(lengths: readonly number[]): this;
    fill(): this;
    stroke(): this;
    fillAndStroke(): this;
    /** called by `end` */
    endMetadata(): void;
    end(): void;
  }
}

declare module 'pdfkit/output' {
  import type { PDFDocument } from 'pdfkit';
  export function toBytes(document: PDFDocument): Promise<Uint8Array<ArrayBuffer>>;
}
