import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const api = process.env.PLUGSIDE_API ?? 'http://127.0.0.1:4600';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  resolve: {
    // The workspace's packages are taken as source, so the page needs no other build first.
    conditions: ['plugside-source', 'module', 'browser', 'development|production'],
  },
  worker: { format: 'es' },
  // The server takes changes from its own pages alone: in development this page passes for one.
  server: {
    proxy: { '/api': { target: api, changeOrigin: true, ws: true, headers: { origin: api } } },
  },
  build: { target: 'es2022', chunkSizeWarningLimit: 900 },
});
