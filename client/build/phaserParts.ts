import { realpathSync } from 'node:fs';
import path from 'node:path';
import type { Plugin } from 'vite';

/**
 * Builds `phaser` from the parts that the section uses: game, scene, camera, display list and the canvas renderer.
 *
 * The package is published as one bundle that cannot be tree-shaken (284 kB brotli), and its `exports` block imports of
 * single files, so the parts are named here by absolute path. The section draws with its own game objects on the canvas
 * renderer: neither WebGL, sound, loaders, tweens nor input are needed. Types still come from the package itself.
 */
const NAME = 'phaser';
const VIRTUAL = '\0phaser-parts';

/** Imported for what they register with Phaser's plugin cache: a game refuses to start without them. */
const REGISTERED = [
  'events/EventEmitter.js',
  'cameras/2d/CameraManager.js',
  'gameobjects/DisplayList.js',
  'gameobjects/UpdateList.js',
  'gameobjects/GameObjectFactory.js',
  'gameobjects/GameObjectCreator.js',
  'scene/ScenePlugin.js',
];

/** Compile-time switches of Phaser's own build. They stand as `typeof NAME` in its source. */
const SWITCHES: Readonly<Record<string, string>> = {
  CANVAS_RENDERER: 'true',
  WEBGL_RENDERER: 'false',
  WEBGL_DEBUG: 'false',
  FEATURE_SOUND: 'false',
  PLUGIN_CAMERA3D: 'false',
  PLUGIN_FBINSTANT: 'false',
};

export function phaserParts(packageFolder: string): Plugin {
  // as the bundler names it, also where the installed packages are linked to
  const source = path.join(realpathSync(path.join(packageFolder, 'node_modules/phaser')), 'src/');
  const switches = new RegExp(`typeof (${Object.keys(SWITCHES).join('|')})\\b`, 'g');
  return {
    name: 'kilter:phaser-parts',
    enforce: 'pre',
    resolveId: (id) => (id === NAME ? VIRTUAL : undefined),
    load: (id) => (id === VIRTUAL ? door(source) : undefined),
    transform(code, id) {
      if (!id.startsWith(source)) return undefined;
      return { code: code.replace(switches, (_, name: string) => SWITCHES[name] ?? 'false'), map: null };
    },
  };
}

function door(source: string): string {
  return [
    `import Game from '${source}core/Game.js';`,
    `import Scene from '${source}scene/Scene.js';`,
    `import GameObject from '${source}gameobjects/GameObject.js';`,
    `import constants from '${source}const.js';`,
    ...REGISTERED.map((file) => `import '${source}${file}';`),
    'export const { CANVAS } = constants;',
    'export const GameObjects = { GameObject };',
    'export { Game, Scene };',
  ].join('\n');
}
