import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'renderer',
  base: './',
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    outDir: '../build/window',
    target: 'es2022',
    // Which chunk needs which: tests weigh the first load by it.
    manifest: true,
    // The picture's libraries are a chunk of their own, loaded by renderer/viewport/Viewport when the numbers are there.
    chunkSizeWarningLimit: 1000,
  },
});
