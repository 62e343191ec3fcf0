/** What a department keeps: schemas, storage, import and export. */
export * from './model/index.ts';
// Storage
export * from './store/index.ts';
// Backup
export * from './backup/index.ts';
