import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
	plugins: [sveltekit()],
	build: { assetsInlineLimit: 0 },
	test: {
		include: [
			'src/**/*.test.ts',
			'tests/*.test.ts',
			'tests/outside/**/*.test.ts',
			'tests/figures/**/*.test.ts'
		],
		environment: 'node',
		testTimeout: 120_000
	}
});
