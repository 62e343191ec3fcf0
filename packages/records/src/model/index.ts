/** What a department keeps, as schemas and types; no storage, so that a browser can use it. */
export * from './apparatus.ts';
export * from './common.ts';
export * from './district.ts';
export * from './hydrant.ts';
export * from './kinds.ts';
export * from './origin-of.ts';
export * from './sort-fields.ts';
export * from './tests.ts';
