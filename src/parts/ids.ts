/** How things of a machine are named. */

/** A place that can be probed or joined, named as in the book: `X7.3.a`, `GND1.L`, `K1.86`, `206D@to`. */
export type PointId = string;

/** A network element: `K1.coil` (part), `W:206D` (wire), `L:206D@to` (a wire's lug or crimp), `X:X3.3` (pin). */
export type ElementId = string;

/** A group of states of which exactly one holds: `K1`, `F10`, `A1.CE`. */
export type RegionId = string;
