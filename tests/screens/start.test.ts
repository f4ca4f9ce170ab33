import { spawn } from 'node:child_process';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { launchChromium } from './chromium';

test('npm start builds the window and serves it to the one who opens the address', async () => {
  const root = path.resolve(import.meta.dirname, '../..');
  const child = spawn(process.execPath, ['electron/start.mjs'], { cwd: root, env: { ...process.env, JOUNCE_NO_OPEN: '1' } });
  onTestFinished(() => void child.kill('SIGKILL'));
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stdout.on('data', (part: Buffer) => (said += part.toString()).includes('\n') && resolve(said.trim()));
    child.stderr.on('data', (part: Buffer) => (said += part.toString()));
    child.once('exit', () => reject(new Error(`It ended: ${said}`)));
  });
  const page = await (await launchChromium()).newPage();
  await page.goto(address);
  expect(new URL(page.url()).pathname + new URL(page.url()).search).toBe('/');
  expect(await page.title()).toContain('Jounce');
  expect((await page.goto(address))?.status()).toBe(403);
  child.kill('SIGINT');
  expect(await new Promise((resolve) => child.once('exit', resolve))).toBe(0);
});
