/** Keeps the instrument clear of the points of the place, and where the student has put it. */
import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { laid } from '../shop/stage-events.ts';
import { onStage } from '../shop/stage-pane.tsx';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { changeSettings, settings } from '../state/settings.ts';
import { ui } from '../state/ui.ts';
import { bestSpot, covers, heldIn, type Kept, type Rect, type Spot } from './placement.ts';

interface Placement {
  /** Null where the style sheet has a ground of its own for it. */
  at: Spot | null;
  move: (to: Spot) => void;
  put: () => void;
}

/** Room left free at the edges, pixels; above it the buttons of the drawing. */
const EDGE = 6;

export function usePlacement(session: Session, ref: RefObject<HTMLElement>): Placement {
  const [at, setAt] = useState<Spot | null>(null);
  const last = useRef('');
  const now = useObservable(ui);
  useObservable(laid);
  const { bench } = session;
  const situation = [now.aside ?? bench.zone, bench.opened, bench.unplugged, now.sheet, now.split].join('|');
  useLayoutEffect(() => {
    const tool = ref.current;
    const room = tool === null ? null : roomOf(tool);
    if (tool === null || room === null) return setAt(null);
    const size = { w: tool.offsetWidth, h: tool.offsetHeight };
    const kept = keptInSight(tool, now.point);
    const key = `${situation}|${Object.values(room)}|${kept.length}`;
    const own = chosenBy(room, size);
    const wanted = at !== null && key === last.current ? at : own;
    const stays = wanted === null ? null : heldIn(room, size, wanted);
    const clear = stays !== null && !kept.some((spot) => spot.weight === CHOSEN && covers({ ...stays, ...size }, spot));
    const next =
      stays !== null && clear ? stays : bestSpot(room, size, kept, stays ?? { x: room.x + room.w, y: room.y });
    last.current = key;
    if (next.x !== at?.x || next.y !== at.y) setAt(next);
  });
  const put = (): void => {
    const tool = ref.current;
    const room = tool === null ? null : roomOf(tool);
    if (tool === null || room === null) return;
    const share = (offset: number, free: number): number => (free <= 0 ? 0 : Math.max(0, Math.min(1, offset / free)));
    changeSettings({
      toolX: share(tool.offsetLeft - room.x, room.w - tool.offsetWidth),
      toolY: share(tool.offsetTop - room.y, room.h - tool.offsetHeight),
    });
  };
  const move = (to: Spot): void => {
    const tool = ref.current;
    const room = tool === null ? null : roomOf(tool);
    if (tool !== null && room !== null) setAt(heldIn(room, { w: tool.offsetWidth, h: tool.offsetHeight }, to));
  };
  return { at, move, put };
}

/** To cover the chosen point, or a button of the drawing, is worse than to cover every other point. */
const CHOSEN = 10_000;
const BUTTON = 100;
const BUTTONS = '.tool-row button, .sheet-bar button, .sheet-bar select, .sheet-bar input';
const ON_SHEET = 0.5;

/** Points and handles of both drawings, and the buttons that lie over them. */
function keptInSight(tool: HTMLElement, chosen: string | null): Kept[] {
  const frame = tool.offsetParent?.getBoundingClientRect();
  const stage = document.querySelector('.stage-host')?.getBoundingClientRect();
  if (frame === undefined || stage === undefined) return [];
  const [dx, dy] = [stage.left - frame.left, stage.top - frame.top];
  const points = (onStage.current?.spots() ?? []).map(({ point, onSheet, x, y }) => ({
    x: x + dx,
    y: y + dy,
    weight: onSheet ? ON_SHEET : point !== undefined && point === chosen ? CHOSEN : 1,
  }));
  const buttons = [...document.querySelectorAll(BUTTONS)].flatMap((button) => {
    const { left, right, top, height } = button.getBoundingClientRect();
    return [left, right].map((x) => ({ x: x - frame.left, y: top - frame.top + height / 2, weight: BUTTON }));
  });
  return [...points, ...buttons];
}

/** Where the student has put it, in the room that there is now. */
function chosenBy(room: Rect, size: { w: number; h: number }): Spot | null {
  const { toolX, toolY } = settings.value;
  if (toolX < 0 || toolY < 0) return null;
  return { x: room.x + toolX * Math.max(0, room.w - size.w), y: room.y + toolY * Math.max(0, room.h - size.h) };
}

/** The part of the bench that no panel lies over and the slip leaves free; null where it lies on ground of its own. */
function roomOf(tool: HTMLElement): Rect | null {
  const frame = tool.offsetParent;
  const stage = document.querySelector('.stage-host');
  if (frame === null || stage === null || getComputedStyle(tool).position === 'fixed') return null;
  const outer = frame.getBoundingClientRect();
  let [left, right] = [outer.left, outer.right];
  for (const panel of document.querySelectorAll('.floor > aside')) {
    const { left: from, right: to } = panel.getBoundingClientRect();
    if (from <= left && to > left) left = to;
    else if (to >= right && from < right) right = from;
  }
  const { top, bottom } = stage.getBoundingClientRect();
  const x = left - outer.left + EDGE;
  const y = top - outer.top + EDGE;
  return { x, y, w: right - left - 2 * EDGE, h: bottom - top - 2 * EDGE };
}
