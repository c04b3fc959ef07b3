import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';
import { imports, pure } from './scripts/lint/rooms.js';

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', 'data-store/', 'out/', 'coverage/'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [tseslint.configs.base],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      // no escapes from the type checker
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/ban-ts-comment': [
        'error',
        { 'ts-ignore': true, 'ts-expect-error': true, 'ts-nocheck': true, 'ts-check': false },
      ],
      // what the compiler does not see
      '@typescript-eslint/await-thenable': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: { attributes: false } }],
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/only-throw-error': 'error',
      eqeqeq: 'error',
      'no-fallthrough': 'error',
      'no-var': 'error',
      'prefer-const': 'error',
      'max-lines': ['error', 400],
    },
  },
  {
    files: ['src/**/*.ts', 'src/**/*.tsx'],
    plugins: { rooms: { rules: { imports, pure } } },
    rules: { 'rooms/imports': 'error', 'rooms/pure': 'error' },
  },
  {
    files: ['src/web/**/*.ts', 'src/web/**/*.tsx'],
    plugins: { 'react-hooks': reactHooks },
    rules: {
      'react-hooks/rules-of-hooks': 'error',
      'react-hooks/exhaustive-deps': 'error',
      'no-restricted-syntax': ['error', { selector: "JSXAttribute[name.name='type'] > Literal[value='number']", message: 'A number field of the browser takes 1,5 for 15: FigureField reads a point and a comma.' }],
    },
  },
  {
    files: ['**/*.test.ts', '**/*.test.tsx'],
    rules: {
      'no-restricted-syntax': [
        'error',
        { selector: "MemberExpression[object.name=/^(it|test|describe)$/][property.name=/^(only|todo|fails)$/]", message: 'Every test runs and says what it holds.' },
      ],
    },
  },
  {
    files: ['**/*.js', '**/*.mjs'],
    rules: { eqeqeq: 'error', 'no-undef': 'off', 'no-unused-vars': 'error', 'no-var': 'error', 'prefer-const': 'error' },
  },
);
