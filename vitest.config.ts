import { defineConfig } from 'vitest/config';

// Packages see each other's source, so tests need no build. `import` is not named: Node would be
// told of it for require() too, and a package that has both would be handed the wrong one.
const conditions = ['plugside-source', 'module', 'node'];

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
