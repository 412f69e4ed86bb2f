/** Faults as hypotheses: the list, the probes, what readings leave of them, and what to probe next. */
export * from './faults';
export * from './probes';
export * from './signature';
export * from './weights';
export * from './setting';
export * from './dictionary';
export * from './evidence';
export * from './readings';
export * from './classes';
export * from './next';
export * from './conflict';
export * from './diagnose';
export * from './card';
export * from './cover';
