/**
 * Whether build/ is there and newer than everything it is made from, and the build that makes it
 * so. Folders count with their files: a file that is taken away changes its folder's date.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The root folder of the project. */
export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
/** The built site. */
export const BUILD = join(ROOT, 'build');

const SOURCES = [
	'src',
	'static',
	'package.json',
	'package-lock.json',
	'svelte.config.js',
	'tsconfig.json',
	'vite.config.ts'
];

/**
 * The newest date of change, in milliseconds, of a file or of a folder and all that is in it.
 * @param {string} path
 * @returns {number}
 */
export function newest(path) {
	const stats = statSync(path);
	if (!stats.isDirectory()) return stats.mtimeMs;
	const inside = readdirSync(path).map((name) => newest(join(path, name)));
	return Math.max(stats.mtimeMs, ...inside);
}

/**
 * Whether the built site is there and no source is newer.
 * @param {string} root
 */
export function isBuilt(root) {
	// The first page is written last, so a build that was broken off does not count.
	const page = join(root, 'build/index.html');
	if (!existsSync(page)) return false;
	const built = statSync(page).mtimeMs;
	const sources = SOURCES.map((name) => join(root, name)).filter((path) => existsSync(path));
	return sources.every((path) => newest(path) <= built);
}

/** Builds the site; false if the build failed, and then what the bundler said is shown. */
export function build() {
	const vite = join(ROOT, 'node_modules/vite/bin/vite.js');
	const run = spawnSync(process.execPath, [vite, 'build'], {
		cwd: ROOT,
		encoding: 'utf8',
		maxBuffer: 2 ** 28,
		env: { ...process.env, NODE_ENV: 'production' }
	});
	const isDone = run.status === 0 && existsSync(join(BUILD, 'index.html'));
	if (!isDone) console.error(run.stdout + run.stderr);
	return isDone;
}
