import { useEffect, useRef, useState } from 'react';
import type { FitUpState } from '../useFitUp';
import type { FromTemplate } from './templateWorker';
import type { TemplateFile, TemplateFileOrder } from './writeTemplate';

/** What takes longer says so [ms]. */
const SLOW_MS = 500;

const DOING: Readonly<Record<TemplateFileOrder['kind'], string>> = {
  pdf: 'writing the sheets as PDF',
  dxf: 'writing the section as DXF',
  pages: 'laying the sheets out',
};

/** Makes a file of templates on a thread of its own, one at a time; another order, and leaving the tab, calls it off. */
export const useTemplateFile = () => {
  const [state, setState] = useState<FitUpState>({ kind: 'idle' });
  const worker = useRef<Worker | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const stop = (): void => {
    clearTimeout(timer.current);
    worker.current?.terminate();
    worker.current = null;
  };
  useEffect(() => stop, []);
  const ask = (order: TemplateFileOrder, take: (file: TemplateFile) => void): void => {
    stop();
    const running = (isSlow: boolean): FitUpState => ({
      kind: 'running',
      progress: { doing: DOING[order.kind], done: 0, of: 0 },
      since: 0,
      isSlow,
    });
    setState(running(false));
    timer.current = setTimeout(() => setState(running(true)), SLOW_MS);
    const begun = new Worker(new URL('./templateWorker.ts', import.meta.url), { type: 'module' });
    worker.current = begun;
    const fail = (message: string): void => {
      stop();
      setState({ kind: 'failed', failure: new Error(message) });
    };
    begun.onmessage = ({ data }: MessageEvent<FromTemplate>) => {
      if (worker.current !== begun) return;
      if ('message' in data) return fail(data.message);
      stop();
      setState({ kind: 'idle' });
      take(data.file);
    };
    begun.onerror = (event) => {
      event.preventDefault();
      fail(event.message || 'The thread that writes templates ended.');
    };
    begun.postMessage(order);
  };
  const cancel = (): void => {
    stop();
    setState({ kind: 'idle' });
  };
  return { state, ask, cancel };
};
