/** Everything that could be wrong with a machine, from the book: parts, wires, pins, and controls left in a wrong place. */

import { pinFaults, wireFaults } from '../machine/harness-faults.ts';
import type { Book, ControlSpec, Model } from '../machine/index.ts';
import { contentOf, type Fault, type FaultFamily } from '../parts/index.ts';

/** A family with its place in the list, or a control that somebody left where it should not be. */
export interface SuspectFamily {
  id: string;
  at: string;
  mode: string;
  weight: number;
  severities: number[];
  faults: (ohms: number) => Fault[];
  /** Controls out of the cab that stand otherwise on arrival. */
  controls?: Record<string, string>;
}

/** Weight of a control left wrong, beside a wire's 1 to 30: operator errors come first in proven systems (Kuphaldt V, ch. 8). */
const OPERATOR_WEIGHT = 12;

export function suspectFamilies(model: Model): SuspectFamily[] {
  const { book } = model;
  const families: FaultFamily[] = [
    ...book.parts.flatMap((part) => contentOf(part).faults),
    ...book.wires.flatMap((wire) => wireFaults(model, wire)),
    ...book.connectors.flatMap((connector) => connector.pins.flatMap((pin) => pinFaults(model, connector, pin))),
  ];
  const physical = families.map(
    (family, i): SuspectFamily => ({
      id: `${family.at}/${family.mode}/${i}`,
      at: family.at,
      mode: family.mode,
      weight: family.weight,
      severities: family.severities,
      faults: (ohms) => [family.fault(ohms)],
    }),
  );
  const operator = hiddenControls(book).flatMap((control) =>
    control.values
      .filter((value) => value !== control.initial)
      .map(
        (value): SuspectFamily => ({
          id: `${control.part}/operator/${value}`,
          at: control.part,
          mode: 'operator',
          weight: OPERATOR_WEIGHT,
          severities: [],
          faults: () => [],
          controls: { [control.id]: value },
        }),
      ),
  );
  return [...physical, ...operator];
}

/** Controls that the student does not see from the operator's place. */
export const hiddenControls = (book: Book): ControlSpec[] =>
  book.controls.filter((c) => !c.surroundings && !book.cab.includes(c.zone));
