/**
 * Which layer may import what. One table; a bad import fails lint with a message that names the right door.
 *
 * A layer is the longest folder of the table that holds the file. `folders` are the folders (or single files) of this
 * repository, `packages` the packages that it may import; `door` is the sentence that a wrong import is answered with.
 */
import path from 'node:path';

const PURE = 'geometry/ is pure: what belongs to the operating system or the screen is handed in by electron/ or renderer/.';
const INDEX_ONLY = 'Import it from geometry/index, the only door of geometry/; what is missing there is exported there.';
const NO_SCREEN =
  'This folder knows no React and no three: keep the logic here and draw in a component or in renderer/viewport/.';

const REST_OF_GEOMETRY = [
  'core',
  'solve',
  'car',
  'corner',
  'setup',
  'adjusters',
  'readings',
  'axle',
  'points',
  'studies',
  'format',
  'words',
  'drawing',
  'sheet',
  'fitup',
].map((folder) => `geometry/${folder}`);
const WINDOW_LOGIC = ['geometry/index', 'renderer/state', 'renderer/compute', 'renderer/units', 'renderer/files'];

export const LAYERS = [
  { layer: 'geometry', folders: REST_OF_GEOMETRY, packages: [], door: PURE },
  {
    layer: 'geometry/core',
    folders: ['geometry/core'],
    packages: [],
    door: 'geometry/core/ holds no domain words and imports only itself; matrices come from geometry/core/linear.',
  },
  { layer: 'geometry/core/linear', folders: ['geometry/core'], packages: ['ml-matrix'], door: PURE },
  {
    layer: 'geometry/solve',
    folders: ['geometry/core', 'geometry/solve'],
    packages: [],
    door: 'geometry/solve/ is numerics without domain words: it imports geometry/core/ and itself; hand the rest in as functions.',
  },
  { layer: 'geometry/car', folders: REST_OF_GEOMETRY, packages: ['zod', 'jsonc-parser', 'fastest-levenshtein'], door: PURE },
  {
    // Beside geometry/, not in it: the library that writes PDF would go with every program that uses geometry/.
    layer: 'geometry/pdf',
    folders: ['geometry/index', 'geometry/pdf'],
    packages: ['pdfkit'],
    door: 'geometry/pdf/ writes what it is handed, the same in the window and on the command line: it knows neither Node nor the screen.',
  },
  {
    // Beside geometry/ as well: the library that searches meshes goes only where meshes are searched.
    layer: 'geometry/meshes',
    folders: ['geometry/index', 'geometry/meshes'],
    packages: ['three', 'three-mesh-bvh'],
    door: 'geometry/meshes/ searches meshes with a library, in the window and on the command line: it knows neither Node nor the screen.',
  },
  {
    layer: 'renderer',
    folders: ['geometry/index', 'geometry/pdf', 'geometry/meshes', 'renderer'],
    packages: 'any',
    door: 'The window reaches files through renderer/files/fileService, the contract that electron/ keeps.',
  },
  { layer: 'renderer/state', folders: WINDOW_LOGIC, packages: ['zustand/vanilla'], door: NO_SCREEN },
  { layer: 'renderer/compute', folders: WINDOW_LOGIC, packages: [], door: NO_SCREEN },
  { layer: 'renderer/units', folders: WINDOW_LOGIC, packages: [], door: NO_SCREEN },
  {
    layer: 'electron',
    folders: ['geometry/index', 'geometry/pdf', 'geometry/meshes', 'electron', 'renderer/files/fileService', 'package'],
    packages: 'any',
    door: 'electron/ shares one file with the window, renderer/files/fileService: put the shared type there.',
  },
  {
    layer: 'tests',
    folders: ['geometry', 'renderer', 'electron', 'tests', 'vite.config', 'eslint.config', 'eslint.layers', 'package'],
    packages: 'any',
    door: '',
  },
];

/** Packages that no source of that layer may import, whatever its row says. */
const NOT_IN_THE_WINDOW = /^(node:|electron$)/;

const withoutEnding = (file) => file.replace(/\.(d\.ts|[cm]?[jt]sx?|json)$/, '');
const isWithin = (file, folder) => file === folder || file.startsWith(`${folder}/`);
const packageName = (specifier) =>
  specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');

/** The row of the table that governs a file given by its path from the root, without ending; undefined outside the layers. */
export const layerOf = (file) =>
  LAYERS.filter(({ layer }) => isWithin(file, layer)).sort((a, b) => b.layer.length - a.layer.length)[0];

/**
 * Why `file` may not import `specifier`, or null when it may.
 * @param file - importing file, path from the root with forward slashes
 * @param specifier - as written in the import
 */
export const judgeImport = (file, specifier) => {
  const from = layerOf(withoutEnding(file));
  if (!from) return null;
  if (specifier.startsWith('.')) {
    const target = withoutEnding(path.posix.join(path.posix.dirname(file), specifier.replace(/\?.*$/, '')));
    if (from.folders.some((folder) => isWithin(target, folder))) return null;
    const door = isWithin(target, 'geometry') && !from.layer.startsWith('geometry') ? INDEX_ONLY : from.door;
    return `${from.layer}/ may not import ${target}. ${door}`;
  }
  const inWindow = from.layer.startsWith('renderer');
  if (from.packages === 'any' && !(inWindow && NOT_IN_THE_WINDOW.test(specifier))) return null;
  if (from.packages !== 'any' && (from.packages.includes(specifier) || from.packages.includes(packageName(specifier))))
    return null;
  return `${from.layer}/ may not import the package ${specifier}. ${from.door}`;
};

const importedBy = (node) => (node?.type === 'Literal' && typeof node.value === 'string' ? node.value : null);

export const layersPlugin = {
  rules: {
    imports: {
      meta: { type: 'problem', schema: [], messages: { layer: '{{reason}}' } },
      create(context) {
        const file = path.relative(context.cwd, context.filename).split(path.sep).join('/');
        const check = (node, source) => {
          const specifier = importedBy(source);
          if (specifier?.endsWith('/')) return; // the address of a folder, not an import
          const reason = specifier === null ? null : judgeImport(file, specifier);
          if (reason) context.report({ node, messageId: 'layer', data: { reason } });
        };
        return {
          ImportDeclaration: (node) => check(node, node.source),
          ExportNamedDeclaration: (node) => check(node, node.source),
          ExportAllDeclaration: (node) => check(node, node.source),
          ImportExpression: (node) => check(node, node.source),
          TSImportType: (node) => check(node, node.source ?? node.argument?.literal),
          'CallExpression[callee.name="require"]': (node) => check(node, node.arguments[0]),
          'NewExpression[callee.name="URL"][arguments.1.type="MemberExpression"]': (node) => check(node, node.arguments[0]),
        };
      },
    },
  },
};
