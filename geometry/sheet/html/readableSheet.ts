import type { CornersSection, CurvePlot, Labelled, Sheet, SheetSection, SettingsSection, TargetsSection } from '../sheet';
import { lockedWords } from '../settingRows';
import { axleWord } from '../sheetCar';
import { formatSigned } from '../../format/format';
import { escaped } from './pageSvg';

const cells = (tag: 'td' | 'th', texts: readonly string[]): string =>
  texts.map((text) => `<${tag}${tag === 'th' ? ' scope="col"' : ''}>${escaped(text)}</${tag}>`).join('');

const row = (name: string, texts: readonly string[]): string =>
  `<tr><th scope="row">${escaped(name)}</th>${cells('td', texts)}</tr>`;

const table = (caption: string, heads: readonly string[], rows: readonly string[]): string =>
  `<table><caption>${escaped(caption)}</caption><thead><tr>${cells('th', heads)}</tr></thead><tbody>${rows.join('')}</tbody></table>`;

const list = (heading: string, items: readonly string[], tag: 'ul' | 'ol' = 'ul'): string =>
  `<h2>${escaped(heading)}</h2><${tag}>${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</${tag}>`;

const pairs = (figures: readonly Labelled[]): string =>
  `<dl>${figures.map(({ label, value }) => `<dt>${escaped(label)}</dt><dd>${escaped(value)}</dd>`).join('')}</dl>`;

const said = (words: string, detail: string): string => (detail === '' ? words : `${words}, ${detail}`);

const settings = (section: SettingsSection): string =>
  table(
    said(section.heading, section.note),
    ['Part', 'Left', 'Right', 'Torque'],
    section.rows.map((line) => {
      const name = said(line.name, line.detail);
      if (line.locked !== null) return row(name, [`Fixed by rule, ${lockedWords(line)}: ${line.locked}`, '', '']);
      const torque = line.torque === undefined ? '' : (line.torque ?? 'to write in');
      return row(name, [said(line.left.words, line.left.detail), said(line.right.words, line.right.detail), torque]);
    }),
  );

const targets = (section: TargetsSection): string =>
  table(
    said(section.heading, section.note),
    ['Reading', 'Left', 'Right', 'Tolerance', ...(section.hasRules ? ['Rules allow'] : [])],
    section.rows.map((line) => {
      const values = typeof line.value === 'string' ? [line.value, line.value] : [line.value.left, line.value.right];
      const rule = section.hasRules ? [line.isBroken ? `broken: ${line.rule}` : line.rule] : [];
      return row(said(line.name, line.unit), [...values, line.tolerance, ...rule]);
    }),
  );

const corners = (section: CornersSection): string =>
  table(
    said(section.heading, section.note),
    ['Number', ...section.axles.flatMap((axle) => [`${axle} left`, `${axle} right`])],
    section.rows.map((line) =>
      row(
        said(line.name, line.unit),
        line.values.map((value) => value || 'to write in'),
      ),
    ),
  );

/** Every so many positions of a curve are said. */
const SAID = 4;

const plot = ({ name, unit, travels, travelUnit, curves }: CurvePlot): string =>
  table(
    said(name, unit),
    [`Bump, ${travelUnit}`, ...curves.map((curve) => curve.name)],
    travels.flatMap((travel, index) =>
      index % SAID === 0
        ? [
            row(
              formatSigned(travel, 0),
              curves.map(({ values }) => values[index]?.said ?? ''),
            ),
          ]
        : [],
    ),
  );

const sectionHtml = (section: SheetSection): string => {
  switch (section.kind) {
    case 'settings':
      return settings(section);
    case 'changes':
      return `<h2>${escaped(said(section.heading, section.note))}</h2><ol>${section.steps
        .map(
          ({ title, items }) =>
            `<li>${escaped(title)}<ul>${items.map(({ axle, text }) => `<li>${escaped(axle === null ? text : `${axleWord(axle)}, ${text}`)}</li>`).join('')}</ul></li>`,
        )
        .join('')}</ol>`;
    case 'targets':
      return targets(section);
    case 'corners':
      return corners(section);
    case 'figures':
      return `<h2>${escaped(section.heading)}</h2>${pairs(section.figures)}`;
    case 'curves':
      return `<h2>${escaped(said(section.heading, section.note))}</h2>${section.plots.map(plot).join('')}`;
    case 'notes':
      return list(section.heading, section.lines);
    case 'cautions':
      return list(section.heading, [...section.faults, ...section.lines]);
  }
};

/** The sheet as headings, tables and lists: what a screen reader says in the place of the drawn pages. */
export const readableSheet = (sheet: Sheet): string =>
  `<h1>${escaped(`Set-up sheet, ${sheet.car}`)}</h1>${pairs(sheet.head)}${sheet.sections.map(sectionHtml).join('')}${
    sheet.leftOut === undefined ? '' : `<p>${escaped(sheet.leftOut)}</p>`
  }`;
