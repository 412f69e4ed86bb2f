/**
 * Entry of the headless program. The status is set, never forced, so that Node writes out all that
 * is still under way; whatever goes wrong in here is one line, never a stack trace.
 */
import { nodeIo } from './io';
import { oneLine, run } from './run';

const io = nodeIo();
try {
	process.exitCode = await run(process.argv.slice(2), io);
} catch (error) {
	const message = error instanceof Error ? error.message : String(error);
	await io.err(`solderside: ${oneLine(message)}\n`);
	process.exitCode = 1;
}
