/**
 * Lint rules, and the fences between the layers: engine → nothing of ours, diagnosis → engine, and
 * so on up to the screens. A fence is a `no-restricted-imports` rule for one folder that names
 * every layer which that folder may not know; tests/fences.test.ts proves that each one bites.
 */
import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import svelte from 'eslint-plugin-svelte';
import { defineConfig, globalIgnores } from 'eslint/config';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

/** What each layer may import of the others. The list is the architecture. */
export const LAYERS = {
	engine: [],
	diagnosis: ['engine'],
	schedule: ['engine'],
	exercises: ['engine', 'diagnosis'],
	diagram: ['engine'],
	words: ['engine', 'diagnosis', 'schedule', 'exercises'],
	storage: ['engine', 'diagnosis', 'exercises'],
	session: ['engine', 'diagnosis', 'schedule', 'exercises', 'diagram', 'words', 'storage'],
	ui: ['engine', 'diagnosis', 'schedule', 'exercises', 'diagram', 'words', 'storage', 'session'],
	cli: ['engine', 'diagnosis', 'schedule', 'exercises', 'words'],
	routes: [
		'engine',
		'diagnosis',
		'schedule',
		'exercises',
		'diagram',
		'words',
		'storage',
		'session',
		'ui'
	]
};

const NAMES = Object.keys(LAYERS);
/** Tests may use any package and Node; so may `*.node.ts`, which only tests and cli/ load. */
const TESTS = ['**/*.test.ts', '**/*.node.ts'];
/** Layers that the headless program loads too: they know neither the screen nor its framework. */
const HEADLESS = ['engine', 'diagnosis', 'schedule', 'exercises', 'words', 'diagram', 'cli'];
/** Layers that know no browser at all. The DOM's globals are errors there. */
const NO_DOM = ['engine', 'diagnosis', 'schedule', 'exercises'];
const STORES = ['localStorage', 'sessionStorage', 'indexedDB', 'caches'];

const files = (layer) =>
	layer === 'cli' || layer === 'routes' ? `src/${layer}` : `src/lib/${layer}`;

/** Imports of other layers, whether by `../engine/nets` or by `$lib/engine/nets`. */
function strangersTo(layer) {
	const strangers = NAMES.filter((name) => name !== layer && !LAYERS[layer].includes(name));
	if (strangers.length === 0) return [];
	return [
		{
			regex: `^(?:\\$lib/|/src/(?:lib/)?|(?:.*/)?\\.\\./(?:src/)?(?:lib/)?)(?:${strangers.join('|')})(?:/|$)`,
			message: `${layer}/ may import ${LAYERS[layer].join(', ') || 'no other layer'} only.`
		}
	];
}

const FRAMEWORK = {
	regex: '^(?:svelte|@sveltejs|\\$app|\\$env|\\$service-worker)(?:/|$)',
	message: 'This layer runs without the framework.'
};
const ALIAS = {
	regex: '^\\$lib(?:/|$)',
	message: '$lib is for src/routes: elsewhere import by relative path, so that Node finds it too.'
};
const NODE = { regex: '^node:', message: 'This layer runs in the browser too.' };
const ONLY_NODE = {
	regex: '\\.node(?:\\.ts)?$',
	message: 'A *.node file reads the disk: only tests and cli/ may load it.'
};
const DRAWING = {
	regex: '^d3$|^d3-(?:selection|drag|zoom|transition|brush)$',
	message: "d3 computes and Svelte draws: only d3's maths."
};
const ONLY_D3 = {
	regex: '^(?!\\.|d3-|\\$|/)',
	message: 'diagram/ stands on the engine and on d3 alone.'
};

/** What a layer's own code may not import. */
function packagesBarredFrom(layer) {
	return [
		...(HEADLESS.includes(layer) ? [FRAMEWORK] : []),
		...(layer === 'cli' ? [] : [NODE, ONLY_NODE]),
		...(layer === 'diagram' ? [ONLY_D3] : [])
	];
}

const restricted = (patterns) => ({ 'no-restricted-imports': ['error', { patterns }] });

function fence(layer) {
	const always = [...strangersTo(layer), DRAWING, ...(layer === 'routes' ? [] : [ALIAS])];
	const folder = `${files(layer)}/**/*.{ts,js,svelte}`;
	return [
		{
			files: [folder],
			ignores: TESTS,
			rules: restricted([...always, ...packagesBarredFrom(layer)])
		},
		{ files: TESTS.map((test) => `${files(layer)}/${test}`), rules: restricted(always) }
	];
}

/** An import() or an import type in the middle of a line would go round the fences. */
const ROUND_THE_FENCE = [
	{
		selector: 'ImportExpression[source.type="Literal"]',
		message: 'Import at the top of the file, where the fences between layers see it.'
	},
	{
		selector: 'TSImportType',
		message: 'Import the type at the top of the file, where the fences between layers see it.'
	}
];

const barred = (names, message) => names.map((name) => ({ name, message }));

export default defineConfig(
	globalIgnores([
		'build/',
		'.svelte-kit/',
		'node_modules/',
		'test-results/',
		'playwright-report/',
		'coverage/'
	]),
	js.configs.recommended,
	ts.configs.strict,
	svelte.configs.recommended,
	{
		languageOptions: { globals: { ...globals.browser, ...globals.node } },
		linterOptions: { reportUnusedDisableDirectives: 'error' },
		rules: {
			// TypeScript knows what exists.
			'no-undef': 'off',
			eqeqeq: ['error', 'always'],
			'no-console': 'error',
			'no-eval': 'error',
			'no-implied-eval': 'error',
			'no-new-func': 'error',
			'prefer-const': 'error',
			'object-shorthand': 'error',
			'@typescript-eslint/consistent-type-imports': [
				'error',
				{ fixStyle: 'inline-type-imports', disallowTypeAnnotations: true }
			],
			'@typescript-eslint/no-unused-vars': [
				'error',
				{ argsIgnorePattern: '^_', varsIgnorePattern: '^_', caughtErrorsIgnorePattern: '^_' }
			],
			// noUncheckedIndexedAccess makes a tuple's known element possibly undefined; "!" states it.
			'@typescript-eslint/no-non-null-assertion': 'off',
			// Tests take keys out of valid data one by one.
			'@typescript-eslint/no-dynamic-delete': 'off'
		}
	},
	{
		files: ['**/*.svelte', '**/*.svelte.ts', '**/*.svelte.js'],
		languageOptions: { parserOptions: { parser: ts.parser, svelteConfig } },
		rules: {
			'svelte/no-at-html-tags': 'error',
			'svelte/no-inline-styles': 'error',
			'svelte/no-dom-manipulating': 'error',
			'svelte/no-target-blank': 'error',
			// Props that are changed in place would be a second owner of the learner's state.
			'prefer-const': 'off',
			'svelte/prefer-const': 'error'
		}
	},
	NAMES.flatMap(fence),
	{
		files: NO_DOM.map((layer) => `${files(layer)}/**/*.ts`),
		rules: {
			'no-restricted-globals': [
				'error',
				...barred(
					['window', 'document', 'navigator', 'location', 'self', 'fetch', ...STORES],
					'This layer knows no browser.'
				)
			]
		}
	},
	{
		files: ['src/**/*.{ts,js,svelte}'],
		ignores: [
			...NO_DOM.map((layer) => `${files(layer)}/**`),
			`${files('storage')}/**`,
			'src/service-worker.ts'
		],
		rules: {
			'no-restricted-globals': [
				'error',
				...barred(STORES, "storage/ is the only place that touches the browser's stores.")
			]
		}
	},
	{
		files: ['src/**/*.{ts,js,svelte}'],
		ignores: [`${files('storage')}/**`, ...TESTS],
		rules: {
			'no-restricted-properties': [
				'error',
				...['window', 'globalThis', 'self'].flatMap((object) =>
					STORES.map((property) => ({
						object,
						property,
						message: "storage/ is the only place that touches the browser's stores."
					}))
				)
			]
		}
	},
	{
		files: HEADLESS.concat('storage').map((layer) => `${files(layer)}/**/*.ts`),
		ignores: TESTS,
		rules: { 'no-restricted-syntax': ['error', ...ROUND_THE_FENCE] }
	},
	{
		files: ['scripts/**', 'src/cli/**', 'tests/**'],
		rules: { 'no-console': 'off' }
	},
	prettier,
	svelte.configs.prettier
);
