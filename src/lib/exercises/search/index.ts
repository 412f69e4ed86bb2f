/** The fewest changes to a right wiring, and what hints are made of. */
export {
	LIMITS,
	fewestChanges,
	fewestWires,
	type ChangeSet,
	type Limits,
	type Search
} from './search';
export { type Task } from './task';
export { hintFor, placesOf, socketsAt, spareOf, type Spare } from './hints';
