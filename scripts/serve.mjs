/**
 * Serves build/ on this machine alone, the way a plain static host would: a folder's address ends
 * in a slash, an unknown address is a real 404, and the headers are those of the sample in
 * static/server-headers.example.txt.
 */
import { createServer } from 'node:http';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import sirv from 'sirv';

const HEADERS = {
	'Content-Security-Policy': "frame-ancestors 'self'",
	'X-Content-Type-Options': 'nosniff',
	'Referrer-Policy': 'no-referrer',
	'Permissions-Policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
	'Cross-Origin-Opener-Policy': 'same-origin'
};

const FOREVER = 'public, max-age=31536000, immutable';
/** Both loopback addresses: a browser that is told "localhost" may try either first. */
const HOSTS = ['127.0.0.1', '::1'];

/** @typedef {import('node:http').Server} Server */

/**
 * @param {string} folder
 * @param {string} url
 * @returns {string | null} where a folder's address without its slash leads
 */
function withSlash(folder, url) {
	const [path = '', query] = url.split('?');
	if (path.endsWith('/') || path.startsWith('//')) return null;
	if (!existsSync(join(folder, path, 'index.html'))) return null;
	return query === undefined ? `${path}/` : `${path}/?${query}`;
}

/**
 * The request handler for a built site.
 * @param {string} folder
 * @returns {import('node:http').RequestListener}
 */
export function handler(folder) {
	const files = sirv(folder, {
		dev: true,
		etag: true,
		setHeaders: (response, path) => {
			if (path.includes('/_app/immutable/')) response.setHeader('Cache-Control', FOREVER);
		}
	});
	return (request, response) => {
		for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
		if (request.method !== 'GET' && request.method !== 'HEAD')
			return void response.writeHead(405, { Allow: 'GET, HEAD' }).end();
		const moved = withSlash(folder, request.url ?? '/');
		if (moved) return void response.writeHead(308, { Location: moved }).end();
		files(request, response, () => {
			response.writeHead(404, { 'Content-Type': 'text/plain;charset=utf-8' }).end('Not found\n');
		});
	};
}

/**
 * @param {import('node:http').RequestListener} listener
 * @param {string} host
 * @param {number} port
 * @returns {Promise<Server>}
 */
function listen(listener, host, port) {
	return new Promise((resolve, reject) => {
		const server = createServer(listener);
		server.once('error', reject);
		server.listen({ host, port }, () => resolve(server));
	});
}

/** @param {unknown} error */
const codeOf = (error) => /** @type {NodeJS.ErrnoException} */ (error).code;

/**
 * Takes a port on every loopback address this machine has. Rejects with EADDRINUSE if somebody
 * else has it on one of them.
 * @param {import('node:http').RequestListener} listener
 * @param {number} port
 * @returns {Promise<Server[]>}
 */
async function listenOnAll(listener, port) {
	/** @type {Server[]} */
	const servers = [];
	for (const host of HOSTS) {
		try {
			const server = await listen(listener, host, port);
			port = /** @type {import('node:net').AddressInfo} */ (server.address()).port;
			servers.push(server);
		} catch (error) {
			if (codeOf(error) === 'EADDRNOTAVAIL' || codeOf(error) === 'EAFNOSUPPORT') continue;
			for (const server of servers) server.close();
			throw error;
		}
	}
	if (servers.length === 0) throw new Error('This machine has no loopback address.');
	return servers;
}

/**
 * Serves a folder at `port`, or at one of the next `more` ports if that one is taken.
 * Rejects if all of them are.
 * @param {string} folder
 * @param {{ port: number, more?: number }} where
 * @returns {Promise<{ url: string, close: () => void }>}
 */
export async function serve(folder, { port, more = 0 }) {
	try {
		const servers = await listenOnAll(handler(folder), port);
		const address = /** @type {import('node:net').AddressInfo} */ (servers[0]?.address());
		const close = () => {
			for (const server of servers) {
				server.close();
				server.closeAllConnections();
			}
		};
		return { url: `http://localhost:${address.port}/`, close };
	} catch (error) {
		if (codeOf(error) !== 'EADDRINUSE' || more === 0) throw error;
		return serve(folder, { port: port + 1, more: more - 1 });
	}
}

/**
 * The first port from `port` on that nobody on this machine has.
 * @param {number} port
 */
export async function freePort(port) {
	const { url, close } = await serve('.', { port, more: 200 });
	close();
	return Number(new URL(url).port);
}
