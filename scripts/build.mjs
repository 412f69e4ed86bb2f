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
	const folder = join(root, 'build');
	if (!isWhole(folder)) return false;
	const built = statSync(join(folder, 'index.html')).mtimeMs;
	const sources = SOURCES.map((name) => join(root, name)).filter((path) => existsSync(path));
	return sources.every((path) => newest(path) <= built);
}

/** How the bundler is called. */
export const BUILD_CALL = {
	file: process.execPath,
	args: [join(ROOT, 'node_modules/vite/bin/vite.js'), 'build'],
	env: { NODE_ENV: 'production' }
};

/**
 * Whether a build came to its end: the first page is written last.
 * @param {string} folder
 */
export const isWhole = (folder) => existsSync(join(folder, 'index.html'));

/** Builds the site; false if the build failed, and then what the bundler said is shown. */
export function build() {
	const { file, args, env } = BUILD_CALL;
	const run = spawnSync(file, args, {
		cwd: ROOT,
		encoding: 'utf8',
		maxBuffer: 2 ** 28,
		env: { ...process.env, ...env }
	});
	const isDone = run.status === 0 && isWhole(BUILD);
	if (!isDone) console.error(run.stdout + run.stderr);
	return isDone;
}
