/**
 * Undo as two lists of old values. Values are immutable and replaced whole, so the state is raw and a
 * step costs one reference. A drag commits many values under one group name and is one step.
 */

/** Most steps kept; the oldest fall off. */
export const MOST_STEPS = 200;

export class History<T> {
	#present = $state.raw() as T;
	#past = $state.raw<readonly T[]>([]);
	#future = $state.raw<readonly T[]>([]);
	/** Group of the last commit, while the next one may still join it. */
	#group: string | undefined;
	readonly #onchange: (present: T) => void;

	/** `onchange` is told of every value that becomes present, the first one too. */
	constructor(first: T, onchange: (present: T) => void = () => {}) {
		this.#onchange = onchange;
		this.#set(first);
	}

	#set(next: T): void {
		this.#present = next;
		this.#onchange(next);
	}

	get present(): T {
		return this.#present;
	}
	get canUndo(): boolean {
		return this.#past.length > 0;
	}
	get canRedo(): boolean {
		return this.#future.length > 0;
	}

	/** Makes `next` present. A step of its own, unless the commit before had the same group. */
	commit(next: T, group?: string): void {
		const joins = group !== undefined && group === this.#group;
		const isSame = next === this.#present;
		// A group begins with a change: what changes nothing leaves no step that a later commit could join.
		if (!joins) this.#group = isSame ? undefined : group;
		if (isSame) return;
		if (!joins) this.#past = [...this.#past, this.#present].slice(-MOST_STEPS);
		this.#forget();
		this.#set(next);
	}

	/** The next commit is a step of its own, whatever its group: the drag is over. */
	endGroup(): void {
		this.#group = undefined;
	}

	/** An empty list stays the same list: what asks for it rests while a group goes on. */
	#forget(): void {
		if (this.#future.length > 0) this.#future = [];
	}

	/** Makes `next` present without a step: undo goes to what was before the value it replaces. */
	replace(next: T): void {
		if (next === this.#present) return;
		this.#forget();
		this.#set(next);
	}

	/** One step back; nothing if there is none. */
	undo(): void {
		this.#group = undefined;
		if (this.#past.length === 0) return;
		this.#future = [this.#present, ...this.#future];
		const back = this.#past.at(-1) as T;
		this.#past = this.#past.slice(0, -1);
		this.#set(back);
	}

	/** One step forward again; nothing if there is none. */
	redo(): void {
		this.#group = undefined;
		if (this.#future.length === 0) return;
		this.#past = [...this.#past, this.#present];
		const next = this.#future[0] as T;
		this.#future = this.#future.slice(1);
		this.#set(next);
	}
}
