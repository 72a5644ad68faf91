/** Rigid bodies on springs: what keeps its size on a sheet, and how the wires between share the slack. */
import type { PointId } from '../../parts/index.ts';

export interface Spring {
  from: string;
  to: string;
  least: number;
  /** Share of the slack that it takes. */
  weight: number;
}

/** Points that keep their distance, as one body: union-find with offsets. */
export class Bodies {
  private readonly parent = new Map<PointId, { to: PointId; offset: number }>();

  find(point: PointId): { root: PointId; offset: number } {
    let root = point;
    let offset = 0;
    for (let up = this.parent.get(root); up !== undefined; up = this.parent.get(root)) {
      offset += up.offset;
      root = up.to;
    }
    return { root, offset };
  }

  /** Binds `b` at `distance` below `a`. False if the two are bound already. */
  bind(a: PointId, b: PointId, distance: number): boolean {
    const p = this.find(a);
    const q = this.find(b);
    if (p.root === q.root) return false;
    this.parent.set(q.root, { to: p.root, offset: p.offset + distance - q.offset });
    return true;
  }
}

/** How far each body sinks into its slack, 0 to 1: wires above it against wires below it, to what is fixed. */
export function shares(roots: string[], springs: Spring[], fixed: ReadonlyMap<string, number>): Map<string, number> {
  const above = new Map<string, number>();
  const below = new Map<string, number>(roots.map((root) => [root, fixed.has(root) ? 0 : Number.NaN]));
  for (let i = 0; i <= roots.length; i++) {
    for (const { from, to, weight } of springs) {
      const down = (fixed.has(from) ? 0 : (above.get(from) ?? 0)) + weight;
      if (!fixed.has(to)) above.set(to, Math.max(above.get(to) ?? 0, down));
      const up = (below.get(to) ?? Number.NaN) + weight;
      const known = below.get(from) ?? Number.NaN;
      if (!fixed.has(from) && !Number.isNaN(up) && !(known >= up)) below.set(from, up);
    }
  }
  const share = new Map<string, number>();
  for (const root of roots) {
    const a = above.get(root) ?? 0;
    const b = below.get(root) ?? Number.NaN;
    // A body from which nothing fixed hangs stays as high as it can.
    share.set(root, Number.isNaN(b) || a + b === 0 ? 0 : a / (a + b));
  }
  return share;
}
