/** Every sentence a person reads about parts, readings, reasons and problems. */
export * from './kinds';
export * from './units';
export * from './names';
export * from './faults';
export * from './reasons';
export * from './path';
export * from './standing';
export * from './travel';
export * from './reading';
export * from './heard';
export * from './judged';
export * from './needs';
export * from './naming';
export * from './procedure';
export * from './hints';
export * from './numbers';
export * from './glossary';
