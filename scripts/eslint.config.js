// Rules that need types run on every TypeScript file; those for elements and their templates on the app.
import { builtinModules } from 'node:module';
import { fileURLToPath } from 'node:url';
import lit from 'eslint-plugin-lit';
import litA11y from 'eslint-plugin-lit-a11y';
import wc from 'eslint-plugin-wc';
import tseslint from 'typescript-eslint';

const ROOT = fileURLToPath(new URL('../', import.meta.url));

/** What plain Node scripts may name without importing it. */
const NODE_GLOBALS = [
  'Buffer',
  'Event',
  'TextDecoder',
  'TextEncoder',
  'URL',
  'clearTimeout',
  'console',
  'fetch',
  'performance',
  'process',
  'setTimeout',
];

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', 'coverage/**'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  {
    files: ['**/*.ts'],
    extends: [tseslint.configs.recommendedTypeChecked],
    languageOptions: { parserOptions: { project: ['tsconfig.json'], tsconfigRootDir: ROOT } },
    rules: {
      // `== null` asks for null and undefined at once, which is how a property of an element starts.
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-alert': 'error',
      'no-warning-comments': ['error', { terms: ['todo', 'fixme', 'xxx', 'hack'], location: 'anywhere' }],
      'prefer-const': ['error', { destructuring: 'all' }],
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      // A parameter that only holds its place says so with a leading underscore.
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      // A promise may be handed to an event of an element; its failure is caught by the window.
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: false }],
      // A function may be async to keep the shape of its neighbours.
      '@typescript-eslint/require-await': 'off',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true, allowBoolean: true }],
    },
  },
  { files: ['tests/**/*.ts'], rules: { '@typescript-eslint/unbound-method': 'off' } },
  {
    files: ['src/app/**/*.ts'],
    extends: [lit.configs['flat/recommended'], wc.configs['flat/recommended']],
    plugins: { 'lit-a11y': litA11y },
    rules: {
      ...litA11y.configs.recommended.rules,
      'lit/no-useless-template-literals': 'error',
      'lit/no-native-attributes': 'off',
      // Elements of lit take their names from a decorator.
      'wc/no-constructor-params': 'off',
      'wc/guard-super-call': 'off',
    },
  },
  {
    files: ['scripts/**/*.mjs', 'scripts/**/*.js', 'tests/**/*.mjs'],
    plugins: { '@typescript-eslint': tseslint.plugin },
    languageOptions: {
      sourceType: 'module',
      ecmaVersion: 2023,
      globals: Object.fromEntries(NODE_GLOBALS.map((name) => [name, 'readonly'])),
    },
    rules: {
      eqeqeq: 'error',
      'no-undef': 'error',
      'no-unused-vars': 'error',
      'prefer-const': 'error',
      'no-restricted-imports': [
        'error',
        { paths: builtinModules.map((name) => ({ name, message: `write node:${name}` })) },
      ],
    },
  },
);
