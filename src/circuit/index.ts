export { type Bridge, LEAK_SIEMENS, Network } from './network.ts';
export { makePlan, type Plan, REFERENCE } from './plan.ts';
