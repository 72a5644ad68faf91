/** The settled network as SPICE text, so that any SPICE can check it. */
import { LEAK_SIEMENS, REFERENCE } from '../circuit/index.ts';
import { nodeOf } from './model.ts';
import type { World } from './world.ts';

export interface NetlistLeads {
  red: string;
  black: string;
  ohms: number;
}

/** Every element with its present conductance and Norton current; a comment names the node of each point. */
export function netlistOf(world: World, title: string, leads?: NetlistLeads): string {
  const { model, electrics } = world;
  const { network } = electrics;
  const name = (node: number) => (node === REFERENCE ? '0' : `n${node}`);
  const lines = [`* ${title}`, `* point ${model.book.reference} = 0`];
  for (const [node, point] of model.points.entries()) lines.push(`* point ${point} = ${name(node)}`);
  for (let e = 0; e < network.plan.edgeCount; e++) {
    const a = name(network.plan.edgeA[e]);
    const b = name(network.plan.edgeB[e]);
    const g = network.siemens[e];
    const id = model.elements[e]?.id ?? 'excitation';
    if (a !== b && g > 0) lines.push(`R${e} ${a} ${b} ${1 / g} ; ${id}`);
    if (a !== b && network.norton[e] !== 0) lines.push(`I${e} ${b} ${a} DC ${network.norton[e]}`);
  }
  network.bridges.forEach((bridge, k) => {
    if (bridge.a !== bridge.b) lines.push(`RB${k} ${name(bridge.a)} ${name(bridge.b)} ${1 / bridge.siemens} ; bridge`);
  });
  if (leads !== undefined) {
    lines.push(`RMETER ${name(nodeOf(model, leads.red))} ${name(nodeOf(model, leads.black))} ${leads.ohms} ; meter`);
  }
  for (const node of model.points.keys()) lines.push(`RL${node} ${name(node)} 0 ${1 / LEAK_SIEMENS}`);
  lines.push('.op', '.end');
  return `${lines.join('\n')}\n`;
}
