/** What moves contacts: the hand, the plunger or the winding, and the dashed line from it. */
import type { Canvas } from './canvas.ts';
import { caption, type DrawnElement } from './draw.ts';
import { circle, DASHED, path, STROKE } from './ink.ts';
import type { LabelLine, Spot } from './labels.ts';
import { hasPlug } from './network.ts';
import type { SheetPlan } from './plan.ts';

/** The dashed line that moves contacts, with what the hand or the plunger moves at its left end. */
export function actuate(canvas: Canvas, plan: SheetPlan, elements: readonly DrawnElement[]): void {
  const moved = new Map<string, DrawnElement[]>();
  for (const drawn of elements) {
    const { part } = drawn.edge;
    if (drawn.kind !== 'contact' || part.kind === 'relay') continue;
    moved.set(part.id, [...(moved.get(part.id) ?? []), drawn]);
  }
  for (const [part, contacts] of moved) {
    const xs = contacts.map(({ place }) => place.x);
    const y = (contacts[0].place.top + contacts[0].place.bottom) / 2;
    const winding = elements.find(({ kind, edge }) => kind === 'winding' && edge.part.id === part);
    if (winding !== undefined) {
      canvas.symbols.push(path(`M${Math.max(...xs) - 6} ${y}H${winding.place.x - 10}`, STROKE.detail, DASHED));
      canvas.takeLine(Math.max(...xs), y, winding.place.x - 10, y, 2);
      continue;
    }
    const left = Math.min(...xs) - 30;
    canvas.symbols.push(path(`M${left} ${y}H${Math.max(...xs) - 6}`, STROKE.detail, DASHED));
    canvas.takeLine(left, y, Math.max(...xs) - 6, y, 2);
    canvas.symbols.push(handle(plan.sheet.actuators[part], left, y));
    canvas.take(left - 12, y - 10, 14, 20);
    if (!framedPart(plan, contacts[0])) nameBare(canvas, plan, contacts[0], y);
  }
}

const framedPart = (plan: SheetPlan, { edge }: DrawnElement): boolean => hasPlug(plan.network, edge.part);

function nameBare(canvas: Canvas, plan: SheetPlan, { edge, place }: DrawnElement, y: number): void {
  const lines: LabelLine[] = [{ text: edge.part.id, size: 18, bold: true }, ...caption(plan, edge.part.id)];
  const spots = [14, 22].flatMap((gap) =>
    [0, -6, 6, -12].map((dy): Spot => ({ x: place.x + gap, y: y - 2 + dy, anchor: 'start' })),
  );
  canvas.label({ of: edge.part.id, lines, spots });
}

function handle(kind: SheetPlan['sheet']['actuators'][string] | undefined, x: number, y: number): string {
  switch (kind) {
    case 'key':
      return circle(x - 8, y, 8, STROKE.detail) + path(`M${x - 8} ${y - 5}v10M${x} ${y}h6`, STROKE.detail);
    case 'lever':
      return path(`M${x - 5} ${y - 8}L${x} ${y}L${x - 5} ${y + 8}`, STROKE.detail);
    case 'plunger':
      return circle(x - 5, y, 5, STROKE.detail);
    case 'pedal':
      return path(`M${x - 6} ${y - 9}H${x}V${y + 9}H${x - 6}`, STROKE.detail);
    default:
      return path(`M${x} ${y - 9}V${y + 9}`, STROKE.contact);
  }
}
