export { standingOpen } from './close-out.ts';
export type { Finding, FindingCode } from './finding.ts';
export { type CriterionGrade, type Grade, gradeOf, parBill, soundWay, suspectsLine } from './grade.ts';
export { CRITERIA, type Criterion, DEFAULT_RUBRIC, type Rubric } from './rubric.ts';
export type { Stair, Staircase } from './staircase.ts';
