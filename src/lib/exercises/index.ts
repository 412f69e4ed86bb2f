/** Exercises as data, and their judge. The content itself: `content.vite` or `content.node`. */
export * from './exercise';
export * from './prose';
export * from './schema';
export * from './shelf';
export * from './answers';
export * from './judge';
export { faultKey, faultsToName, probesTaken } from './find';
export { samePair } from './predict';
