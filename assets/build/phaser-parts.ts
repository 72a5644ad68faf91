/**
 * Only as much of Phaser as the stage draws with: it is a renderer here, without its sound, input, loader, physics and
 * tilemaps. Phaser's own sources are made for such builds; what stands below is what its full entry would be, cut down.
 */
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';

const PHASER = createRequire(import.meta.url).resolve('phaser/package.json');
const SOURCES = join(dirname(PHASER), 'src');
const ENTRY = '\0phaser-parts';

/** What the stage imports, by its path in Phaser's sources. A name that is missing here fails the build. */
const PARTS = {
  Game: 'core/Game',
  Scene: 'scene/Scene',
  Core: { Events: 'core/events' },
  Scale: { NONE: 'scale/const/SCALE_MODE_CONST#NONE' },
  GameObjects: { Image: 'gameobjects/image/Image' },
  Math: { Vector2: 'math/Vector2' },
  AUTO: 'const#AUTO',
  CANVAS: 'const#CANVAS',
} as const;

/** They sign themselves in: the base, then `scene.cameras`, `scene.add.graphics`, `scene.make.container`. */
const SIGNED_IN = [
  // First, as in Phaser's own entry: its files ask for each other in a circle.
  'renderer/index',
  'events/EventEmitter',
  'cameras/2d/CameraManager',
  'gameobjects/DisplayList',
  'gameobjects/UpdateList',
  'gameobjects/GameObjectCreator',
  'gameobjects/GameObjectFactory',
  'gameobjects/container/ContainerFactory',
  'gameobjects/container/ContainerCreator',
  'gameobjects/graphics/GraphicsFactory',
  'scene/ScenePlugin',
];

/** Phaser's own switches for its builds. */
const SWITCHES: Record<string, boolean> = {
  CANVAS_RENDERER: true,
  WEBGL_RENDERER: true,
  WEBGL_DEBUG: false,
  FEATURE_SOUND: false,
  PLUGIN_CAMERA3D: false,
  PLUGIN_FBINSTANT: false,
};

export function phaserParts(): Plugin {
  return {
    name: 'ohmyard-phaser-parts',
    apply: 'build',
    enforce: 'pre',
    resolveId(id, from) {
      if (id === 'phaser') return ENTRY;
      // Its sources ask for a class, not for a module that has one.
      return id === 'eventemitter3' && from?.startsWith(SOURCES) ? createRequire(PHASER).resolve(id) : null;
    },
    load: (id) => (id === ENTRY ? entry() : null),
    transform: (code, id) => (id.startsWith(SOURCES) ? switched(code) : null),
  };
}

const switched = (code: string): string =>
  code.replace(/typeof ([A-Z0-9_]+)\b/g, (text, name: string) => String(SWITCHES[name] ?? text));

function entry(): string {
  const imports = SIGNED_IN.map((path) => `import ${JSON.stringify(join(SOURCES, `${path}.js`))};`);
  const bring = (path: string): string => {
    const [file, member] = path.split('#');
    const name = `part${imports.length}`;
    imports.push(`import ${name} from ${JSON.stringify(createRequire(PHASER).resolve(join(SOURCES, file)))};`);
    return member === undefined ? name : `${name}.${member}`;
  };
  const exports = Object.entries(PARTS).map(([name, part]) => {
    if (typeof part === 'string') return `export const ${name} = ${bring(part)};`;
    const members = Object.entries(part).map(([member, path]) => `${member}: ${bring(path)}`);
    return `const ${name}_ = { ${members.join(', ')} };\nexport { ${name}_ as ${name} };`;
  });
  return [...imports, ...exports].join('\n');
}
