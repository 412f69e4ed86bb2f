/** The engine's public face. */
export * from './bench';
export * from './parts';
export * from './circuit';
export * from './nets';
export * from './solve';
export * from './path';
export * from './hears';
export * from './meter';
export * from './edit';
export * from './matrix';
export * from './fastMatrix';
export * from './parse';
export * from './requirement';
export * from './netlist';
