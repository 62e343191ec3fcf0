import { defineConfig } from 'vitest/config';
import { findPostgresql } from './packages/records/proof/postgresql-server.ts';

// Packages see each other's source, so tests need no build. `import` is not named: Node would be
// told of it for require() too, and a package that has both would be handed the wrong one.
const conditions = ['plugside-source', 'module', 'node'];

const exclude = ['**/node_modules/**', '**/dist/**', '**/*.browser.test.ts'];

/** The API's own tests, which run on SQLite with all the others, again on PostgreSQL. */
const onPostgresql = {
  extends: true as const,
  test: {
    name: 'API on PostgreSQL',
    include: [
      'packages/server/src/{api,imports,map,elevation,paper,supply}/**/*.test.ts',
      'packages/server/src/drill-rooms/{drill-rooms,refusals}.test.ts',
      'packages/server/src/fuzz.test.ts',
    ],
    exclude,
    globalSetup: './scripts/api-on-postgresql.ts',
    setupFiles: './scripts/api-on-postgresql-file.ts',
  },
};

const hasPostgresql = findPostgresql() !== undefined;
if (!hasPostgresql) {
  console.warn(
    'The API was NOT tested on PostgreSQL: no server programs under /usr/lib/postgresql.',
  );
}

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    // A hung test ends; a slow machine fails none.
    testTimeout: 180_000,
    hookTimeout: 180_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'all',
          include: [
            'packages/**/*.test.ts',
            'packages/**/*.test.tsx',
            'scripts/**/*.test.ts',
            'bench/**/*.test.ts',
          ],
          exclude,
        },
      },
      ...(hasPostgresql ? [onPostgresql] : []),
    ],
  },
});
