/** Prints the course in numbers. `npm test` runs it last, above its own total. */
// With its ending: without one, tsx takes `.node` for a file's type.
import { readCourse } from '../lib/exercises/content.node.js';
import { countLines, countOf } from '../lib/exercises/count';

const { exercises, units, beliefs } = readCourse();
const count = countOf(
	exercises,
	units.map((u) => u.number),
	beliefs.map((b) => b.id)
);
process.stdout.write(`${countLines(count).join('\n')}\n`);
