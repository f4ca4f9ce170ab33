import { useEffect, useLayoutEffect, useState } from 'react';
import { useBench } from './benchContext';

const DARK = '(prefers-color-scheme: dark)';

/** Whether the system asks for dark, as it changes. */
const useSystemDark = (): boolean => {
  const [dark, setDark] = useState(() => matchMedia(DARK).matches);
  useEffect(() => {
    const query = matchMedia(DARK);
    const follow = () => setDark(query.matches);
    query.addEventListener('change', follow);
    return () => query.removeEventListener('change', follow);
  }, []);
  return dark;
};

/** The theme in force, put on the page's root so that every token follows. */
export const useTheme = (): 'light' | 'dark' => {
  const chosen = useBench((state) => state.theme);
  const systemDark = useSystemDark();
  const theme = chosen === 'system' ? (systemDark ? 'dark' : 'light') : chosen;
  // before the picture's own effects, which read the colours that follow from it
  useLayoutEffect(() => {
    document.documentElement.dataset.theme = theme;
  }, [theme]);
  return theme;
};
