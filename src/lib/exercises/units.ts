/**
 * The twelve units and their worked examples. A worked example is a bench and a few steps that
 * change it; it plays on the same drawing as everything else, so it cannot say what the engine does
 * not do: `expect` is what the meter must do after the step, and a test proves it.
 */
import * as v from 'valibot';
import {
	DEFAULTS,
	METER_MODES,
	RANGES,
	checkBench,
	checkShape,
	exact,
	fileOf,
	freeId,
	jsonPath,
	list,
	oneOf,
	parseJson,
	readMeter,
	want,
	withEmpty,
	withPlug,
	type Bench,
	type MeterMode,
	type NodeName,
	type Parsed
} from '../engine';
import { Wrong, fail, need, needPair } from './gate';
import { UNITS } from './shapes';
import { pair, some, whole, words } from './shapesShared';

export const EXPECTED = ['sounds', 'silent', 'live'] as const;
/** What the meter does: sounds, is silent, or refuses because the circuit is live. */
export type Expected = (typeof EXPECTED)[number];

/** What happens in one step, in this order: plug, wire, probes. What is left out stays as it was. */
export interface WorkedStep {
	readonly words: string;
	/** A plug of the bench goes in, or moves to that travel. */
	readonly plug?: { readonly id: string; readonly socket: string; readonly travel: number };
	/** What stands in this socket comes out. */
	readonly pullOut?: string;
	/** A jumper is soldered from here to there. */
	readonly jumper?: readonly [NodeName, NodeName];
	/** This wire is taken out. */
	readonly takeOut?: string;
	/** Red and black; null lifts both. */
	readonly probes?: readonly [NodeName, NodeName] | null;
	readonly mode?: MeterMode;
	readonly expect?: Expected;
}
export interface Worked {
	readonly bench: Bench;
	readonly steps: readonly WorkedStep[];
}
export interface Unit {
	/** 1 to 12. */
	readonly number: number;
	readonly title: string;
	/** What one can do after it, a sentence or two. */
	readonly learn: string;
	/** How far the computed hints go: 1 how many, 2 where, 3 which. Later units give less. */
	readonly help: 1 | 2 | 3;
	readonly worked: Worked;
}

/** The bench, probes and mode after a step. */
export interface Frame {
	readonly words: string;
	readonly bench: Bench;
	readonly probes: readonly [NodeName, NodeName] | null;
	readonly mode: MeterMode;
}

/** The wire out, and with it every fault that it had. */
const withoutWire = (bench: Bench, id: string): Bench => ({
	...bench,
	wires: bench.wires.filter((w) => w.id !== id),
	faults: bench.faults.filter((f) => !('wire' in f) || f.wire !== id)
});

function withStep(bench: Bench, step: WorkedStep): Bench {
	let next = bench;
	if (step.pullOut) next = withEmpty(next, step.pullOut);
	if (step.plug) next = withPlug(next, step.plug.socket, step.plug.id, step.plug.travel);
	if (step.takeOut) next = withoutWire(next, step.takeOut);
	if (!step.jumper) return next;
	const [from, to] = step.jumper;
	const wire = { id: freeId(next, 'j'), from, to, awg: DEFAULTS.wireAwg, mm: DEFAULTS.mm };
	return { ...next, wires: [...next.wires, wire] };
}

/** The worked example frame by frame; one frame a step. */
export function framesOf({ bench, steps }: Worked): Frame[] {
	let now: Frame = { words: '', bench, probes: null, mode: 'continuity' };
	return steps.map((step) => {
		now = {
			words: step.words,
			bench: withStep(now.bench, step),
			probes: step.probes === undefined ? now.probes : step.probes,
			mode: step.mode ?? now.mode
		};
		return now;
	});
}

/** What the meter does in a frame; null without probes. */
export function meterIn({ bench, probes, mode }: Frame): Expected | null {
	if (!probes) return null;
	const reading = readMeter(bench, mode, ...probes);
	return reading.warning ? 'live' : reading.beep ? 'sounds' : 'silent';
}

const text = v.string(want('an id'));
const step = exact(
	{
		words: words(10, 300),
		plug: v.optional(
			exact(
				{
					id: text,
					socket: text,
					travel: v.optional(
						v.pipe(v.number(want('a travel in mm')), v.minValue(0), v.maxValue(RANGES.travel.to)),
						DEFAULTS.travel
					)
				},
				'a plug that moves'
			)
		),
		pullOut: v.optional(text),
		jumper: v.optional(pair),
		takeOut: v.optional(text),
		probes: v.optional(v.nullable(pair)),
		mode: v.optional(v.picklist(METER_MODES, want(oneOf(METER_MODES)))),
		expect: v.optional(v.picklist(EXPECTED, want(oneOf(EXPECTED))))
	},
	'a step'
);
const unit = exact(
	{
		number: whole(1, UNITS),
		title: words(5, 80),
		learn: words(20, 300),
		help: v.picklist([1, 2, 3], want('1, 2 or 3')),
		worked: exact(
			{
				bench: v.looseObject({}, want('a bench, an object in braces')),
				steps: v.pipe(
					some(step, 'steps'),
					v.minLength(3, want('three steps or more')),
					v.maxLength(12, want('twelve steps at most'))
				)
			},
			'a worked example'
		)
	},
	'a unit'
);
const shape = v.pipe(
	list(unit, 'units'),
	v.check(
		(units) => units.every((u, i) => u.number === i + 1) && units.length === UNITS,
		`the units should be numbered 1 to ${UNITS} in this order`
	)
);

/** Every step names what is there, and the bench after it passes the engine's gate. */
function needPlayable({ bench, steps }: Worked, path: string) {
	for (const [i, frame] of framesOf({ bench, steps }).entries()) {
		const at = `${path}.steps[${i}]`;
		const { plug, pullOut, takeOut } = steps[i]!;
		if (plug && !bench.plugs.some((p) => p.id === plug.id))
			fail(`${at}.plug.id`, `the bench has no plug "${plug.id}"`);
		if (pullOut && !bench.sockets.some((s) => s.id === pullOut))
			fail(`${at}.pullOut`, `the bench has no socket "${pullOut}"`);
		const wires = i > 0 ? framesOf({ bench, steps })[i - 1]!.bench.wires : bench.wires;
		if (takeOut && !wires.some((w) => w.id === takeOut))
			fail(`${at}.takeOut`, `there is no wire "${takeOut}" now`);
		need(checkBench(fileOf(frame.bench)), '$', at);
		if (frame.probes) needPair(frame.bench, {}, frame.probes, `${at}.probes`);
	}
}

function unitOf(value: v.InferOutput<typeof unit>, i: number): Unit {
	const path = `${jsonPath([i])}.worked`;
	const bench = need(checkBench(value.worked.bench), '$', `${path}.bench`);
	const worked = { bench, steps: value.worked.steps as WorkedStep[] };
	needPlayable(worked, path);
	return { ...value, worked };
}

/** The units from the text of units.json, or the first problem. */
export function parseUnits(json: string): Parsed<Unit[]> {
	const value = parseJson(json, 'the list of units');
	if (!value.ok) return value;
	const checked = checkShape(shape, value.value);
	if (!checked.ok) return checked;
	try {
		return { ok: true, value: checked.value.map(unitOf) };
	} catch (error) {
		if (error instanceof Wrong) return { ok: false, problem: error.problem };
		throw error;
	}
}
