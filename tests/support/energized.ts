/** What is on in a machine, under the names of the electrical book's tables: relays, starter, outputs, networks. */
import type { World } from '../../src/machine/index.ts';

const same = (ids: string[]): [string, string][] => ids.map((id) => [id, id]);

/** Name in the book's tables, and our region. */
const ENERGIZED: [name: string, region: string][] = [
  ...same(['K1', 'K2', 'K3', 'K4', 'K5', 'K6', 'K7', 'K8', 'K9', 'K10', 'K11', 'K12', 'M1', 'SPD']),
  ...['A1_RUN', 'A1_CE', 'A1_FP', 'A2_RUN', 'A3_RUN'].map((id): [string, string] => [id, id.replace('_', '.')]),
  ...['Y1', 'Y2', 'Y3', 'Y4', 'Y5', 'Y6'].map((id): [string, string] => [id, `A3.${id}`]),
  ['CAN', 'CAN.A1A3'],
  ['CAN_A1A2', 'CAN.A1A2'],
  ['CAN_A2A3', 'CAN.A2A3'],
  ['ALT', 'G2'],
];

const ON = ['on', 'in', 'working', 'whole', 'charging'];

export function energizedIn(world: World): string[] {
  const on = ENERGIZED.filter(([, region]) => ON.includes(world.stateOf(region)));
  return on.map(([name]) => name).sort();
}
