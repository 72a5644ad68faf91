/** Keeps the instrument clear of the points of the place, and where the student has put it. */
import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { StageSpot } from '../../game/view.ts';
import { laid } from '../shop/stage-events.ts';
import { onStage } from '../shop/stage-pane.tsx';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { changeSettings, settings } from '../state/settings.ts';
import { isHeld, type Ui, ui } from '../state/ui.ts';
import { bestSpot, covers, heldIn, type Kept, type Rect, type Spot } from './placement.ts';

interface Placement {
  /** Null where the style sheet has a ground of its own for it. */
  at: Spot | null;
  move: (to: Spot) => void;
  put: () => void;
}

/** Room left free at the edges, pixels. */
const EDGE = 6;

export function usePlacement(session: Session, ref: RefObject<HTMLElement>): Placement {
  const [at, setAt] = useState<Spot | null>(null);
  const last = useRef({ place: '', choice: '', byHand: false });
  const now = useObservable(ui);
  useObservable(laid);
  useSlipWatch();
  const { bench } = session;
  const choice = [now.selected, now.point, now.toolFolded, isHeld(now, bench.leads)].join('|');
  const situation = [now.aside ?? bench.zone, bench.opened, bench.unplugged, now.sheet, now.split].join('|');
  useLayoutEffect(() => {
    const tool = ref.current;
    const room = tool === null ? null : roomOf(tool);
    if (tool === null || room === null) return setAt(null);
    const size = { w: tool.offsetWidth, h: tool.offsetHeight };
    const kept = keptInSight(tool, [bench.leads.red, bench.leads.black], now);
    // Not the height: that changes with every line that is said, and the instrument would not lie still.
    const place = `${situation}|${room.x}|${room.w}|${innerHeight}|${drawnPoints()}`;
    const isNewPlace = place !== last.current.place;
    const isNewChoice = isNewPlace || choice !== last.current.choice;
    const wanted = at !== null && !isNewPlace ? at : chosenBy(room, size);
    const stays = wanted === null ? null : heldIn(room, size, wanted);
    const byHand = last.current.byHand && !isNewPlace;
    // Where a hand has just put it it may cover what it likes, but not what is pointed at next.
    const least = isNewChoice ? WORKED : byHand ? CHOSEN : BUTTON;
    const clear = stays !== null && !kept.some((spot) => spot.weight >= least && covers({ ...stays, ...size }, spot));
    const next =
      stays !== null && clear
        ? stays
        : bestSpot(room, size, kept, drawnUnder(tool), stays ?? { x: room.x + room.w, y: room.y });
    last.current = { place, choice, byHand };
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
    last.current.byHand = true;
    if (tool !== null && room !== null) setAt(heldIn(room, { w: tool.offsetWidth, h: tool.offsetHeight }, to));
  };
  return { at, move, put };
}

/** To cover the chosen point, then a button of the drawing, then a spot of the chosen part is worse than other points. */
const CHOSEN = 10_000;
const BUTTON = 100;
const WORKED = 40;
const BUTTONS = '.tool-row button, .sheet-bar button, .sheet-bar select, .sheet-bar input';
/** A point that a lead is on. */
const PROBED = 60;
const ON_SHEET = 0.5;

/** Points and handles of both drawings, the part that is worked on, and the buttons of the drawings. */
function keptInSight(tool: HTMLElement, leads: readonly (string | null)[], { point: chosen, selected }: Ui): Kept[] {
  const frame = tool.offsetParent?.getBoundingClientRect();
  const stage = document.querySelector('.stage-host')?.getBoundingClientRect();
  if (frame === undefined || stage === undefined) return [];
  const [dx, dy] = [stage.left - frame.left, stage.top - frame.top];
  const weightOf = ({ point, part, onSheet }: StageSpot): number => {
    if (part !== undefined) return part === selected && !onSheet ? WORKED : 0;
    if (point === undefined) return onSheet ? ON_SHEET : 1;
    if (leads.includes(point)) return PROBED;
    return onSheet ? ON_SHEET : point === chosen ? CHOSEN : 1;
  };
  const points = (onStage.current?.spots() ?? [])
    .map((spot) => ({ x: spot.x + dx, y: spot.y + dy, weight: weightOf(spot) }))
    .filter(({ weight }) => weight > 0);
  const buttons = [...document.querySelectorAll(BUTTONS)].flatMap((button) => {
    const { left, right, top, bottom } = button.getBoundingClientRect();
    return [left, right].flatMap((x) =>
      [top, bottom].map((y) => ({ x: x - frame.left, y: y - frame.top, weight: BUTTON })),
    );
  });
  return [...points, ...buttons];
}

/** Where the drawings lie, pixels of the bench. */
function drawnUnder(tool: HTMLElement): Rect[] {
  const frame = tool.offsetParent?.getBoundingClientRect();
  const stage = document.querySelector('.stage-host')?.getBoundingClientRect();
  if (frame === undefined || stage === undefined) return [];
  const [dx, dy] = [stage.left - frame.left, stage.top - frame.top];
  return (onStage.current?.grounds() ?? []).map((box) => ({ ...box, x: box.x + dx, y: box.y + dy }));
}

/** Changes when another drawing has come in; loose ends of wires leave it as it is. */
const drawnPoints = (): number =>
  (onStage.current?.spots() ?? []).filter(({ point }) => point !== undefined && !point.includes('@')).length;

/** The slip grows and shrinks by itself; the instrument must not lie on its buttons. */
function useSlipWatch(): void {
  useLayoutEffect(() => {
    const slip = document.querySelector('.slip-place');
    if (slip === null) return;
    const observer = new ResizeObserver(() => laid.set(laid.value + 1));
    observer.observe(slip);
    return () => observer.disconnect();
  }, []);
}

/** Where the student has put it, in the room that there is now. */
function chosenBy(room: Rect, size: { w: number; h: number }): Spot | null {
  const { toolX, toolY } = settings.value;
  if (toolX < 0 || toolY < 0) return null;
  return { x: room.x + toolX * Math.max(0, room.w - size.w), y: room.y + toolY * Math.max(0, room.h - size.h) };
}

/** The part of the bench that no panel lies over, down to the slip; null where it lies on ground of its own. */
function roomOf(tool: HTMLElement): Rect | null {
  const frame = tool.offsetParent;
  const stage = document.querySelector('.stage-host');
  const slip = document.querySelector('.slip-place');
  if (frame === null || stage === null || getComputedStyle(tool).position === 'fixed') return null;
  const outer = frame.getBoundingClientRect();
  let [left, right, lowest] = [outer.left, outer.right, outer.bottom];
  for (const panel of document.querySelectorAll('.floor > aside')) {
    const { left: from, right: to, top } = panel.getBoundingClientRect();
    // Held upright the list can lie over the lower part from side to side.
    if (from <= left && to >= right && top > outer.top) lowest = Math.min(lowest, top);
    else if (from <= left && to > left) left = to;
    else if (to >= right && from < right) right = from;
  }
  const { bottom } = stage.getBoundingClientRect();
  const under = Math.min(bottom, lowest, slip?.getBoundingClientRect().top ?? bottom);
  return { x: left - outer.left + EDGE, y: EDGE, w: right - left - 2 * EDGE, h: under - outer.top - 2 * EDGE };
}
