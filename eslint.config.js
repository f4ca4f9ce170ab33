import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';
import { layersPlugin } from './eslint.layers.js';

const DEGREES = {
  selector:
    'BinaryExpression[operator="/"]:has(> Literal[value=180]):has(MemberExpression[property.name="PI"]), Literal[raw=/^(0?\\.01745|57\\.29)/]',
  message: 'Degrees and radians meet in geometry/core/angle.ts only: use toRadians and toDegrees.',
};
const DEFAULT_EXPORT = {
  selector: 'ExportDefaultDeclaration, ExportSpecifier[exported.name="default"]',
  message: 'Named exports only: a name that is the same everywhere can be found.',
};
const EXPORT_ALL = { selector: 'ExportAllDeclaration[exported=null]', message: 'Name what leaves the file: no `export *`.' };
const POWER = {
  selector: 'BinaryExpression[operator="**"], AssignmentExpression[operator="**="]',
  message: 'Powers differ between engines in the last bit: write the product, or Math.sqrt, Math.cbrt, Math.exp.',
};
const LEFT_OUT = {
  selector:
    'MemberExpression[object.name=/^(it|test|describe)$/][property.name=/^(only|skip|todo|skipIf|runIf)$/], CallExpression[callee.name=/^(xit|xtest|xdescribe|fit|fdescribe)$/]',
  message: 'Every test runs: mend it or take it out.',
};
const outOf = (object, property, message) => ({ object, property, message });
const EVERYWHERE = [DEFAULT_EXPORT, EXPORT_ALL, DEGREES];

export default tseslint.config(
  { ignores: ['build/', 'coverage/', 'tests/bench/speed/'] },
  { linterOptions: { noInlineConfig: true } },
  tseslint.configs.recommended,
  {
    files: ['**/*.{ts,tsx,js,mjs,cjs}'],
    plugins: { layers: layersPlugin },
    rules: {
      'layers/imports': 'error',
      'max-lines': ['error', { max: 400 }],
      eqeqeq: 'error',
      'prefer-const': 'error',
      'no-var': 'error',
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', ignoreRestSiblings: true }],
    },
  },
  {
    files: ['{geometry,renderer,electron,tests}/**/*.{ts,tsx}'],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: { attributes: false } }],
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
    },
  },
  {
    files: ['{geometry,renderer,electron,tests}/**/*.{ts,tsx,mjs}'],
    rules: { 'no-restricted-syntax': ['error', ...EVERYWHERE] },
  },
  { files: ['**/*.cjs'], rules: { '@typescript-eslint/no-require-imports': 'off' } }, // the old format has no other way
  {
    files: ['geometry/**/*.ts'],
    rules: {
      'no-restricted-syntax': ['error', ...EVERYWHERE, POWER],
      'no-restricted-properties': [
        'error',
        outOf('Math', 'pow', 'Math.pow differs between engines in the last bit: write the product.'),
        outOf('Math', 'hypot', 'Math.hypot differs between engines in the last bit: use length from geometry/core/vector.'),
        outOf('Math', 'random', 'Same input, same bits out: use the seeded sampling of geometry/solve/sampling.'),
      ],
      'no-restricted-globals': [
        'error',
        { name: 'Date', message: 'geometry/ knows no clock: take the time as an argument.' },
        { name: 'performance', message: 'geometry/ knows no clock: take the time as an argument.' },
        { name: 'console', message: 'geometry/ prints nothing: return it.' },
        { name: 'process', message: 'geometry/ knows no Node: what it needs is handed in by electron/.' },
        { name: 'window', message: 'geometry/ knows no screen: what it needs is handed in by renderer/.' },
        { name: 'document', message: 'geometry/ knows no screen: what it needs is handed in by renderer/.' },
      ],
    },
  },
  { files: ['geometry/pdf/*.ts'], rules: { 'no-restricted-globals': 'off' } }, // the library takes the sheet's day as a Date
  {
    files: ['geometry/core/angle.ts'],
    rules: { 'no-restricted-syntax': ['error', DEFAULT_EXPORT, EXPORT_ALL, POWER] },
  },
  {
    files: ['renderer/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks },
    rules: { 'react-hooks/rules-of-hooks': 'error', 'react-hooks/exhaustive-deps': 'error' },
  },
  {
    files: ['tests/**/*.{ts,tsx,mjs}'],
    rules: { 'no-restricted-syntax': ['error', DEFAULT_EXPORT, EXPORT_ALL, LEFT_OUT] },
  },
);
