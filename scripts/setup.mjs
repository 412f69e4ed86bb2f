/**
 * Makes a fresh clone ready: `setup.mjs start` for the site, `setup.mjs test` for the tests too.
 * npm runs it before `start` and `test`. It installs only what is missing, takes nothing away, and
 * where it may not install something it says what to do by hand.
 */
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
	fetchedChromium,
	findChromium,
	findNgspice,
	hasApt,
	nodeProblem,
	runs
} from './machine.mjs';
import { installPackages } from './packages.mjs';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));

const BY_HAND = {
	chromium:
		'A Chromium is missing. Install your system\'s "chromium" package, or run "npx playwright install chromium" (no root needed), or set SOLDERSIDE_CHROMIUM to the program.',
	ngspice:
		'ngspice is missing. Install your system\'s "ngspice" package, or put a program of that name on PATH.'
};

/** @param {string} sentence @returns {never} */
function stop(sentence) {
	console.error(sentence);
	process.exit(1);
}

/** @returns {Promise<('chromium' | 'ngspice')[]>} */
async function missingPrograms() {
	const hasChromium = findChromium() ?? (await fetchedChromium());
	return [
		...(hasChromium ? [] : [/** @type {const} */ ('chromium')]),
		...(findNgspice() ? [] : [/** @type {const} */ ('ngspice')])
	];
}

/** @param {string[]} names */
function installPrograms(names) {
	console.log(`Installing programs: apt-get install ${names.join(' ')}`);
	const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
	runs('apt-get', ['-q', 'update'], env);
	runs('apt-get', ['-q', 'install', '-y', '--no-install-recommends', ...names], env);
}

async function programs() {
	const named = process.env.SOLDERSIDE_CHROMIUM;
	if (named && !findChromium())
		stop(`SOLDERSIDE_CHROMIUM is "${named}", which does not answer --version as a Chromium does.`);
	const missing = await missingPrograms();
	if (missing.length === 0) return;
	if (hasApt()) installPrograms(missing);
	const still = await missingPrograms();
	if (still.length > 0) stop(still.map((name) => BY_HAND[name]).join('\n'));
}

const purpose = process.argv[2];
if (purpose !== 'start' && purpose !== 'test') stop('Usage: node scripts/setup.mjs start|test');

const problem = nodeProblem(process.versions.node);
if (problem) stop(problem);

const withDev = purpose === 'test';
if (!installPackages(ROOT, withDev))
	stop(
		`The packages could not be installed; npm says why above. By hand: npm ci ${withDev ? '--include=dev' : '--omit=dev'}`
	);
if (withDev) await programs();
