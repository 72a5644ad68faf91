export * from './book.ts';
export { chargeAt, restVolts } from './battery.ts';
export { compileGuard, type Test, type View } from './guard.ts';
export { buildModel, hasLug, lugPoint, type Model, type ModelElement, nodeOf } from './model.ts';
export { type NetlistLeads, netlistOf } from './netlist.ts';
export { copyState, type MachineState, restingState } from './state.ts';
export { type Sampler, World } from './world.ts';
