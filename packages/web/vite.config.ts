import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  resolve: {
    // The workspace's packages are taken as source, so the page needs no other build first.
    conditions: ['plugside-source', 'module', 'browser', 'development|production'],
  },
  build: { target: 'es2022', chunkSizeWarningLimit: 900 },
});
