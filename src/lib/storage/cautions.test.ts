import { describe, expect, it } from 'vitest';
import { cautionsRead, keepCautionsRead } from './cautions';
import { memoryStore } from './store';

describe('cautions that were read', () => {
	it('stand in full until somebody says so, page by page, and again when asked for', () => {
		const store = memoryStore();
		expect(cautionsRead('real', store)).toBe(false);
		expect(keepCautionsRead('real', true, store)).toBe(true);
		expect(cautionsRead('real', store)).toBe(true);
		expect(cautionsRead('lugs', store)).toBe(false);
		keepCautionsRead('real', false, store);
		expect(cautionsRead('real', store)).toBe(false);
	});
	it('stand in full where nothing can be kept', () => {
		expect(cautionsRead('real', null)).toBe(false);
		expect(keepCautionsRead('real', true, null)).toBe(false);
	});
});
