/** Motions by name and the frame that is asked for only when something changed. */
interface Motion {
  start: number;
  ms: number;
  step: (share: number) => void;
  done: (() => void) | undefined;
}

export class Animator {
  private readonly motions = new Map<string, Motion>();
  private requested = 0;
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** Asked at every frame: ms to the next one while something moves by itself, such as a cranking engine. */
  restless: () => number | null = () => null;

  constructor(private readonly draw: (now: number) => void) {}

  redraw = (): void => {
    if (this.requested === 0) this.requested = requestAnimationFrame(this.frame);
  };

  animate = (name: string, ms: number, step: (share: number) => void, done?: () => void): void => {
    this.motions.set(name, { start: performance.now(), ms, step, done });
    this.redraw();
  };

  stop(): void {
    cancelAnimationFrame(this.requested);
    clearTimeout(this.timer);
    this.requested = -1;
    this.motions.clear();
  }

  private frame = (now: number): void => {
    this.requested = 0;
    for (const [name, motion] of this.motions) {
      const share = Math.min(1, Math.max(0, (now - motion.start) / motion.ms));
      motion.step(1 - (1 - share) * (1 - share));
      if (share < 1) continue;
      this.motions.delete(name);
      motion.done?.();
    }
    this.draw(now);
    const pause = this.restless();
    clearTimeout(this.timer);
    if (this.motions.size > 0) this.redraw();
    else if (pause !== null) this.timer = setTimeout(this.redraw, pause);
  };
}
