/** Pages whose cautions a person has read in full, so that they may stand there in short on the next visit. */
import { browserStore, readText, removeText, writeText, type TextStore } from './store';

const keyOf = (page: string): string => `solderside-cautions-read-1-${page}`;

/** Whether the cautions of that page were said to be read; false where nothing is kept. Never throws. */
export const cautionsRead = (page: string, store: TextStore | null = browserStore()): boolean =>
	readText(store, keyOf(page)) === 'read';

/** Keeps that they were read, or that they are to stand in full again; false where that is not possible. */
export const keepCautionsRead = (
	page: string,
	read: boolean,
	store: TextStore | null = browserStore()
): boolean => (read ? writeText(store, keyOf(page), 'read') : removeText(store, keyOf(page)));
