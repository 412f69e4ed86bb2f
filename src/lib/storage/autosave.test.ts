import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { EMPTY_BENCH, type Bench } from '../engine/bench';
import { benches } from './benches.testing';
import {
	BENCH_KEY,
	DEFAULT_SETTINGS,
	SETTINGS_KEY,
	THEMES,
	VIEWS,
	browserStore,
	brokenBenches,
	forgetBench,
	loadBench,
	loadSettings,
	memoryStore,
	saveBench,
	saveSettings,
	type TextStore
} from './autosave';

const title = (text: string): Bench => ({ ...EMPTY_BENCH, title: text });

/** A store in which everything throws, as in a sandboxed frame. */
const shut = (): TextStore => {
	const no = (): never => {
		throw new DOMException('The operation is insecure.', 'SecurityError');
	};
	return {
		get length() {
			return no();
		},
		key: no,
		getItem: no,
		setItem: no,
		removeItem: no
	};
};

/** A store with room for so many characters, keys included. */
function small(room: number): TextStore {
	const inner = memoryStore();
	const used = () =>
		Array.from({ length: inner.length }, (_, i) => inner.key(i)!)
			.map((key) => key.length + inner.getItem(key)!.length)
			.reduce((sum, n) => sum + n, 0);
	return {
		get length() {
			return inner.length;
		},
		key: inner.key,
		getItem: inner.getItem,
		removeItem: inner.removeItem,
		setItem(key, text) {
			const before = inner.getItem(key);
			const freed = before === null ? 0 : key.length + before.length;
			if (used() - freed + key.length + text.length > room)
				throw new DOMException('no room', 'QuotaExceededError');
			inner.setItem(key, text);
		}
	};
}

describe('the present bench in the browser’s store', () => {
	test('is there again after a reload, whatever it is', () => {
		fc.assert(
			fc.property(benches, (bench) => {
				const store = memoryStore();
				expect(saveBench(bench, store)).toBe(true);
				expect(loadBench(store)).toEqual({ ok: true, value: bench });
			}),
			{ numRuns: 300 }
		);
	});

	test('is the last one saved', () => {
		const store = memoryStore();
		expect(loadBench(store)).toBeNull();
		saveBench(title('one'), store);
		saveBench(title('two'), store);
		expect(loadBench(store)).toEqual({ ok: true, value: title('two') });
		expect(forgetBench(store)).toBe(true);
		expect(loadBench(store)).toBeNull();
	});

	test('is not stored, and nothing is thrown, where there is no room, no access or no store', () => {
		const narrow = small(200);
		saveBench(title('one'), narrow);
		expect(saveBench(title('x'.repeat(300)), narrow)).toBe(false);
		expect(loadBench(narrow)).toEqual({ ok: true, value: title('one') });
		for (const store of [shut(), null]) {
			expect(saveBench(title('one'), store)).toBe(false);
			expect(loadBench(store)).toBeNull();
			expect(forgetBench(store)).toBe(false);
			expect(brokenBenches(store)).toEqual([]);
		}
	});
});

describe('a stored bench that cannot be read', () => {
	afterEach(() => void vi.useRealTimers());
	const BROKEN = '{"format":"solderside-bench","version":2}';

	test('is put aside with the date, and its problem is told', () => {
		vi.useFakeTimers({ now: new Date('2031-02-03T04:05:06Z') });
		const store = memoryStore();
		store.setItem(BENCH_KEY, BROKEN);
		expect(loadBench(store)).toMatchObject({ ok: false, problem: { path: '$.version' } });
		expect(brokenBenches(store)).toEqual([
			{
				key: `${BENCH_KEY}-broken-2031-02-03T04:05:06.000Z`,
				date: '2031-02-03T04:05:06.000Z',
				text: BROKEN
			}
		]);
		expect(loadBench(store)).toBeNull();
	});

	test('survives what is saved afterwards, and a second one', () => {
		vi.useFakeTimers({ now: new Date('2031-02-03T04:05:06Z') });
		const store = memoryStore();
		store.setItem(BENCH_KEY, BROKEN);
		loadBench(store);
		saveBench(title('new'), store);
		vi.setSystemTime(new Date('2031-02-04T00:00:00Z'));
		store.setItem(BENCH_KEY, 'scribble');
		loadBench(store);
		saveBench(title('newer'), store);
		expect(brokenBenches(store).map((b) => b.text)).toEqual([BROKEN, 'scribble']);
		expect(loadBench(store)).toEqual({ ok: true, value: title('newer') });
	});

	test('is kept once, however often the same text turns up', () => {
		const store = memoryStore();
		for (let day = 1; day <= 3; day++) {
			vi.useFakeTimers({ now: new Date(Date.UTC(2031, 0, day)) });
			store.setItem(BENCH_KEY, BROKEN);
			loadBench(store);
		}
		expect(brokenBenches(store)).toHaveLength(1);
	});

	test('is moved where there is no room for two copies, and left where there is not even that', () => {
		const text = 'x'.repeat(300);
		const narrow = small(400);
		narrow.setItem(BENCH_KEY, text);
		expect(loadBench(narrow)).toMatchObject({ ok: false });
		expect(brokenBenches(narrow).map((b) => b.text)).toEqual([text]);
		const full = small(BENCH_KEY.length + text.length);
		full.setItem(BENCH_KEY, text);
		expect(loadBench(full)).toMatchObject({ ok: false });
		expect(full.getItem(BENCH_KEY)).toBe(text);
	});
});

describe('the settings', () => {
	test('are quiet and as the machine is set, at first', () => {
		expect(DEFAULT_SETTINGS).toEqual({
			theme: 'auto',
			sound: false,
			volume: 0.5,
			meterMode: 'continuity',
			view: 'rear'
		});
		for (const store of [memoryStore(), shut(), null])
			expect(loadSettings(store)).toEqual(DEFAULT_SETTINGS);
	});

	test('come back as they were saved', () => {
		const change = fc.record(
			{
				theme: fc.constantFrom(...THEMES),
				sound: fc.boolean(),
				volume: fc.integer({ min: 0, max: 100 }).map((n) => n / 100),
				meterMode: fc.constantFrom('continuity' as const, 'ohms' as const, 'volts' as const),
				view: fc.constantFrom(...VIEWS)
			},
			{ requiredKeys: [] }
		);
		fc.assert(
			fc.property(fc.array(change, { maxLength: 4 }), (changes) => {
				const store = memoryStore();
				for (const c of changes) expect(saveSettings(c, store)).toBe(true);
				expect(loadSettings(store)).toEqual(Object.assign({ ...DEFAULT_SETTINGS }, ...changes));
			})
		);
	});

	test('a change in one tab leaves alone what another tab has changed', () => {
		const store = memoryStore();
		loadSettings(store);
		saveSettings({ theme: 'dark' }, store);
		saveSettings({ sound: true }, store);
		expect(loadSettings(store)).toEqual({ ...DEFAULT_SETTINGS, theme: 'dark', sound: true });
	});

	test('one strange entry costs no other', () => {
		const store = memoryStore();
		const stored = { theme: 'pink', sound: 'yes', volume: 7, meterMode: 'ohms', view: 3, extra: 1 };
		store.setItem(SETTINGS_KEY, JSON.stringify(stored));
		expect(loadSettings(store)).toEqual({ ...DEFAULT_SETTINGS, meterMode: 'ohms' });
	});

	test('are sound whatever text is stored', () => {
		const any = fc.oneof(
			fc.string(),
			fc.json(),
			fc.constantFrom('null', '[]', '3', '{"__proto__":1}')
		);
		fc.assert(
			fc.property(any, (text) => {
				const store = memoryStore();
				store.setItem(SETTINGS_KEY, text);
				const { theme, sound, volume, ...rest } = loadSettings(store);
				expect(THEMES).toContain(theme);
				expect(typeof sound).toBe('boolean');
				expect(volume >= 0 && volume <= 1).toBe(true);
				expect(Object.keys(rest).sort()).toEqual(['meterMode', 'view']);
			}),
			{ numRuns: 1000 }
		);
	});

	test('are not stored, and nothing is thrown, where the store refuses', () => {
		for (const store of [shut(), null, small(10)])
			expect(saveSettings({ theme: 'dark' }, store)).toBe(false);
	});
});

describe('the browser’s own store', () => {
	afterEach(() => void vi.unstubAllGlobals());

	test('is none outside a browser', () => {
		expect(browserStore()).toBeNull();
	});
	test('is none where even its name throws', () => {
		vi.stubGlobal('window', {
			get localStorage() {
				throw new DOMException('sandboxed', 'SecurityError');
			}
		});
		expect(browserStore()).toBeNull();
		expect(loadBench()).toBeNull();
		expect(saveBench(EMPTY_BENCH)).toBe(false);
		expect(loadSettings()).toEqual(DEFAULT_SETTINGS);
	});
	test('is the one that is used', () => {
		const localStorage = memoryStore();
		vi.stubGlobal('window', { localStorage });
		expect(saveBench(title('here'))).toBe(true);
		expect(localStorage.getItem(BENCH_KEY)).toContain('here');
		expect(loadBench()).toEqual({ ok: true, value: title('here') });
	});
});
