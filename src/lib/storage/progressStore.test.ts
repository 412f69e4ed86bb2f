import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { DB_NAME, DB_VERSION, openProgressDb } from './progressDb';
import { memoryProgress, openProgressStore } from './progressStore';
import { tried } from './progress.testing';
import type { Attempt } from './progress';

const real = globalThis.indexedDB;
beforeEach(() => vi.stubGlobal('indexedDB', new IDBFactory()));
afterEach(() => vi.unstubAllGlobals());

const a = tried();
const b = tried({
	exercise: 'find-one',
	kind: 'find',
	probes: 7,
	beliefs: ['silent-means-broken']
});
const c = tried({ at: '2031-05-07T07:08:09.000Z', score: 0.25, passed: false });

/** A database of version 1 with these values in it, made without the code under test. */
async function firstDatabase(values: readonly unknown[]): Promise<void> {
	const db = await openDB(DB_NAME, 1, {
		upgrade: (db) => void db.createObjectStore('attempts', { autoIncrement: true })
	});
	for (const value of values) await db.add('attempts', value);
	db.close();
}
const first = {
	exercise: 'wire-one',
	kind: 'wire',
	score: 0.5,
	passed: false,
	hints: 2,
	probes: null
};

describe('a database of version 1', () => {
	it('is raised: every try keeps what it was, under a name of its own', async () => {
		const time = Date.UTC(2031, 4, 6, 7, 8, 9);
		await firstDatabase([
			{ ...first, time: time + 1 },
			{ ...first, time }
		]);
		const store = await openProgressStore();
		expect(await store.read()).toEqual({
			attempts: [
				tried({ score: 0.5, passed: false, hints: 2 }),
				tried({ score: 0.5, passed: false, hints: 2, at: '2031-05-06T07:08:09.001Z' })
			],
			unread: 0
		});
		const db = await openProgressDb();
		expect([db.version, [...db.objectStoreNames]]).toEqual([DB_VERSION, ['aside', 'tries']]);
		db.close();
	});
	it('puts aside what cannot be read, and says how many', async () => {
		const time = Date.UTC(2031, 4, 6, 7, 8, 9);
		await firstDatabase(['a note', { ...first, time }, { ...first, time: 'yesterday' }]);
		const store = await openProgressStore();
		const { attempts, unread } = await store.read();
		expect([attempts.length, unread]).toEqual([1, 2]);
		const db = await openProgressDb();
		expect(await db.getAll('aside')).toEqual(['a note', { ...first, time: 'yesterday' }]);
		db.close();
	});
	it('lets go of what was put aside when all is replaced, and not before', async () => {
		await firstDatabase(['a note']);
		const store = await openProgressStore();
		await store.add([a]);
		expect((await store.read()).unread).toBe(1);
		await store.replace([b]);
		expect(await store.read()).toEqual({ attempts: [b], unread: 0 });
	});
	it('stays as it is when the step fails half way', async () => {
		const time = Date.UTC(2031, 4, 6, 7, 8, 9);
		await firstDatabase([
			{ ...first, time },
			{ ...first, time: time + 1 }
		]);
		const add = vi.spyOn(IDBObjectStore.prototype, 'add');
		add.mockImplementationOnce(() => {
			throw new DOMException('no room', 'QuotaExceededError');
		});
		expect((await openProgressStore()).memoryOnly).toBe('none');
		add.mockRestore();
		const db = await openDB(DB_NAME);
		expect([db.version, [...db.objectStoreNames]]).toEqual([1, ['attempts']]);
		expect(await db.count('attempts')).toBe(2);
		db.close();
		expect((await (await openProgressStore()).read()).attempts).toHaveLength(2);
	});
});

describe('a store in the database', () => {
	it('is empty at first and outlasts the page', async () => {
		const store = await openProgressStore();
		expect(store.memoryOnly).toBeNull();
		expect(await store.read()).toEqual({ attempts: [], unread: 0 });
	});
	it('gives back what was added, oldest first, from another connection too', async () => {
		const store = await openProgressStore();
		await store.add([c, a]);
		await store.add([b]);
		expect((await store.read()).attempts).toEqual([b, a, c]);
		expect((await (await openProgressStore()).read()).attempts).toEqual([b, a, c]);
	});
	it('leaves a try that is there as it is', async () => {
		const store = await openProgressStore();
		await store.add([a]);
		await store.add([{ ...a, score: 0 }, b]);
		expect((await store.read()).attempts).toEqual([b, a]);
	});
	it('takes two tabs that write at once', async () => {
		const [one, two] = await Promise.all([openProgressStore(), openProgressStore()]);
		await Promise.all([one.add([a]), two.add([b]), one.add([c]), two.add([a])]);
		expect((await one.read()).attempts).toEqual([b, a, c]);
		expect(await two.read()).toEqual(await one.read());
	});
	it('replaces all by all, and forgets all', async () => {
		const store = await openProgressStore();
		await store.add([a, b]);
		await store.replace([c]);
		expect((await store.read()).attempts).toEqual([c]);
		await store.replace([]);
		expect((await store.read()).attempts).toEqual([]);
	});
	it.each(['add', 'replace'] as const)(
		'keeps everything when %s fails at its last try',
		async (change) => {
			const store = await openProgressStore();
			await store.add([a, b]);
			const cannotBeCloned = { ...c, note: () => {} } as Attempt;
			const more = [tried({ exercise: 'aaa' }), cannotBeCloned];
			await expect(store[change](more)).rejects.toThrow();
			expect((await store.read()).attempts).toEqual([b, a]);
			await store.add([c]);
			expect((await store.read()).attempts).toEqual([b, a, c]);
		}
	);
	it('keeps everything when there is no room', async () => {
		const store = await openProgressStore();
		await store.add([a, b]);
		const add = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
			throw new DOMException('no room', 'QuotaExceededError');
		});
		await expect(store.replace([c])).rejects.toThrow('no room');
		add.mockRestore();
		expect((await store.read()).attempts).toEqual([b, a]);
	});
	it('counts entries that it cannot read, and leaves them', async () => {
		const db = await openProgressDb();
		await db.add('tries', { exercise: 'x', at: 'once' } as Attempt);
		const store = await openProgressStore();
		await store.add([a]);
		expect(await store.read()).toEqual({ attempts: [a], unread: 1 });
		expect(await db.count('tries')).toBe(2);
		db.close();
	});
	it('makes its connection again when it was closed', async () => {
		const close = vi.spyOn(IDBDatabase.prototype, 'close');
		const store = await openProgressStore();
		await store.add([a]);
		const later = await openDB(DB_NAME, DB_VERSION + 1);
		expect(close).toHaveBeenCalled();
		later.close();
		await expect(store.add([b])).rejects.toMatchObject({ name: 'VersionError' });
		vi.restoreAllMocks();
	});
});

describe('without a database', () => {
	const memory = async (factory: unknown): Promise<unknown> => {
		vi.stubGlobal('indexedDB', factory);
		const store = await openProgressStore(DB_NAME, 50);
		await store.add([a]);
		await store.add([a, b]);
		expect((await store.read()).attempts).toEqual([b, a]);
		await store.replace([c]);
		expect((await store.read()).attempts).toEqual([c]);
		return store.memoryOnly;
	};
	it('memory keeps the tries where the browser knows none', async () => {
		expect(await memory(undefined)).toBe('none');
	});
	it('memory keeps the tries where opening throws, as in a sandboxed frame', async () => {
		const open = () => {
			throw new DOMException('denied', 'SecurityError');
		};
		expect(await memory({ open })).toBe('none');
	});
	it('memory keeps the tries where even the name throws', async () => {
		vi.stubGlobal('indexedDB', real);
		const named = Object.getOwnPropertyDescriptor(globalThis, 'indexedDB')!;
		Object.defineProperty(globalThis, 'indexedDB', {
			configurable: true,
			get: () => {
				throw new DOMException('denied', 'SecurityError');
			}
		});
		const store = await openProgressStore();
		Object.defineProperty(globalThis, 'indexedDB', named);
		expect(store.memoryOnly).toBe('none');
	});
	it('memory keeps the tries where the browser never answers', async () => {
		const deaf = { addEventListener: () => {}, removeEventListener: () => {} };
		const open = () => Object.assign(Object.create(IDBOpenDBRequest.prototype), deaf);
		const start = Date.now();
		expect(await memory({ open })).toBe('none');
		expect(Date.now() - start).toBeGreaterThanOrEqual(49);
	});
	it('memory keeps the tries where a later release has raised the database, which stays', async () => {
		const factory = new IDBFactory();
		vi.stubGlobal('indexedDB', factory);
		(await openDB(DB_NAME, DB_VERSION + 1)).close();
		expect(await memory(factory)).toBe('later');
		const db = await openDB(DB_NAME);
		expect(db.version).toBe(DB_VERSION + 1);
		db.close();
	});
	it('memory keeps the tries where another tab holds an older database and lets it not go', async () => {
		const factory = new IDBFactory();
		vi.stubGlobal('indexedDB', factory);
		const held = await openDB(DB_NAME, 1, {
			upgrade: (db) => void db.createObjectStore('attempts', { autoIncrement: true })
		});
		expect(await memory(factory)).toBe('blocked');
		held.close();
	});
	it('memory is empty again on the next page', async () => {
		await memoryProgress().add([a]);
		expect((await memoryProgress().read()).attempts).toEqual([]);
	});
});
