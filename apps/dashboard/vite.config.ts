import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { checkFiles } from './check-files-plugin.ts';
import { offline } from './offline-plugin.ts';
import { slimContract } from './slim-contract-plugin.ts';

/** Client links look like /c/<letter>#<secret>. In development Vite would answer them with the crew's page. */
const clientLinks: Plugin = {
  name: 'client-links',
  configureServer(server) {
    server.middlewares.use((request, _response, next) => {
      if (request.url && /^\/c(\/|$|\?)/.test(request.url)) request.url = '/client.html';
      next();
    });
  },
};

const apiPort = process.env.PORT ?? '4000';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [
    checkFiles({ folder: resolve(import.meta.dirname, '../../packages/rules/src/checks') }),
    slimContract({ folder: resolve(import.meta.dirname, '../../packages/contract/src') }),
    react(),
    clientLinks,
    offline({ root: import.meta.dirname, worker: 'src/app/service-worker.ts' }),
  ],
  server: { proxy: { '/api': `http://127.0.0.1:${apiPort}` } },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    // Everything stays a file of its own: the content security policy allows neither data: fonts nor inline code.
    assetsInlineLimit: 0,
    rolldownOptions: {
      input: {
        app: resolve(import.meta.dirname, 'index.html'),
        client: resolve(import.meta.dirname, 'client.html'),
      },
    },
  },
});
