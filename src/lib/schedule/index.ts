/** The way back to real hardware: wiring schedule, order of soldering, cut list, panels as CSV. */
export * from './roles';
export * from './runs';
export * from './order';
export * from './cuts';
export * from './schedule';
export * from './csv';
export { COLUMNS, MORE_COLUMNS } from './panelRows';
export * from './panelCsv';
export * from './panelCsvOut';
export * from './scheduleCsv';
