/**
 * Where tries are kept: the browser's database, or, where it gives none (a sandboxed frame, a
 * private window, another tab in the way), memory that lasts as long as the page and says so.
 * Whatever is written is written whole or not at all.
 */
import { checkAttempt, inOrder, merged, withoutDoubles, type Attempt } from './progress';
import { DB_NAME, openProgressDb, type ProgressDb } from './progressDb';

/** Why nothing outlasts the page: no database, another tab in the way, or a database of a later release. */
export type Reason = 'none' | 'blocked' | 'later';

export interface Stored {
	/** Oldest first. */
	readonly attempts: readonly Attempt[];
	/** Entries that are kept and cannot be read. */
	readonly unread: number;
}

export interface ProgressStore {
	/** Why it does not outlast the page; null if it does. */
	readonly memoryOnly: Reason | null;
	read(): Promise<Stored>;
	/** Puts in the tries that are not there yet. Rejects, and changes nothing, if one cannot be put in. */
	add(attempts: readonly Attempt[]): Promise<void>;
	/** Puts the tries in place of all that is there. Rejects, and changes nothing, if one cannot be put in. */
	replace(attempts: readonly Attempt[]): Promise<void>;
}

/** A store that lasts as long as the page. */
export function memoryProgress(memoryOnly: Reason = 'none'): ProgressStore {
	let all: readonly Attempt[] = [];
	return {
		memoryOnly,
		read: async () => ({ attempts: all, unread: 0 }),
		add: async (attempts) => void (all = merged(all, attempts)),
		replace: async (attempts) => void (all = withoutDoubles(attempts))
	};
}

async function readAll(db: ProgressDb): Promise<Stored> {
	const values = await db.getAll('tries');
	const checked = values.map(checkAttempt);
	const attempts = inOrder(checked.flatMap((one) => (one.ok ? [one.value] : [])));
	const aside = await db.count('aside');
	return { attempts, unread: values.length - attempts.length + aside };
}

/** Writes in one transaction. An error in the middle undoes what went before it. */
async function write(db: ProgressDb, attempts: readonly Attempt[], afresh: boolean): Promise<void> {
	const change = db.transaction(['tries', 'aside'], 'readwrite');
	const { done } = change;
	// Awaited at the end; until then a rejection must not count as unhandled.
	done.catch(() => {});
	try {
		const tries = change.objectStore('tries');
		if (afresh) {
			await tries.clear();
			await change.objectStore('aside').clear();
		}
		for (const one of withoutDoubles(attempts))
			if ((await tries.count([one.exercise, one.at])) === 0)
				await tries.add({ ...one, beliefs: [...one.beliefs] });
	} catch (error) {
		try {
			change.abort();
		} catch {
			// It ended by itself.
		}
		await done.catch(() => {});
		throw error;
	}
	await done;
}

/** A store in the database. A connection that was lost is made again, once a call. */
function databaseProgress(name: string, opened: ProgressDb): ProgressStore {
	let open: ProgressDb | null = opened;
	const connect = async (): Promise<ProgressDb> => {
		open ??= await openProgressDb(name, { onlost: () => (open = null) });
		return open;
	};
	async function using<T>(run: (db: ProgressDb) => Promise<T>): Promise<T> {
		try {
			return await run(await connect());
		} catch (error) {
			if ((error as Error)?.name !== 'InvalidStateError') throw error;
			open = null;
			return run(await connect());
		}
	}
	return {
		memoryOnly: null,
		read: () => using(readAll),
		add: (attempts) => using((db) => write(db, attempts, false)),
		replace: (attempts) => using((db) => write(db, attempts, true))
	};
}

/** Longest that a browser may take to open its database, ms: some frames never answer. */
const PATIENCE = 4000;

/** The store of this browser. Never rejects: where nothing can be kept, memory does. */
export async function openProgressStore(
	name = DB_NAME,
	patience = PATIENCE
): Promise<ProgressStore> {
	return new Promise((resolve) => {
		let settled = false;
		const settle = (store: ProgressStore) => {
			settled = true;
			clearTimeout(timer);
			resolve(store);
		};
		const timer = setTimeout(() => settle(memoryProgress('none')), patience);
		openProgressDb(name, { onblocked: () => settle(memoryProgress('blocked')) }).then(
			(db) => (settled ? db.close() : settle(databaseProgress(name, db))),
			(error: unknown) => {
				const isLater = (error as Error)?.name === 'VersionError';
				settle(memoryProgress(isLater ? 'later' : 'none'));
			}
		);
	});
}
