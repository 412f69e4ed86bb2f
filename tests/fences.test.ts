/**
 * Every fence between the layers is walked into, and bites. What each layer may import is written
 * here by hand a second time, apart from the lint rules, so that neither can drift alone.
 */
import { ESLint } from 'eslint';
import { describe, expect, it } from 'vitest';

const FOLDERS: Record<string, string> = {
	engine: 'lib/engine',
	diagnosis: 'lib/diagnosis',
	schedule: 'lib/schedule',
	exercises: 'lib/exercises',
	diagram: 'lib/diagram',
	words: 'lib/words',
	storage: 'lib/storage',
	session: 'lib/session',
	ui: 'lib/ui',
	cli: 'cli',
	routes: 'routes'
};

const MAY_IMPORT: Record<string, string> = {
	engine: '',
	diagnosis: 'engine',
	schedule: 'engine',
	exercises: 'engine diagnosis',
	diagram: 'engine',
	words: 'engine diagnosis schedule exercises',
	storage: 'engine diagnosis exercises',
	session: 'engine diagnosis schedule exercises diagram words storage',
	ui: 'engine diagnosis schedule exercises diagram words storage session',
	cli: 'engine diagnosis schedule exercises words',
	routes: 'engine diagnosis schedule exercises diagram words storage session ui'
};

const LAYERS = Object.keys(FOLDERS);
const eslint = new ESLint();

/** The rules broken on each line of a snippet that stands at `path` under src/. */
async function broken(path: string, lines: string[]): Promise<string[][]> {
	const [result] = await eslint.lintText(lines.join('\n'), { filePath: `src/${path}` });
	const fatal = result!.messages.find((message) => message.fatal);
	if (fatal) throw new Error(fatal.message);
	return lines.map((_, index) =>
		result!.messages
			.filter((message) => message.line === index + 1)
			.map((message) => message.ruleId ?? 'none')
	);
}

/** The ways in which a file of one layer could name a module of another. */
function waysTo(from: string, to: string): string[] {
	const up = FOLDERS[from]!.split('/').map(() => '..');
	const target = FOLDERS[to]!;
	const isBeside = FOLDERS[from]!.startsWith('lib/') && target.startsWith('lib/');
	return [
		`${up.join('/')}/${target}/sample`,
		`${up.join('/')}/${target}`,
		`./deep/../${up.join('/')}/${target}/sample`,
		`../${up.join('/')}/src/${target}/sample`,
		`/src/${target}/sample`,
		...(isBeside ? [`../${to}/sample`, `../${to}`] : [])
	];
}

const importOf = (specifier: string, index: number) => `export { x${index} } from '${specifier}';`;

describe.each(LAYERS)('the fence round %s', (layer) => {
	const allowed = MAY_IMPORT[layer]!.split(' ').filter(Boolean);
	const strangers = LAYERS.filter((name) => name !== layer && !allowed.includes(name));
	const code = `${FOLDERS[layer]}/sample.ts`;
	const test = `${FOLDERS[layer]}/sample.test.ts`;

	it.runIf(strangers.length > 0)('stops every import of a layer it may not know', async () => {
		const lines = strangers.flatMap((name) => waysTo(layer, name)).map(importOf);
		for (const path of [code, test])
			for (const [index, rules] of (await broken(path, lines)).entries())
				expect(rules, `${path}: ${lines[index]}`).toContain('no-restricted-imports');
	});

	it('lets through the layers it stands on, and its own files', async () => {
		const own = ['./other', './words', '../' + layer + '/other'];
		const lines = [...allowed.flatMap((name) => waysTo(layer, name)), ...own].map(importOf);
		for (const [index, rules] of (await broken(code, lines)).entries())
			expect(rules, lines[index]).not.toContain('no-restricted-imports');
	});
});

/** Snippets that a rule must stop in some places and let through in others. */
const SNIPPETS: [rule: string, code: string, stopped: string[], free: string[]][] = [
	[
		'no-restricted-imports',
		"export { x } from '$lib/engine';",
		['lib/session/a.ts', 'lib/ui/a.svelte.ts', 'cli/a.ts', 'lib/engine/a.test.ts'],
		['routes/a.ts']
	],
	[
		'no-restricted-imports',
		"export { x } from '$lib/ui/Bench.svelte';",
		['lib/engine/a.ts', 'lib/words/a.ts', 'cli/a.ts'],
		['routes/a.ts']
	],
	[
		'no-restricted-imports',
		"export { onMount } from 'svelte';",
		['lib/engine/a.ts', 'lib/exercises/a.ts', 'lib/words/a.ts', 'lib/diagram/a.ts', 'cli/a.ts'],
		['lib/ui/a.ts', 'lib/session/a.ts']
	],
	[
		'no-restricted-imports',
		"export { readFileSync } from 'node:fs';",
		['lib/engine/a.ts', 'lib/diagram/a.ts', 'lib/ui/a.ts', 'routes/a.ts'],
		['cli/a.ts', 'lib/engine/a.test.ts', 'lib/exercises/a.node.ts']
	],
	[
		'no-restricted-imports',
		"export { x } from '../lib/exercises/content.node';",
		['lib/exercises/a.ts', 'lib/ui/a.ts', 'routes/a.ts'],
		['cli/a.ts', 'lib/exercises/a.test.ts']
	],
	[
		'no-restricted-imports',
		"export { parse } from 'valibot';",
		['lib/diagram/a.ts'],
		['lib/engine/a.ts', 'lib/diagram/a.test.ts']
	],
	[
		'no-restricted-imports',
		"export { path } from 'd3-path';",
		[],
		['lib/diagram/a.ts', 'lib/ui/a.ts']
	],
	[
		'no-restricted-imports',
		"export { select } from 'd3-selection';",
		['lib/diagram/a.ts', 'lib/ui/a.ts', 'routes/a.ts'],
		[]
	],
	[
		'no-restricted-globals',
		'export const x = document.title;',
		['lib/engine/a.ts', 'lib/diagnosis/a.ts', 'lib/schedule/a.ts', 'lib/exercises/a.ts'],
		['lib/ui/a.ts']
	],
	[
		'no-restricted-globals',
		'export const x = window.innerWidth;',
		['lib/engine/a.ts', 'lib/diagnosis/a.ts', 'lib/exercises/a.ts'],
		['lib/session/a.ts']
	],
	[
		'no-restricted-globals',
		"export const x = localStorage.getItem('x');",
		['lib/engine/a.ts', 'lib/exercises/a.ts', 'lib/session/a.ts', 'lib/ui/a.ts', 'routes/a.ts'],
		['lib/storage/a.ts']
	],
	[
		'no-restricted-properties',
		"export const x = globalThis.localStorage.getItem('x');",
		['lib/engine/a.ts', 'lib/ui/a.ts'],
		['lib/storage/a.ts']
	],
	[
		'no-restricted-syntax',
		"export const x = import('../ui/a');",
		['lib/engine/a.ts', 'lib/words/a.ts', 'cli/a.ts'],
		['lib/ui/a.ts']
	],
	[
		'svelte/no-at-html-tags',
		'<script lang="ts">let { text }: { text: string } = $props();</script><p>{@html text}</p>',
		['lib/ui/A.svelte', 'routes/A.svelte'],
		[]
	],
	[
		'svelte/no-inline-styles',
		'<p style="color: red">text</p>',
		['lib/ui/A.svelte', 'routes/A.svelte'],
		[]
	],
	[
		'no-restricted-imports',
		'<script lang="ts">import x from "../../cli/a"; x;</script>',
		['lib/ui/A.svelte'],
		[]
	]
];

describe.each(SNIPPETS)('%s on %s', (rule, code, stopped, free) => {
	it('stops it where it is wrong and lets it through where it is right', async () => {
		for (const path of stopped) {
			const rules = (await broken(path, [code])).flat();
			expect(rules, path).toContain(rule);
		}
		for (const path of free) {
			const rules = (await broken(path, [code])).flat();
			expect(rules, path).not.toContain(rule);
		}
	});
});
