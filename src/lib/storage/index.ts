/** Everything the browser keeps: autosave, settings, links and files. */
export * from './autosave';
export * from './cautions';
export * from './file';
export * from './later';
export * from './link';
export * from './lugs';
export * from './work';
export * from './readings';
export * from './text';
export * from './ticks';
