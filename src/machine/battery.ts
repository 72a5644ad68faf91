/** Rest voltage against state of charge. */

/**
 * Rested open-circuit volts of a 12 V lead-acid battery, by fraction of charge: table credited to BCI
 * (12.65, 12.45, 12.24, 12.06, 11.89 V; seen in secondary texts).
 */
const REST_VOLTS: readonly [fraction: number, volts: number][] = [
  [0, 11.89],
  [0.25, 12.06],
  [0.5, 12.24],
  [0.75, 12.45],
  [1, 12.65],
];

/** Volts at rest for a fraction of charge, straight lines between the table's rows; below empty it collapses. */
export function restVolts(fraction: number): number {
  if (fraction >= 1) return REST_VOLTS[REST_VOLTS.length - 1][1];
  if (fraction <= 0) return Math.max(0, REST_VOLTS[0][1] + fraction * 20);
  const upper = REST_VOLTS.findIndex(([f]) => f >= fraction);
  const [f0, v0] = REST_VOLTS[upper - 1];
  const [f1, v1] = REST_VOLTS[upper];
  return v0 + ((fraction - f0) / (f1 - f0)) * (v1 - v0);
}

/** Fraction of charge that rests at these volts; the inverse of `restVolts`. */
export function chargeAt(volts: number): number {
  if (volts >= REST_VOLTS[REST_VOLTS.length - 1][1]) return 1;
  if (volts <= REST_VOLTS[0][1]) return (volts - REST_VOLTS[0][1]) / 20;
  const upper = REST_VOLTS.findIndex(([, v]) => v >= volts);
  const [f0, v0] = REST_VOLTS[upper - 1];
  const [f1, v1] = REST_VOLTS[upper];
  return f0 + ((volts - v0) / (v1 - v0)) * (f1 - f0);
}
