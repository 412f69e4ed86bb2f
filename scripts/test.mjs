/**
 * `npm test`: types, lint, unit and outside checks, build, browser tests, told in this order, then
 * the course in numbers. A step that fails does not stop the others. The last line is the whole count.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BUILD, BUILD_CALL, ROOT, isWhole } from './build.mjs';
import { playwrightCount, single, total, vitestCount } from './counts.mjs';
import { npmCall, plainEnv } from './packages.mjs';
import { freePort } from './serve.mjs';
import { makeTurns } from './turns.mjs';

/** A step that hangs is ended, so that the count is always printed; one on a slow machine is none. */
const LONGEST = 25 * 60_000;
const FIRST_TEST_PORT = 4273;

const TSX = 'node_modules/tsx/dist/cli.mjs';

/** @typedef {import('./counts.mjs').Count} Count */

const reports = mkdtempSync(join(tmpdir(), 'solderside-test-'));

/** Steps that run. @type {Set<import('node:child_process').ChildProcess>} */
const children = new Set();

/**
 * Ends a running step with all that it started.
 * @param {import('node:child_process').ChildProcess} child
 * @param {NodeJS.Signals} signal
 */
function endChild(child, signal) {
	if (!child.pid) return;
	try {
		// A step leads a process group of its own, where the system has such a thing.
		if (process.platform === 'win32') child.kill(signal);
		else process.kill(-child.pid, signal);
	} catch {
		// It has ended already.
	}
}

const turns = makeTurns((text) => process.stdout.write(text));
/** Programs show their colours in a terminal only; those that wait for their turn have none. */
const COLOURS = process.stdout.isTTY && !process.env.NO_COLOR ? { FORCE_COLOR: '1' } : {};

/** @typedef {(text: string | Uint8Array) => void} Say */

/**
 * Runs a program to its end; true if it ended well in time.
 * @param {number} step whose turn it must be to have the terminal
 * @param {{ file: string, args: string[], shell?: boolean }} call
 * @param {NodeJS.ProcessEnv} [env]
 * @param {Say} [say] told what the program says, in place of the terminal
 * @returns {Promise<boolean>}
 */
function run(step, { file, args, shell = false }, env = {}, say) {
	return new Promise((resolve) => {
		const isShown = !say && turns.isTurnOf(step);
		const child = spawn(file, args, {
			cwd: ROOT,
			stdio: ['ignore', isShown ? 'inherit' : 'pipe', isShown ? 'inherit' : 'pipe'],
			env: { ...plainEnv(process.env), ...(isShown ? {} : COLOURS), ...env },
			shell,
			detached: process.platform !== 'win32'
		});
		children.add(child);
		/** @type {Say} */
		const tell = say ?? ((text) => turns.say(step, text));
		child.stdout?.on('data', tell);
		child.stderr?.on('data', tell);
		const clock = setTimeout(() => {
			tell(`This step did not end within ${LONGEST / 60_000} minutes and was ended.\n`);
			endChild(child, 'SIGKILL');
		}, LONGEST);
		/** @param {boolean} ok */
		const done = (ok) => {
			clearTimeout(clock);
			children.delete(child);
			resolve(ok);
		};
		child.on('error', () => done(false));
		child.on('close', (code) => done(code === 0));
	});
}

/**
 * @param {string} name
 * @returns {any} the parsed report, or null
 */
function reportOf(name) {
	const file = join(reports, name);
	return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null;
}

/** @param {string} script @param {string[]} args */
const node = (script, ...args) => ({ file: process.execPath, args: [script, ...args] });

/** @param {string} name @returns {(step: number) => Promise<Count>} */
const script = (name) => async (step) =>
	single(await run(step, npmCall(['run', '--silent', name])));

/** @param {number} step */
async function vitest(step) {
	const file = join(reports, 'vitest.json');
	const ok = await run(
		step,
		node(
			'node_modules/vitest/vitest.mjs',
			'run',
			'--reporter=default',
			'--reporter=json',
			`--outputFile.json=${file}`
		)
	);
	return vitestCount(reportOf('vitest.json'), ok);
}

/** @type {boolean} */
let hasBuild = false;

/** Builds; what the bundler says is shown only if it fails. @param {number} step */
async function buildStep(step) {
	// A build left over from before must not be taken for this one.
	rmSync(BUILD, { recursive: true, force: true });
	/** @type {(string | Uint8Array)[]} */
	const said = [];
	const { env, ...call } = BUILD_CALL;
	const ok = await run(step, call, env, (text) => said.push(text));
	hasBuild = ok && isWhole(BUILD);
	if (!hasBuild) for (const text of said) turns.say(step, text);
	return single(hasBuild);
}

/** @param {number} step */
async function browser(step) {
	if (!hasBuild) {
		turns.say(step, 'Not run: there is no build.\n');
		return single(false);
	}
	const ok = await run(step, node('node_modules/@playwright/test/cli.js', 'test'), {
		PLAYWRIGHT_JSON_OUTPUT_FILE: join(reports, 'playwright.json'),
		SOLDERSIDE_TEST_PORT: String(await freePort(FIRST_TEST_PORT))
	});
	return playwrightCount(reportOf('playwright.json'), ok);
}

/**
 * In the order in which they are told. Those of a lane run one after the other and both lanes side
 * by side, since types, lint and build use one processor each; what has no lane runs alone.
 * @type {[name: string, lane: 'code' | 'tests' | null, step: (step: number) => Promise<Count>][]}
 */
const STEPS = [
	['types', 'code', script('check')],
	['lint', 'code', script('lint')],
	['unit and outside checks', 'tests', vitest],
	['build', 'code', buildStep],
	['browser tests', null, browser],
	[
		'the course, counted',
		null,
		async (step) => single(await run(step, node(TSX, 'src/cli/course.ts')))
	]
];

/** @param {Count} count */
function sentence({ passed, failed, skipped }) {
	return `${passed} passed, ${failed} failed` + (skipped > 0 ? `, ${skipped} skipped` : '');
}

/** @type {Count[]} */
const counts = [];

/** Runs a step, says what came of it, and counts it. @param {number} index */
async function report(index) {
	const [name, , step] = /** @type {(typeof STEPS)[number]} */ (STEPS[index]);
	turns.say(index, `\n== ${name} ==\n`);
	const start = Date.now();
	const count = await step(index).catch((error) => {
		turns.say(index, `${error.stack ?? error}\n`);
		return single(false);
	});
	const seconds = Math.round((Date.now() - start) / 1000);
	turns.say(index, `${name}: ${sentence(count)} (${seconds} s)\n`);
	turns.end(index);
	counts[index] = count;
}

/** Runs the steps of a lane. @param {'code' | 'tests' | null} lane */
async function runLane(lane) {
	for (const [index, [, of]] of STEPS.entries()) if (of === lane) await report(index);
}

for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM']))
	process.on(signal, () => {
		for (const child of children) endChild(child, signal);
		process.exit(1);
	});

await Promise.all([runLane('code'), runLane('tests')]);
await runLane(null);
rmSync(reports, { recursive: true, force: true });

const { passed, failed } = total(counts);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
