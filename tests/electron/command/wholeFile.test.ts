import { execFileSync } from 'node:child_process';
import { readFile, readdir, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { refuseUnwritable, writeWholeFile } from '../../../electron/command/wholeFile';
import { temporaryFolder } from '../temporaryFolder';

const inFolder = async (files: Record<string, string>): Promise<(name: string) => string> => {
  const folder = await temporaryFolder(files);
  return (name) => path.join(folder, name);
};

describe('a file is written whole', () => {
  it('new, or over an old one when that is allowed, and nothing else is left', async () => {
    const at = await inFolder({ 'old.csv': 'old' });
    await writeWholeFile(at('new.csv'), 'new', false, []);
    await writeWholeFile(at('old.csv'), 'younger', true, []);
    expect(await readFile(at('new.csv'), 'utf8')).toBe('new');
    expect(await readFile(at('old.csv'), 'utf8')).toBe('younger');
    expect((await readdir(at('.'))).sort()).toEqual(['new.csv', 'old.csv']);
  });

  it('through a link to the file it stands for', async () => {
    const at = await inFolder({ 'real.csv': 'old' });
    await symlink(at('real.csv'), at('link.csv'));
    await writeWholeFile(at('link.csv'), 'new', true, []);
    expect(await readFile(at('real.csv'), 'utf8')).toBe('new');
  });

  it('and says so when it cannot be', async () => {
    const at = await inFolder({});
    await expect(writeWholeFile(at('no/folder.csv'), 'x', false, [])).rejects.toMatchObject({
      document: { kind: 'system', message: expect.stringContaining(`no folder ${at('no')}`) },
    });
  });
});

it('a folder that takes no file is what is said to be in the way, not the file', async () => {
  await expect(writeWholeFile('/proc/t2.pdf', 'x', false, [])).rejects.toMatchObject({
    document: { kind: 'system', message: expect.stringContaining('the folder /proc cannot be written') },
  });
});

describe('what must not be written is refused before the work', () => {
  it('a file that is there, a link that leads nowhere', async () => {
    const at = await inFolder({ 'old.csv': 'old' });
    await symlink(at('nowhere'), at('dangling.csv'));
    for (const name of ['old.csv', 'dangling.csv'])
      await expect(refuseUnwritable(at(name), false, [])).rejects.toMatchObject({ document: { kind: 'system' } });
  });

  it('a file that the call reads, by any name, even with --force', async () => {
    const at = await inFolder({ 'car.json': '{}' });
    await symlink(at('car.json'), at('other.json'));
    await expect(refuseUnwritable(at('other.json'), true, [at('car.json')])).rejects.toMatchObject({
      document: { kind: 'usage' },
    });
    await writeFile(at('free.csv'), '');
    await expect(refuseUnwritable(at('free.csv'), true, [at('car.json')])).resolves.toBeUndefined();
  });

  it('a folder, a device, a pipe', async () => {
    const at = await inFolder({});
    execFileSync('mkfifo', [at('pipe')]);
    for (const place of [at('.'), at('pipe'), '/dev/null'])
      await expect(refuseUnwritable(place, true, [])).rejects.toMatchObject({ document: { kind: 'system' } });
  });
});
