/// <reference no-default-lib="true" />
/// <reference lib="esnext" />
/// <reference lib="webworker" />
/// <reference types="@sveltejs/kit" />
/**
 * The site without a network, after one visit. Each release keeps all its files in a cache of its
 * own and answers from there first, so that a page and its modules always belong to one release.
 *
 * A new release waits until no page of the old one is open: then nothing that is still in use can
 * be taken away. So that one open page need not be closed by hand, the only page there is, when it
 * is loaded anew, lets the waiting release take over and loads again from that.
 */
import { build, files, prerendered, version } from '$service-worker';

const worker = self as unknown as ServiceWorkerGlobalScope;

const PREFIX = 'solderside-';
const CACHE = PREFIX + version;
const TAKE_OVER = 'take over';
/**
 * Asks the waiting release to take over, and loads again once that is done and not before: the old
 * worker is about to be stopped, and a page that it is asked for meanwhile may never come. A
 * script, since a refresh by header goes nowhere when the address carries a #fragment.
 */
const LOAD_AGAIN = `<!doctype html><title>Solderside</title><link rel="icon" href="data:,"><script>
navigator.serviceWorker.getRegistration().then((registration) => {
	const waiting = registration?.waiting;
	if (waiting?.state !== 'installed') return location.reload();
	waiting.onstatechange = () => waiting.state === 'activating' || location.reload();
	waiting.postMessage('${TAKE_OVER}');
	setTimeout(() => location.reload(), 10000);
});
</script>`;

/** Files for those who run the server are not for the learner's machine. */
const isWanted = (path: string) => !path.endsWith('.example.txt');
const PATHS = new Set([...build, ...files.filter(isWanted), ...prerendered]);

/** A server may choose by headers (`Vary`), but every file here is the same for everybody. */
const ANY_REQUEST = { ignoreSearch: true, ignoreVary: true };

async function keepAll(): Promise<void> {
	const cache = await caches.open(CACHE);
	// Past the browser's own cache: an old page under a new release's name would never be renewed.
	await cache.addAll([...PATHS].map((path) => new Request(path, { cache: 'reload' })));
}

async function dropOldReleases(): Promise<void> {
	const names = await caches.keys();
	const old = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
	await Promise.all(old.map((name) => caches.delete(name)));
}

/** The path under which a page is kept: with or without its slash, or by its file name. */
function pageOf(pathname: string): string | undefined {
	const bare = pathname.replace(/(?:\/index)?\.html$/, '').replace(/\/+$/, '');
	return [pathname, `${bare}/`, bare].find((path) => PATHS.has(path));
}

async function keptOrFetched(request: Request, path: string): Promise<Response> {
	const cache = await caches.open(CACHE);
	return (await cache.match(path, ANY_REQUEST)) ?? fetch(request);
}

/** Whether no page is open but, at most, the one that is being loaded anew. */
async function isOnlyPage(request: Request): Promise<boolean> {
	const pages = await worker.clients.matchAll({ type: 'window' });
	// A second tab sees one open page too, but it is not a reload.
	return pages.length === 0 || (pages.length === 1 && request.cache === 'no-cache');
}

async function page(request: Request, path: string): Promise<Response> {
	if (worker.registration.waiting && (await isOnlyPage(request)))
		return new Response(LOAD_AGAIN, { headers: { 'Content-Type': 'text/html' } });
	return keptOrFetched(request, path);
}

worker.addEventListener('install', (event) => event.waitUntil(keepAll()));

// The first visit is claimed, so that it works offline without being loaded again.
worker.addEventListener('activate', (event) =>
	event.waitUntil(dropOldReleases().then(() => worker.clients.claim()))
);

worker.addEventListener('message', (event) => {
	if (event.data === TAKE_OVER) event.waitUntil(worker.skipWaiting());
});

worker.addEventListener('fetch', (event) => {
	const { request } = event;
	const url = new URL(request.url);
	if (request.method !== 'GET' || url.origin !== worker.location.origin) return;
	if (request.mode === 'navigate') {
		const path = pageOf(url.pathname);
		if (path !== undefined) event.respondWith(page(request, path));
		return;
	}
	if (PATHS.has(url.pathname)) event.respondWith(keptOrFetched(request, url.pathname));
});
