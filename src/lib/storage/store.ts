/**
 * The few calls of `localStorage` that Solderside needs, so that tests can pass another store. In a
 * sandboxed frame, or with site data blocked, even naming `localStorage` throws; there is no store then.
 */
export interface TextStore {
	readonly length: number;
	key(index: number): string | null;
	getItem(key: string): string | null;
	/** Throws where there is no room. */
	setItem(key: string, text: string): void;
	removeItem(key: string): void;
}

/** The browser's store, or null where there is none. Never throws. */
export function browserStore(): TextStore | null {
	if (typeof window === 'undefined') return null;
	try {
		return window.localStorage;
	} catch {
		return null;
	}
}

/** A store that lasts as long as the page: for tests. */
export function memoryStore(): TextStore {
	const texts = new Map<string, string>();
	return {
		get length() {
			return texts.size;
		},
		key: (index) => [...texts.keys()][index] ?? null,
		getItem: (key) => texts.get(key) ?? null,
		setItem: (key, text) => void texts.set(key, text),
		removeItem: (key) => void texts.delete(key)
	};
}

/** What `run` gives, or `otherwise` where the store refuses. */
export function guarded<T>(run: () => T, otherwise: T): T {
	try {
		return run();
	} catch {
		return otherwise;
	}
}

/** The stored text, or null. Never throws. */
export const readText = (store: TextStore | null, key: string): string | null =>
	guarded(() => store?.getItem(key) ?? null, null);

/** Stores the text; false where that is not possible. Never throws. */
export const writeText = (store: TextStore | null, key: string, text: string): boolean =>
	store !== null &&
	guarded(() => {
		store.setItem(key, text);
		return true;
	}, false);

/** Removes the text; false where that is not possible. Never throws. */
export const removeText = (store: TextStore | null, key: string): boolean =>
	store !== null &&
	guarded(() => {
		store.removeItem(key);
		return true;
	}, false);

/** Every key that begins with `start`. Never throws. */
export function keysOf(store: TextStore | null, start: string): string[] {
	if (!store) return [];
	return guarded(
		() =>
			Array.from({ length: store.length }, (_, i) => store.key(i)).filter(
				(key): key is string => key?.startsWith(start) ?? false
			),
		[]
	);
}
