import { memo } from 'react';
import { pageSvg, readableSheet, type Sheet, type SheetPage } from '../../geometry/index';

/** The pages as they are printed, and the same as tables and lists for those who hear them read. */
export const SheetPreview = memo(({ sheet, pages }: { readonly sheet: Sheet; readonly pages: readonly SheetPage[] }) => (
  <>
    {/* Both are made of text that was escaped letter by letter. */}
    <div className="unseen" dangerouslySetInnerHTML={{ __html: readableSheet(sheet) }} />
    {pages.map((page) => (
      <div key={page.number} className={`paper ${page.paper.name}`} dangerouslySetInnerHTML={{ __html: pageSvg(page) }} />
    ))}
  </>
));
SheetPreview.displayName = 'SheetPreview';
