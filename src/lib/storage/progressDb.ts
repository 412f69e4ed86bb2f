/**
 * The database that keeps a learner's tries: what stands in it, version by version. A version is
 * reached from the one before by its own step, so that any older database finds its way up.
 */
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';

export const DB_NAME = 'solderside-progress';
export const DB_VERSION = 1;

/** A try as version 1 keeps it, under a running number. */
export interface FirstAttempt {
	readonly exercise: string;
	readonly kind: string;
	/** Milliseconds since 1970. */
	readonly time: number;
	readonly score: number;
	readonly passed: boolean;
	readonly hints: number;
	readonly probes: number | null;
}
interface Schema extends DBSchema {
	attempts: { key: number; value: FirstAttempt };
}
export type ProgressDb = IDBPDatabase<Schema>;

/** Opens the database, made or brought up to date. Rejects where the browser has none to give. */
export async function openProgressDb(name = DB_NAME): Promise<ProgressDb> {
	return openDB<Schema>(name, DB_VERSION, {
		upgrade(db) {
			db.createObjectStore('attempts', { autoIncrement: true });
		}
	});
}
