/** Fails when a dependency, direct or not, has a licence that is not on the list. Reads the lock file and, where installed, the package. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** Handed on inside the built window, the library and the command line: free to use, a notice is enough. */
const HANDED_ON = {
  MIT: 'notice',
  ISC: 'notice',
  '0BSD': 'nothing asked',
  'BSD-2-Clause': 'notice',
  'BSD-3-Clause': 'notice, no endorsement',
  'Apache-2.0': 'notice, grants patents',
  'OFL-1.1': 'fonts: served with the program, not sold alone, not renamed',
};
/** Used to build and test on top of those, and never handed on. */
const TOOLS_ONLY = {
  'MPL-2.0': 'asks for the source of its own files when they are handed on; they are not',
  'BlueOak-1.0.0': 'notice, and younger than most lists',
  'CC-BY-4.0': 'a table of browser versions, used while building',
};

const read = (/** @type {string} */ file) => JSON.parse(readFileSync(path.join(ROOT, file), 'utf8'));

/**
 * What is wrong with the licences of a lock file.
 * @param {Record<string, { license?: string, dev?: boolean, devOptional?: boolean, version?: string }>} packages - `packages` of package-lock.json
 * @param {(place: string) => string | undefined} installedLicence - the licence that the installed package states, if it is installed
 * @returns {string[]}
 */
export const judgeLicences = (packages, installedLicence) =>
  Object.entries(packages).flatMap(([place, { license, dev, devOptional, version }]) => {
    if (place === '') return [];
    const name = `${place.replace(/^.*node_modules\//, '')} ${version}`;
    const isTool = Boolean(dev || devOptional);
    const stated = [...new Set([license, installedLicence(place)].filter((text) => text !== undefined))];
    if (stated.length === 0) return [`${name} states no licence.`];
    return stated
      .filter((text) => !Object.hasOwn(HANDED_ON, text) && !(isTool && Object.hasOwn(TOOLS_ONLY, text)))
      .map(
        (text) =>
          `${name} (${isTool ? 'a tool' : 'handed on'}) is under ${text}, which is not on the list in tests/ground/licences.mjs.`,
      );
  });

const installedLicence = (/** @type {string} */ place) => {
  const file = path.join(place, 'package.json');
  if (!existsSync(path.join(ROOT, file))) return undefined;
  const { license } = read(file);
  return (typeof license === 'string' ? license : license?.type) ?? licenceOfText(path.join(ROOT, place, 'LICENSE'));
};

/** Of a package that names no licence and brings its text. */
const licenceOfText = (/** @type {string} */ file) =>
  existsSync(file) && /^\s*(The )?MIT License\b/.test(readFileSync(file, 'utf8')) ? 'MIT' : undefined;

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { packages } = read('package-lock.json');
  const faults = judgeLicences(packages, installedLicence);
  faults.forEach((fault) => process.stderr.write(`${fault}\n`));
  process.stdout.write(
    `Licences of ${Object.keys(packages).length - 1} packages: ${faults.length === 0 ? 'all on the list' : 'see above'}.\n`,
  );
  process.exitCode = faults.length === 0 ? 0 : 1;
}
