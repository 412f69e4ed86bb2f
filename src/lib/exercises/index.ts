/** Exercises as data, and their judge. The content itself: `content.vite` or `content.node`. */
export * from './exercise';
export * from './judged';
export * from './verdict';
export * from './needs';
export * from './procedure';
export * from './prose';
export * from './beliefs';
export * from './units';
export * from './schema';
export * from './shelf';
export * from './answers';
export * from './judge';
export { faultKey, probesTaken, samePair, sameWhen } from './same';
export { faultsToName, fewestProofOf } from './find';
export { cellsOf, sameCell, soundingCells } from './predict';
export { fittingOptions } from './choose';
export {
	contactsToName,
	lettersOf,
	lugOfNode,
	nodeOfLug,
	nodesToProbe,
	sameNamings,
	statesToName
} from './name';
export { playOrder } from './order';
export { changesBetween } from './putRight';
export * from './search';
