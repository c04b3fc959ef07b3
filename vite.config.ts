import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The pages: src/web to dist/web, served by src/server. */
export default defineConfig({
  root: 'src/web',
  plugins: [react()],
  build: { outDir: '../../dist/web', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 1500 },
});
