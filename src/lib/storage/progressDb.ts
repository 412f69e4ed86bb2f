/**
 * The database that keeps a learner's tries: what stands in it, version by version. A version is
 * reached from the one before by its own step, so that any older database finds its way up. A step
 * that fails is undone as a whole, and the database stays as it was.
 *
 * 1: tries under a running number, the instant in milliseconds.
 * 2: tries under their own name (exercise and instant), so that files merge without doubles; with
 *    doubts and beliefs. What version 1 held and no gate lets through is put aside, not thrown away.
 */
import {
	openDB,
	type DBSchema,
	type IDBPDatabase,
	type IDBPTransaction,
	type StoreNames
} from 'idb';
import { checkFirst, fromFirst, withoutDoubles, type Attempt, type FirstAttempt } from './progress';

export const DB_NAME = 'solderside-progress';
export const DB_VERSION = 2;

/** Before version 2. */
interface FirstSchema extends DBSchema {
	attempts: { key: number; value: FirstAttempt };
}
interface Schema extends DBSchema {
	tries: { key: [exercise: string, at: string]; value: Attempt };
	aside: { key: number; value: unknown };
}
export type ProgressDb = IDBPDatabase<Schema>;
type Upgrade<S extends DBSchema> = IDBPTransaction<S, StoreNames<S>[], 'versionchange'>;

async function toSecond(db: ProgressDb, upgrade: Upgrade<Schema>): Promise<void> {
	const old = upgrade as unknown as Upgrade<FirstSchema>;
	const values: unknown[] = await old.objectStore('attempts').getAll();
	const tries = db.createObjectStore('tries', { keyPath: ['exercise', 'at'] });
	const aside = db.createObjectStore('aside', { autoIncrement: true });
	const checked = values.map((value) => ({ value, first: checkFirst(value) }));
	const good = checked.flatMap(({ first }) => (first.ok ? [fromFirst(first.value)] : []));
	for (const one of withoutDoubles(good)) await tries.add(one);
	for (const { value, first } of checked) if (!first.ok) await aside.add(value);
	(db as unknown as IDBPDatabase<FirstSchema>).deleteObjectStore('attempts');
}

async function raise(db: ProgressDb, from: number, upgrade: Upgrade<Schema>): Promise<void> {
	if (from < 1)
		(db as unknown as IDBPDatabase<FirstSchema>).createObjectStore('attempts', {
			autoIncrement: true
		});
	if (from < 2) await toSecond(db, upgrade);
}

/** What may happen to a connection while it is open. */
export interface Watch {
	/** Another tab holds an older version open, and this one must wait. */
	readonly onblocked?: () => void;
	/** The connection is closed: a newer release needs the database, or the browser took it. */
	readonly onlost?: () => void;
}

/** Opens the database, made or brought up to date. Rejects where the browser has none to give. */
export async function openProgressDb(name = DB_NAME, watch: Watch = {}): Promise<ProgressDb> {
	return openDB<Schema>(name, DB_VERSION, {
		upgrade(db, from, _to, upgrade) {
			// The library does not wait for a step: what goes wrong in it must end the upgrade here.
			raise(db, from, upgrade).catch(() => upgrade.abort());
			upgrade.done.catch(() => {});
		},
		blocked: () => watch.onblocked?.(),
		blocking(_from, _to, { target }) {
			(target as IDBDatabase).close();
			watch.onlost?.();
		},
		terminated: () => watch.onlost?.()
	});
}
