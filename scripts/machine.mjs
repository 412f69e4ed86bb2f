/**
 * What this machine has: the Node version, a Chromium, ngspice, and whether apt-get may be used.
 * Runs before any package is installed, so it stands on Node's own modules only.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const CHROMIUM_NAMES = [
	'chromium',
	'chromium-browser',
	'google-chrome',
	'google-chrome-stable',
	'chrome'
];

/** Places outside PATH where an ordinary installation puts the browser. */
export const CHROMIUM_PLACES = [
	'/Applications/Chromium.app/Contents/MacOS/Chromium',
	'/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
	'/snap/bin/chromium'
];

/**
 * Flags for every Chromium that a script or test starts: it runs as root in a container, and it
 * can find no host but this machine, so that a request to anywhere else fails.
 */
export const BROWSER_ARGS = [
	'--no-sandbox',
	'--disable-gpu',
	'--disable-background-networking',
	'--disable-component-update',
	'--disable-sync',
	'--disable-quic',
	'--no-first-run',
	'--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost, EXCLUDE 127.0.0.1'
];

/**
 * What is wrong with a Node version such as `20.18.1`, as a sentence, or null.
 * The bundler asks for 20.19 in line 20 and for 22.12 from line 22 on.
 * @param {string} version
 */
export function nodeProblem(version) {
	const [major = 0, minor = 0] = version.split('.').map(Number);
	const isNewEnough = major > 22 || (major === 22 && minor >= 12) || (major === 20 && minor >= 19);
	if (isNewEnough) return null;
	return `This is Node ${version}. Solderside needs Node 20.19 or later in line 20, or 22.12 or later.`;
}

/**
 * The places on PATH where a program of one of these names stands, in the order of the names.
 * @param {string[]} names
 * @param {string} [path]
 * @returns {string[]}
 */
export function onPath(names, path = process.env.PATH ?? '') {
	const folders = path.split(delimiter).filter(Boolean);
	const endings = process.platform === 'win32' ? ['.exe', '.cmd', ''] : [''];
	return names
		.flatMap((name) => folders.flatMap((folder) => endings.map((e) => join(folder, name + e))))
		.filter((file) => existsSync(file));
}

/** A program counts only if it answers: some systems put a stub where the browser would be.
 * @param {string} file
 * @param {RegExp} answer
 */
function answers(file, answer) {
	const run = spawnSync(file, ['--version'], { encoding: 'utf8', timeout: 30_000 });
	return run.status === 0 && answer.test(run.stdout + run.stderr);
}

/**
 * A Chromium that answers `--version`: the one named by SOLDERSIDE_CHROMIUM, else the first that
 * is found. Undefined where there is none.
 * @returns {string | undefined}
 */
export function findChromium() {
	const named = process.env.SOLDERSIDE_CHROMIUM;
	const candidates = named
		? [named]
		: [...onPath(CHROMIUM_NAMES), ...CHROMIUM_PLACES.filter((file) => existsSync(file))];
	return candidates.find((file) => answers(file, /chrom/i));
}

/**
 * The Chromium that `npx playwright install chromium` fetches, where somebody has done that.
 * Needs the packages to be installed.
 * @returns {Promise<string | undefined>}
 */
export async function fetchedChromium() {
	try {
		const { chromium } = await import('@playwright/test');
		const file = chromium.executablePath();
		return existsSync(file) && answers(file, /chrom/i) ? file : undefined;
	} catch {
		return undefined;
	}
}

/** An ngspice on PATH that answers, or undefined. */
export function findNgspice() {
	return onPath(['ngspice']).find((file) => answers(file, /ngspice/i));
}

/** Whether system packages can be installed here: root, on a system with apt-get. */
export function hasApt() {
	return process.getuid?.() === 0 && onPath(['apt-get']).length > 0;
}

/**
 * Runs a program with the same terminal and tells whether it ended well.
 * @param {string} file
 * @param {string[]} args
 * @param {NodeJS.ProcessEnv} [env]
 */
export function runs(file, args, env = process.env) {
	return spawnSync(file, args, { stdio: 'inherit', env }).status === 0;
}
