import { existsSync } from 'node:fs';
import path from 'node:path';
import express, { type Application } from 'express';
import { CAUTION } from '../../engine/constants.ts';
import { isFromHere } from './networkOrigins.ts';

export const CLIENT_MISSING = 'The client is not built. Run "npm run build", then start again.';

export function isClientBuilt(folder: string): boolean {
  return existsSync(path.join(folder, 'index.html'));
}

/** Serves the built client, and a plain word for everything else. */
export function serveClient(
  app: Application,
  options: {
    readonly folder: string;
    /** Under which other machines reach the server. */
    readonly origins: () => readonly string[];
  },
): void {
  app.disable('x-powered-by');
  // where phones find this server: told to this machine alone, since it names machines of the network
  app.get('/api/origins', (request, response) => {
    response.setHeader('Cache-Control', 'no-store');
    response.json({ origins: isFromHere(request) ? options.origins() : [] });
  });
  // addresses that can be said aloud; what stands in them goes along
  for (const page of ['workbench', 'hall']) {
    app.get(`/${page}`, (request, response) => {
      const asked = new URLSearchParams(request.url.split('?')[1]).toString();
      response.redirect(302, `./?${page}${asked === '' ? '' : `&${asked}`}`);
    });
  }
  app.use(
    express.static(options.folder, {
      setHeaders: (response, file) => {
        // built names carry a hash of their content; the page that names them does not
        const isHashed = path.relative(options.folder, file).startsWith(`assets${path.sep}`);
        response.setHeader('Cache-Control', isHashed ? 'public, max-age=31536000, immutable' : 'no-cache');
      },
    }),
  );
  app.use((request, response) => {
    const missing = request.path === '/' && !isClientBuilt(options.folder);
    response.status(missing ? 503 : 404).type('text/plain');
    response.send(`${missing ? CLIENT_MISSING : 'There is nothing at this address.'}\n${CAUTION}\n`);
  });
}
