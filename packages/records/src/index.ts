/** What a department keeps: schemas, storage, import and export. */

// Backup
export * from './backup/index.ts';
// Invented district, to try things on
export * from './demo/index.ts';
// The district as a whole
export * from './district/index.ts';
// Terrain
export * from './elevation/index.ts';
// Export
export * from './export/index.ts';
// Import
export * from './import/index.ts';
export * from './model/index.ts';
// Storage
export * from './store/index.ts';
