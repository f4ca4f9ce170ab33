import { afterEach, expect, test, vi } from 'vitest';
import { METHODS } from '../../../electron/files/questions';
import { fetchedFiles } from '../../../renderer/files/fetchedFiles';
import { QUESTION_ADDRESS } from '../../../renderer/files/fileService';

/** What the Fetch standard allows to all requests under way that outlive their page: a browser fails the one past it. */
const KEPT_ALIVE = 65_536;

afterEach(() => void vi.unstubAllGlobals());

/** A browser with an honest account of its requests under way. @returns answers one that waits, and how many ever waited */
const browser = () => {
  const waiting: (() => void)[] = [];
  let kept = 0;
  vi.stubGlobal('fetch', async (_address: string, { body, keepalive }: { body: BlobPart; keepalive?: boolean }) => {
    const { size } = new Blob([body]);
    if (keepalive) {
      if (kept + size > KEPT_ALIVE) throw new TypeError('Failed to fetch');
      kept += size;
    }
    await new Promise<void>((resolve) => waiting.push(resolve));
    if (keepalive) kept -= size;
    return { status: 200, json: () => Promise.resolve({ ok: true, value: null }) };
  });
  return waiting;
};

test('a save while copies are being kept is sent, however large they are together', async () => {
  const waiting = browser();
  const origin = (size: number) => fetchedFiles.keepOrigin({ id: 'c', text: 'é'.repeat(size / 2) });
  const answers = [origin(40_000), origin(40_000), origin(15_000), origin(200_000)];
  await vi.waitFor(() => expect(waiting).toHaveLength(4));
  waiting.forEach((answer) => answer());
  expect((await Promise.all(answers)).map(({ ok }) => ok)).toEqual([true, true, true, true]);
  // what is answered no longer counts
  const later = [origin(40_000), origin(15_000)];
  await vi.waitFor(() => expect(waiting).toHaveLength(6));
  waiting.slice(4).forEach((answer) => answer());
  expect((await Promise.all(later)).map(({ ok }) => ok)).toEqual([true, true]);
});

test('every question that a shell judges is asked at its own address', async () => {
  const asked: string[] = [];
  vi.stubGlobal('fetch', async (address: string) => {
    asked.push(address);
    return { status: 200, json: () => Promise.resolve({ ok: true, value: null }) };
  });
  for (const method of METHODS) await (fetchedFiles[method] as (ask: object) => Promise<unknown>)({});
  expect(asked).toEqual(METHODS.map((method) => QUESTION_ADDRESS + method));
});
