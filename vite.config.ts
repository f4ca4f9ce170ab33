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
    // The viewport's libraries are the largest part: on their own, numbers and adjusters do not wait for them.
    rolldownOptions: {
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          groups: [{ name: 'viewport-libraries', test: /node_modules[\\/](three|@react-three)[\\/]/ }],
        },
      },
    },
  },
});
