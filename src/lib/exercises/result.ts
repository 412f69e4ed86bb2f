/** What the judge of one kind hands in; `judge.ts` makes a full result of it. */
import type { Judged } from './judged';

export interface Result extends Partial<Omit<Judged, 'id' | 'kind' | 'beliefs'>> {
	readonly score: number;
	readonly passed: boolean;
}

/** An answer that cannot be judged, and why. */
export const refuse = (why: string): Result => ({ score: 0, passed: false, refused: why });
