/** A fenced block of a document: what stands after the fence, and the lines between. */
export interface Block {
  /** "sh", "text", "json"… */
  readonly language: string;
  /** the rest of the fence's line: "status=2" */
  readonly remark: string;
  readonly text: string;
  /** first line of the text, counted from 0 */
  readonly line: number;
}

/** Every fenced block, in order. */
export function blocksOf(markdown: string): Block[] {
  const lines = markdown.split('\n');
  const blocks: Block[] = [];
  for (let at = 0; at < lines.length; at++) {
    const fence = /^```(\w+) ?(.*)$/.exec(lines[at] ?? '');
    if (!fence) continue;
    const end = lines.indexOf('```', at + 1);
    if (end < 0) throw new Error(`The block of line ${at + 1} has no end.`);
    blocks.push({
      language: fence[1] ?? '',
      remark: fence[2] ?? '',
      text: lines.slice(at + 1, end).join('\n'),
      line: at + 1,
    });
    at = end;
  }
  return blocks;
}

/** The document with the text of one of its blocks replaced; line numbers of earlier blocks stay right. */
export function withBlock(markdown: string, block: Block, text: string): string {
  const lines = markdown.split('\n');
  lines.splice(block.line, block.text.split('\n').length, ...text.split('\n'));
  return lines.join('\n');
}

const withoutBlocks = (markdown: string): string => markdown.replace(/^```[\s\S]*?^```$/gm, '');

/** Where links and pictures lead, as written. */
export const linksOf = (markdown: string): string[] =>
  [...withoutBlocks(markdown).matchAll(/\]\(([^)\s]+)\)/g)].map((match) => match[1] ?? '');

/** The anchors of a document's headings, as the usual renderers make them. */
export const anchorsOf = (markdown: string): string[] =>
  [...withoutBlocks(markdown).matchAll(/^#+ (.+)$/gm)].map((match) =>
    (match[1] ?? '')
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s_-]/gu, '')
      .replaceAll(' ', '-'),
  );

/**
 * The document with what stands between `<!-- generated: name -->` and `<!-- end -->` made anew.
 * @throws RangeError for a name that nobody makes
 */
export function withSections(markdown: string, sections: ReadonlyMap<string, string>): string {
  return markdown.replace(
    /(<!-- generated: ([\w-]+) -->\n)[\s\S]*?(<!-- end -->)/g,
    (_, head: string, name: string, foot: string) => {
      const text = sections.get(name);
      if (text === undefined) throw new RangeError(`nothing is generated under the name ${name}`);
      return `${head}${text.trimEnd()}\n${foot}`;
    },
  );
}
