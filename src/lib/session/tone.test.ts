import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { LOUDEST, PITCH, RAMP, Tone } from './tone';

class FakeParam {
	value = 1;
	readonly fades: { to: number; at: number; constant: number }[] = [];
	setTargetAtTime(to: number, at: number, constant: number) {
		this.fades.push({ to, at, constant });
	}
}
class FakeNode {
	connected: unknown[] = [];
	constructor(readonly context: FakeContext) {}
	connect<N>(to: N): N {
		this.connected.push(to);
		return to;
	}
	disconnect() {
		this.connected = [];
	}
}
class FakeGain extends FakeNode {
	readonly gain = new FakeParam();
}
class FakeOscillator extends FakeNode {
	readonly frequency = new FakeParam();
	type = 'sine';
	onended: (() => void) | null = null;
	started = false;
	stopsAt: number | null = null;
	start() {
		this.started = true;
	}
	stop(at: number) {
		this.stopsAt = at;
	}
}
/** As much of an AudioContext as the tone uses; its clock moves by hand. */
class FakeContext {
	currentTime = 0;
	state = 'suspended';
	readonly destination = {};
	readonly oscillators: FakeOscillator[] = [];
	readonly gains: FakeGain[] = [];
	closed = false;
	resumes = 0;
	/** As in a browser without a sound device: the promise stays pending. */
	resume() {
		this.resumes += 1;
		if (canSound) this.state = 'running';
		return canSound ? Promise.resolve() : new Promise(() => {});
	}
	close() {
		this.closed = true;
		this.state = 'closed';
		return Promise.resolve();
	}
	createOscillator() {
		const node = new FakeOscillator(this);
		this.oscillators.push(node);
		return node;
	}
	createGain() {
		const node = new FakeGain(this);
		this.gains.push(node);
		return node;
	}
	pass(seconds: number) {
		this.currentTime += seconds;
		for (const o of this.oscillators)
			if (o.stopsAt !== null && o.stopsAt <= this.currentTime) o.onended?.();
	}
}

let canSound = true;
let contexts: FakeContext[] = [];
let page: EventTarget;
const make = () => {
	const context = new FakeContext();
	contexts.push(context);
	return context as unknown as AudioContext;
};
const gesture = (name = 'pointerdown') => page.dispatchEvent(new Event(name));
/** A tone that is on, after a gesture. */
function readyTone(): { tone: Tone; context: FakeContext } {
	const tone = new Tone(make);
	tone.setOn(true);
	gesture();
	return { tone, context: contexts.at(-1)! };
}

beforeEach(() => {
	vi.useFakeTimers();
	canSound = true;
	contexts = [];
	page = new EventTarget();
	vi.stubGlobal('window', page);
	vi.stubGlobal('navigator', {});
});
afterEach(() => {
	vi.unstubAllGlobals();
	vi.useRealTimers();
});

describe('a tone that is off', () => {
	test('makes nothing, whatever the meter says and whoever clicks', () => {
		const tone = new Tone(make);
		tone.sound(true);
		gesture();
		tone.setVolume(1);
		tone.setOn(false);
		expect(contexts).toEqual([]);
	});
});

describe('a tone that is on', () => {
	test('makes nothing until the first gesture, and then sounds if the meter still beeps', () => {
		const tone = new Tone(make);
		tone.setOn(true);
		tone.sound(true);
		expect(contexts).toEqual([]);
		gesture('keydown');
		expect(contexts).toHaveLength(1);
		expect(contexts[0]!.oscillators).toHaveLength(1);
		gesture();
		expect(contexts).toHaveLength(1);
		expect(contexts[0]!.oscillators).toHaveLength(1);
	});

	test('is ready at once where the page has had a gesture', () => {
		vi.stubGlobal('navigator', { userActivation: { hasBeenActive: true } });
		new Tone(make).setOn(true);
		expect(contexts).toHaveLength(1);
	});

	test('sounds one soft oscillator at 880 Hz through a gain', () => {
		const { tone, context } = readyTone();
		tone.sound(true);
		tone.sound(true);
		const [oscillator] = context.oscillators;
		const [gain] = context.gains;
		expect(context.oscillators).toHaveLength(1);
		expect(oscillator).toMatchObject({ type: 'triangle', started: true, stopsAt: null });
		expect(oscillator!.frequency.value).toBe(PITCH);
		expect(oscillator!.connected).toEqual([gain]);
		expect(gain!.connected).toEqual([context.destination]);
	});

	test('comes and goes over 8 ms, and its nodes are let go when it has faded', () => {
		const { tone, context } = readyTone();
		context.pass(1);
		tone.sound(true);
		const [oscillator] = context.oscillators;
		const [gain] = context.gains;
		expect(gain!.gain.value).toBe(0);
		expect(RAMP).toBe(0.008);
		expect(gain!.gain.fades).toEqual([{ to: LOUDEST / 4, at: 1, constant: RAMP }]);
		context.pass(1);
		tone.sound(false);
		expect(gain!.gain.fades.at(-1)).toEqual({ to: 0, at: 2, constant: RAMP });
		expect(oscillator!.stopsAt).toBeCloseTo(2.08);
		expect(oscillator!.connected).toEqual([gain]);
		context.pass(0.1);
		expect([oscillator!.connected, gain!.connected]).toEqual([[], []]);
	});

	test('begins anew for a new beep, even while the last one fades', () => {
		const { tone, context } = readyTone();
		tone.sound(true);
		tone.sound(false);
		tone.sound(true);
		expect(context.oscillators.map((o) => o.stopsAt === null)).toEqual([false, true]);
	});

	test('follows the volume while it sounds, and stays within 0 and the loudest', () => {
		const { tone, context } = readyTone();
		tone.setVolume(1);
		tone.sound(true);
		for (const volume of [0, -3, 7, 0.1, NaN]) tone.setVolume(volume);
		const levels = context.gains[0]!.gain.fades.map((f) => Number(f.to.toFixed(6)));
		expect(levels).toEqual([LOUDEST, 0, 0, LOUDEST, LOUDEST / 100]);
	});

	test('is woken at each gesture while the browser keeps it asleep', () => {
		const { context } = readyTone();
		expect(context.resumes).toBe(1);
		gesture();
		expect(context.resumes).toBe(1);
		context.state = 'suspended';
		gesture();
		expect(context.resumes).toBe(2);
	});
});

describe('a tone that is switched off', () => {
	test('fades, closes its context, and listens no more', () => {
		const { tone, context } = readyTone();
		tone.sound(true);
		tone.setOn(false);
		expect(context.gains[0]!.gain.fades.at(-1)!.to).toBe(0);
		expect(context.closed).toBe(false);
		context.pass(0.1);
		vi.runAllTimers();
		expect(context.closed).toBe(true);
		gesture();
		expect(contexts).toHaveLength(1);
	});

	test('sounds again when it is switched on again', () => {
		const { tone } = readyTone();
		tone.sound(true);
		tone.setOn(false);
		tone.setOn(true);
		gesture('click');
		vi.runAllTimers();
		expect(contexts.map((c) => c.closed)).toEqual([true, false]);
		expect(contexts[1]!.oscillators).toHaveLength(1);
	});
});

describe('where there is no sound', () => {
	test('a context that never wakes delays nothing, and its nodes are let go at once', () => {
		canSound = false;
		const { tone, context } = readyTone();
		tone.sound(true);
		tone.sound(false);
		expect(context.oscillators[0]!.connected).toEqual([]);
		expect(context.gains[0]!.connected).toEqual([]);
		expect(context.oscillators[0]!.stopsAt).not.toBeNull();
	});

	test('a browser that refuses a context, a node or a promise is no exception', async () => {
		const no = (): never => {
			throw new DOMException('no device', 'NotSupportedError');
		};
		const refusals: (() => AudioContext)[] = [
			no,
			() => Object.assign(make(), { createOscillator: no }),
			() => Object.assign(make(), { resume: () => Promise.reject(new Error('no')) }),
			() => Object.assign(make(), { resume: no, close: no }),
			() => Object.assign(make(), { close: () => Promise.reject(new Error('no')) })
		];
		for (const refuse of refusals) {
			const tone = new Tone(refuse);
			tone.setOn(true);
			gesture();
			tone.sound(true);
			tone.setVolume(0.3);
			tone.sound(false);
			tone.setOn(false);
			await vi.runAllTimersAsync();
		}
	});

	test('without a window nothing is made and nothing fails', () => {
		vi.unstubAllGlobals();
		const tone = new Tone();
		tone.setOn(true);
		tone.sound(true);
		tone.setVolume(1);
		tone.setOn(false);
	});
});
