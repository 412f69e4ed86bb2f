/**
 * `npm start`: builds the site if it is missing or older than its sources, serves it on this
 * machine, and prints the address on a line of its own. PORT chooses the port and then only that
 * one will do; otherwise it is 4173 or the next free one. Ends on Ctrl+C.
 */
import { BUILD, ROOT, build, isBuilt } from './build.mjs';
import { serve } from './serve.mjs';

const PORT = 4173;
const NEXT_PORTS = 50;

/** @param {string} sentence @returns {never} */
function stop(sentence) {
	console.error(sentence);
	process.exit(1);
}

/** @returns {{ port: number, more: number }} */
function wantedPort() {
	const wanted = process.env.PORT;
	if (!wanted) return { port: PORT, more: NEXT_PORTS };
	const port = Number(wanted);
	if (!/^\d+$/.test(wanted) || port > 65535)
		stop(`PORT is "${wanted}". It must be a number from 0 to 65535.`);
	return { port, more: 0 };
}

const where = wantedPort();
if (!isBuilt(ROOT)) {
	console.log('Building the site.');
	if (!build()) stop('The build failed; the messages above say why.');
}

const site = await serve(BUILD, where).catch((error) => {
	if (error.code === 'EADDRINUSE')
		stop(`Port ${where.port} is in use. Set PORT to another number, or leave it out.`);
	return stop(`The site cannot be served: ${error.message}`);
});

function end() {
	site.close();
	process.exit(0);
}
process.on('SIGINT', end);
process.on('SIGTERM', end);
// Between npm and this script stands a shell that does not pass a signal on when it is ended.
const parent = process.ppid;
if (process.env.npm_lifecycle_event)
	setInterval(() => process.ppid !== parent && end(), 300).unref();

console.log('Serving the built site. Ctrl+C ends it. Open this address in a browser:');
console.log(site.url);
