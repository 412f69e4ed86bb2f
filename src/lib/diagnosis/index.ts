/** Faults as hypotheses: the list, the probes, and which faults answer alike. */
export * from './faults';
export * from './probes';
export * from './signature';
