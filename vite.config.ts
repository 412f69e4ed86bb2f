// The test runner's types alone: the site is built where the runner is not installed.
/// <reference types="vitest/config" />
import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vite';

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
