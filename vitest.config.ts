import { defineConfig } from 'vitest/config';

// Packages see each other's source, so tests need no build.
const conditions = ['plugside-source', 'module', 'node', 'import', 'default'];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    include: [
      'packages/**/*.test.ts',
      'packages/**/*.test.tsx',
      'scripts/**/*.test.ts',
      'bench/**/*.test.ts',
    ],
    // A hung test ends; a slow machine fails none.
    testTimeout: 60_000,
    exclude: ['**/node_modules/**', '**/dist/**', '**/*.browser.test.ts'],
  },
});
