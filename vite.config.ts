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
    rollupOptions: {
      treeshake: {
        // The door of geometry/ leads to all of it, and the sheet brings its typeface: who does not ask for a sheet does not load it.
        moduleSideEffects: (id: string) => !/[\\/]geometry[\\/](index\.ts|sheet[\\/])/.test(id),
      },
    },
    // Which chunk needs which: tests weigh the first load by it.
    manifest: true,
    // The picture's libraries are a chunk of their own, loaded by renderer/viewport/Viewport when the numbers are there.
    chunkSizeWarningLimit: 1000,
  },
});
