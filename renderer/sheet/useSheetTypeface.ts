import { useEffect, useState } from 'react';
import { SHEET_FAMILY, sheetFonts } from '../../geometry/index';

let loading: Promise<void> | null = null;

/** The very typeface that lines are measured with; it is given as bytes, since the window loads nothing but its own files. */
const loadTypeface = (): Promise<void> =>
  (loading ??= Promise.all(
    sheetFonts().map(async ({ weight, bytes }) => {
      const face = new FontFace(SHEET_FAMILY, bytes.slice().buffer, { weight: String(weight) });
      document.fonts.add(await face.load());
    }),
  ).then(() => undefined));

/** Whether the sheet's typeface is there: pages are shown in it and in no other. */
export const useSheetTypeface = (): boolean => {
  const [isThere, setThere] = useState(false);
  useEffect(() => {
    let isWanted = true;
    void loadTypeface().then(() => isWanted && setThere(true));
    return () => {
      isWanted = false;
    };
  }, []);
  return isThere;
};
