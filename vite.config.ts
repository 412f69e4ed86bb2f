// The test runner's types alone: the site is built where the runner is not installed.
/// <reference types="vitest/config" />
import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig, type Plugin } from 'vite';

/**
 * Workers are built apart and stand in no manifest, so the service worker would not know their files
 * and they would be missing without a network. This writes them into the client's manifest.
 */
const workersInManifest: Plugin = {
	name: 'solderside-workers-in-manifest',
	enforce: 'post',
	generateBundle: {
		order: 'post',
		handler(_, bundle) {
			const manifest = bundle['.vite/manifest.json'];
			if (manifest?.type !== 'asset') return;
			const listed = JSON.parse(String(manifest.source));
			for (const file of Object.keys(bundle))
				if (/\/workers\/[^/]+\.js$/.test(file)) listed[file] ??= { file };
			manifest.source = JSON.stringify(listed);
		}
	}
};

export default defineConfig({
	plugins: [sveltekit(), workersInManifest],
	build: { assetsInlineLimit: 0 },
	test: {
		include: [
			'src/**/*.test.ts',
			'tests/*.test.ts',
			'tests/outside/**/*.test.ts',
			'tests/figures/**/*.test.ts'
		],
		environment: 'node',
		// The runner would leave one processor idle: on a machine with two, that is half of it.
		maxWorkers: '100%',
		testTimeout: 120_000
	}
});
