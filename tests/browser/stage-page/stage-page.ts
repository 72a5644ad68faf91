/** The stage with a made-up view: for the tests, and for looking at each place. ?bare hides the buttons. */
import {
  createStage,
  type Drawing,
  type Landing,
  loadDrawing,
  type Stage,
  type StageView,
} from '../../../src/game/stage.ts';
import { bareView } from '../../support/stage-view.ts';

const PLACES = [
  ...[
    'YARD',
    'YARD-RIGHT',
    'CDASH',
    'BDASH',
    'CREAR',
    'CFUSE',
    'USEAT',
    'FLOOR',
    'BATT',
    'ENGL',
    'ENGR',
    'TRAY',
    'FRAME',
    'REAR',
  ],
  ...['ROOF', 'FRONT'],
];
const COVERS = ['AC1', 'AC2', 'AC3', 'AC4', 'AC5', 'AC6', 'AC7', 'AC8', 'AC9', 'AC10', 'AC11', 'AC12'];

interface StagePage {
  stage: Stage;
  view: StageView;
  places: string[];
  covers: string[];
  log: string[];
  /** Where ends of wires belong. */
  landings: Record<string, Landing>;
  open(): Stage;
  show(change: Partial<StageView>): void;
  sheetOf(id: string): Promise<Drawing>;
}
declare global {
  interface Window {
    page: StagePage;
  }
}

const host = document.getElementById('host') ?? document.body;
const log: string[] = [];
const told =
  (name: string) =>
  (...what: unknown[]): void => {
    log.push(`${name} ${what.map((w) => JSON.stringify(w)).join(' ')}`);
  };

const open = (): Stage =>
  createStage(
    host,
    {
      onPoint: told('point'),
      onZone: told('zone'),
      onControl: (control, value) => {
        told('control')(control, value);
        page.show({ controls: { ...page.view.controls, [control]: value } });
      },
      onPart: told('part'),
      onMiss: () => {},
      onHover: told('hover'),
    },
    loadDrawing,
    { landing: (end) => page.landings[end] },
  );

const page: StagePage = {
  places: PLACES,
  covers: COVERS,
  log,
  landings: { '208A@to': { point: 'M1.50', colour: 'VT' } },
  view: { ...bareView('YARD'), chocks: true },
  stage: open(),
  open,
  show(change) {
    page.view = { ...page.view, ...change };
    page.stage.show(page.view);
  },
  sheetOf: loadDrawing,
};
window.page = page;
page.show({});

document.body.classList.toggle('bare', location.search.includes('bare'));
function button(text: string, action: () => void): void {
  const element = document.createElement('button');
  element.textContent = text;
  element.addEventListener('click', action);
  document.getElementById('bar')?.append(element);
}
button('next place', () => page.show({ place: PLACES[(PLACES.indexOf(page.view.place) + 1) % PLACES.length] }));
button('covers', () => page.show({ opened: page.view.opened.length > 0 ? [] : COVERS }));
button('theme', () => page.show({ theme: page.view.theme === 'light' ? 'dark' : 'light' }));
button('lead', () => page.show({ leadInHand: page.view.leadInHand === 'red' ? 'black' : 'red' }));
