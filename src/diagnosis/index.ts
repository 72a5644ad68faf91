export { type Belief, beliefOver, bothBeliefs, type Prior, type Step } from './belief.ts';
export { classesBetween, classOf, limitFor, type Yardstick } from './classes.ts';
export { type Suspect, suspectsOf } from './complaint.ts';
export { hiddenControls, type SuspectFamily, suspectFamilies } from './suspects.ts';
