export { LEAK_SIEMENS } from './elimination.ts';
export { type Bridge, Network } from './network.ts';
export { once } from './once.ts';
export { makePlan, type Plan, REFERENCE } from './plan.ts';
