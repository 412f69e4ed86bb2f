/**
 * Whether node_modules holds what package-lock.json asks for, and the `npm ci` that makes it so.
 * A stamp inside node_modules remembers the lock it was made from; without one, npm's own list of
 * what it installed is compared, so that packages installed by hand are not installed again.
 * Runs before any package is installed.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';

const STAMP = 'node_modules/.solderside-setup.json';
const INSTALLED = 'node_modules/.package-lock.json';

/**
 * Settings that npm hands down to the scripts it runs and that would change what a nested
 * `npm ci` installs. The rest (registry, proxy, certificates) is wanted.
 */
const HANDED_DOWN =
	/^npm_config_(omit|include|only|production|dev|optional|also|global|location|dry_run|package_lock|package_lock_only|ignore_scripts|workspace|workspaces|include_workspace_root|install_strategy|prefix)$/i;

/**
 * The environment for a nested npm: as given, without what would change the set of packages.
 * @param {NodeJS.ProcessEnv} env
 * @returns {NodeJS.ProcessEnv}
 */
export function plainEnv(env) {
	const kept = Object.entries(env).filter(
		([name]) => name !== 'NODE_ENV' && !HANDED_DOWN.test(name)
	);
	return Object.fromEntries(kept);
}

/**
 * How to call the npm that called us; plain `npm` when a script is run by hand.
 * @param {string[]} args
 * @returns {{ file: string, args: string[], shell: boolean }}
 */
export function npmCall(args) {
	const cli = process.env.npm_execpath;
	if (cli && basename(cli) === 'npm-cli.js')
		return { file: process.execPath, args: [cli, ...args], shell: false };
	return { file: 'npm', args, shell: process.platform === 'win32' };
}

/** @param {string} file */
const textOf = (file) => (existsSync(file) ? readFileSync(file, 'utf8') : null);

/** @param {string} text */
const hashOf = (text) => createHash('sha256').update(text).digest('hex');

/**
 * @typedef {{ version?: string, dev?: boolean, optional?: boolean, devOptional?: boolean }} Entry
 * @param {string} text a lock file
 * @returns {[string, Entry][]} its packages, the project itself left out
 */
function packagesOf(text) {
	return Object.entries(JSON.parse(text).packages ?? {}).filter(([path]) => path !== '');
}

/**
 * Whether everything the lock asks for is among what npm says it installed. Optional packages are
 * left out: most of them are for other machines.
 * @param {string} lock
 * @param {string} installed
 * @param {boolean} withDev
 */
export function holdsAll(lock, installed, withDev) {
	const have = new Map(packagesOf(installed));
	return packagesOf(lock).every(([path, entry]) => {
		if (entry.optional) return true;
		if (!withDev && (entry.dev || entry.devOptional)) return true;
		return have.get(path)?.version === entry.version;
	});
}

/** Whether the test tools are there already: they are never taken away again.
 * @param {string} root
 */
function hasDev(root) {
	const installed = textOf(join(root, INSTALLED));
	return installed !== null && packagesOf(installed).some(([, entry]) => entry.dev);
}

/**
 * Whether nothing needs to be installed.
 * @param {string} root
 * @param {boolean} withDev
 */
export function isInstalled(root, withDev) {
	const lock = textOf(join(root, 'package-lock.json'));
	const installed = textOf(join(root, INSTALLED));
	if (lock === null || installed === null) return false;
	const stamp = JSON.parse(textOf(join(root, STAMP)) ?? '{}');
	if (stamp.lock === hashOf(lock) && (stamp.dev || !withDev)) return true;
	return holdsAll(lock, installed, withDev);
}

/**
 * @param {string} root
 * @param {boolean} withDev
 */
function stamp(root, withDev) {
	const lock = readFileSync(join(root, 'package-lock.json'), 'utf8');
	const dev = withDev || hasDev(root);
	writeFileSync(join(root, STAMP), JSON.stringify({ lock: hashOf(lock), dev }) + '\n');
}

/**
 * Installs what is missing from node_modules; says what it does. False if npm failed.
 * @param {string} root
 * @param {boolean} withDev
 */
export function installPackages(root, withDev) {
	if (!isInstalled(root, withDev)) {
		const which = withDev || hasDev(root) ? '--include=dev' : '--omit=dev';
		const call = npmCall(['ci', which, '--no-audit', '--no-fund']);
		console.log(`Installing packages: npm ci ${which}`);
		const run = spawnSync(call.file, call.args, {
			cwd: root,
			stdio: 'inherit',
			env: plainEnv(process.env),
			shell: call.shell
		});
		if (run.status !== 0) return false;
	}
	stamp(root, withDev);
	return true;
}
