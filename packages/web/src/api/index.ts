/** Plugside's server, as the app asks it. */
export * from './district.ts';
export * from './drills.ts';
export * from './elevation.ts';
export * from './imports.ts';
export * from './problem.ts';
export * from './records.ts';
export { type ApiRequest, apiRequest, apiUrl } from './request.ts';
