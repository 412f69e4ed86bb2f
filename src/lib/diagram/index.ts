/** Geometry of the drawing. */
export * from './socket';
export * from './scene';
export { makePlaces, type Places } from './places';
export * from './lit';
export * from './roving';
export * from './figure';
export * from './route';
export * from './view';
export * from './breakSign';
export * from './lugs';
export * from './plugSign';
export { plugParts } from './plugShape';
export * from './sceneFigure';
export * from './section';
export { pinSectionOf } from './sectionPins';
export { symbolOf } from './symbol';
export * from './svg';
export * from './sheetFigure';
