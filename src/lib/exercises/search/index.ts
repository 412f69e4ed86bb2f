/** The fewest changes to a right wiring, and what a hint may tell of them. */
export {
	LIMITS,
	fewestChanges,
	fewestWires,
	type ChangeSet,
	type Limits,
	type Search
} from './search';
export { type Task } from './task';
