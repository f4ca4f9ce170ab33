import { useEffect, useState } from 'react';
import { sheetFonts } from '../../geometry/index';

let loading: Promise<void> | null = null;

/** The very typefaces that lines are measured with; they are given as bytes, since the window loads nothing but its own files. */
export const loadSheetTypeface = (): Promise<void> =>
  (loading ??= Promise.all(
    sheetFonts().map(async ({ family, weight, bytes }) => {
      const face = new FontFace(family, bytes.slice().buffer, { weight: String(weight) });
      document.fonts.add(await face.load());
    }),
  ).then(() => undefined));

/** Whether the sheet's typeface is there: pages are shown in it and in no other. */
export const useSheetTypeface = (): boolean => {
  const [isThere, setThere] = useState(false);
  useEffect(() => {
    let isWanted = true;
    void loadSheetTypeface().then(() => isWanted && setThere(true));
    return () => {
      isWanted = false;
    };
  }, []);
  return isThere;
};
