import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Plugin } from 'vite';
import type * as StartSheet from '../views/startSheet.ts';

const PLACE = '<!-- start drawing -->';

/** Draws the lander of the start page into `index.html` when it is built, so that it shows with the first bytes. */
export function startDrawing(clientFolder: string): Plugin {
  return {
    name: 'kilter:start-drawing',
    async transformIndexHtml(html) {
      // loaded at run time by Node itself: bundled into the configuration, the engine would load its parts out of order
      const file = pathToFileURL(path.join(clientFolder, 'views/startSheet.ts')).href;
      const { drawStart }: typeof StartSheet = await import(file);
      return html.replace(PLACE, drawStart());
    },
  };
}
