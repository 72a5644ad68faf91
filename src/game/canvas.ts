/** The canvas: Phaser as a renderer only. Input, sound and its own clock are off; a frame is drawn when it is asked for. */
import * as Phaser from 'phaser';
import type { Disposer } from './disposer.ts';

export interface Canvas {
  scene: Phaser.Scene;
  element: HTMLCanvasElement;
  draw(): void;
  /** Pixels of the device: CSS pixels times the density. */
  resize(width: number, height: number, density: number): void;
}

/** ?renderer=canvas or webgl chooses. WebGL without a graphics chip draws a tenth of the frames that plain canvas does. */
function rendererType(): number {
  const asked = new URLSearchParams(location.search).get('renderer');
  if (asked === 'webgl') return Phaser.AUTO;
  return asked === 'canvas' || !hasQuickWebgl() ? Phaser.CANVAS : Phaser.AUTO;
}

function hasQuickWebgl(): boolean {
  const context = document.createElement('canvas').getContext('webgl', { failIfMajorPerformanceCaveat: true });
  if (!context) return false;
  const named = context.getExtension('WEBGL_debug_renderer_info');
  const name = named ? String(context.getParameter(named.UNMASKED_RENDERER_WEBGL)) : '';
  context.getExtension('WEBGL_lose_context')?.loseContext();
  return !/swiftshader|llvmpipe|softpipe|software|basic render/i.test(name);
}

export function openCanvas(host: HTMLElement, density: number, disposer: Disposer): Promise<Canvas> {
  return new Promise((resolve) => {
    const scene = new Phaser.Scene('stage');
    const listeners = rememberedListeners();
    const game = new Phaser.Game({
      type: rendererType(),
      parent: host,
      width: Math.max(1, Math.round(host.clientWidth * density)),
      height: Math.max(1, Math.round(host.clientHeight * density)),
      scale: { mode: Phaser.Scale.NONE, zoom: 1 / density },
      audio: { noAudio: true },
      input: { keyboard: false, mouse: false, touch: false, gamepad: false },
      banner: false,
      autoFocus: false,
      antialias: true,
      backgroundColor: '#808080',
      callbacks: { postBoot: listeners.take },
      scene,
    });
    disposer.add(() => {
      listeners.stop();
      game.destroy(true);
      // The destruction waits for the next step, and the clock stands still.
      game.loop.tick();
    });
    game.events.once(Phaser.Core.Events.POST_RENDER, () => {
      game.loop.sleep();
      game.canvas.setAttribute('aria-hidden', 'true');
      game.canvas.style.touchAction = 'none';
      game.canvas.style.display = 'block';
      resolve({ scene, element: game.canvas, draw: () => game.loop.tick(), resize: resizer(game) });
    });
  });
}

const resizer = (game: Phaser.Game) => (width: number, height: number, density: number) => {
  game.scale.setZoom(1 / density);
  game.scale.resize(Math.max(1, Math.round(width * density)), Math.max(1, Math.round(height * density)));
};

/**
 * Phaser never takes its listener for hidden pages off. It puts it on in the same turn in which it has started; what it
 * adds then is remembered and taken off here.
 */
function rememberedListeners(): { take: () => void; stop: () => void } {
  const added: Parameters<Document['addEventListener']>[] = [];
  const original = document.addEventListener;
  return {
    take: () => {
      document.addEventListener = (...args: Parameters<Document['addEventListener']>): void => {
        added.push(args);
        original.apply(document, args);
      };
      queueMicrotask(() => {
        document.addEventListener = original;
      });
    },
    stop: () => {
      for (const [type, listener, options] of added) document.removeEventListener(type, listener, options);
      window.onblur = null;
      window.onfocus = null;
    },
  };
}
