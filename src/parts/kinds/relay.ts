import { type Change, type FaultFamily, severityGrid } from '../change.ts';
import { elementId, type Kind, type PartOf } from './kind.ts';

/** Relay pull-in and release times, ms (book, section 4; ISO 7588 relays with a suppression resistor: from memory). */
const PULL_IN_MS = 8;
const RELEASE_MS = 5;

type Relay = PartOf<'relay'>;

export const relay: Kind<Relay> = {
  elements: (part) => {
    const point = (terminal: string) => `${part.id}.${terminal}`;
    const contacts = [
      {
        id: 'no',
        a: point(part.common),
        b: point(part.make),
        law: { kind: 'contact' as const, ohms: part.contactOhms },
        when: { region: part.id, is: ['on'] },
      },
    ];
    if (part.rest !== undefined) {
      contacts.push({
        id: 'nc',
        a: point(part.common),
        b: point(part.rest),
        law: { kind: 'contact' as const, ohms: part.restContactOhms ?? part.contactOhms },
        when: { region: part.id, is: ['off'] },
      });
    }
    return [
      {
        id: 'coil',
        a: point(part.coil[0]),
        b: point(part.coil[1]),
        law: { kind: 'resistance' as const, ohms: part.coilOhms },
      },
      ...contacts,
    ];
  },
  regions: (part) => {
    // An armature follows the coil's current: an open coil with full volts across it pulls nothing.
    const coil = [elementId(part.id, 'coil')];
    return [
      {
        id: part.id,
        states: ['off', 'on'],
        initial: 'off',
        transitions: [
          { from: 'off', to: 'on', when: { amps: coil, above: part.pullInVolts / part.coilOhms }, afterMs: PULL_IN_MS },
          {
            from: 'on',
            to: 'off',
            when: { amps: coil, below: part.dropOutVolts / part.coilOhms },
            afterMs: RELEASE_MS,
          },
        ],
      },
    ];
  },
  faults: (part) => part.failures.flatMap(({ mode, weight }) => family(part, mode, weight)),
};

function family(part: Relay, mode: string, weight: number): FaultFamily[] {
  const one = (changes: (ohms: number) => Change[], severities: number[] = [], share = 1): FaultFamily => ({
    at: part.id,
    mode,
    weight: weight * share,
    severities,
    fault: (ohms) => ({ at: part.id, mode, changes: changes(ohms), cures: ['replace'] }),
  });
  const grid = severityGrid(20);
  const coil = elementId(part.id, 'coil');
  const make = elementId(part.id, 'no');
  const used = part.rest === undefined ? [make] : [make, elementId(part.id, 'nc')];
  switch (mode) {
    case 'open_coil':
      return [one(() => [{ kind: 'series', element: coil, ohms: null }])];
    case 'high_r_contact': {
      const burnt =
        (contact: string) =>
        (ohms: number): Change[] => [{ kind: 'series', element: contact, ohms }];
      return used.flatMap((contact) => [
        one(burnt(contact), grid, 0.7 / used.length),
        one(() => [{ kind: 'series', element: contact, ohms: null }], [], 0.3 / used.length),
      ]);
    }
    case 'stuck_on':
      return [one(() => [{ kind: 'stuck', region: part.id, state: 'on' }])];
    case 'stuck_off':
      return [one(() => [{ kind: 'stuck', region: part.id, state: 'off' }])];
    case 'intermittent':
      // It comes and goes; the machine is judged while it is gone.
      return used.map((contact) => one(() => [{ kind: 'series', element: contact, ohms: null }], [], 1 / used.length));
    default:
      return [];
  }
}
