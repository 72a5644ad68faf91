/**
 * Worked DC examples with printed answers. KUP: T. R. Kuphaldt, Lessons in Electric Circuits, Vol I (DC), by chapter.
 * UP2: OpenStax University Physics Volume 2. CP2e: OpenStax College Physics 2e. DOE: Fundamentals Handbook,
 * Electrical Science, Vol 1. "Arithmetic" rows follow from Ohm's law and stand here for the trade's sake.
 * An answer has as many digits as its source prints: it must agree within half of the last one.
 */

interface Example {
  topic: string;
  source: string;
  circuit: string;
  /** `V(1,2)=1.5 I(R1)=0.5m`: volts, amperes, watts, ohms. */
  printed: string;
}

export const EXAMPLES: Example[] = [
  {
    topic: 'series',
    source: 'KUP ch 5, "Simple series circuits", SPICE listing',
    circuit: 'V1 1 0 9; R1 1 2 3k; R2 2 3 10k; R3 3 0 5k',
    printed: 'I(R1)=0.5m V(1,2)=1.5 V(2,3)=5 V(3)=2.5',
  },
  {
    topic: 'parallel',
    source: 'KUP ch 5, "Simple parallel circuits", SPICE listing',
    circuit: 'V1 1 0 9; R1 1 0 10k; R2 1 0 2k; R3 1 0 1k',
    printed: 'I(R1)=0.9m I(R2)=4.5m I(R3)=9m I(V1)=14.4m',
  },
  {
    topic: 'parallel: total resistance',
    source: 'KUP ch 5, "Simple parallel circuits"',
    circuit: 'R1 1 0 10k; R2 1 0 2k; R3 1 0 1k',
    printed: 'R(1,0)=625',
  },
  {
    topic: 'series-parallel',
    source: 'KUP ch 7, "Analysis technique", SPICE listing',
    circuit: 'V1 1 0 24; R1 1 2 100; R2 1 2 250; R3 2 0 350; R4 2 0 200',
    printed: 'I(V1)=120.78m V(1,2)=8.627 V(2)=15.37 I(R1)=86.27m I(R2)=34.51m I(R3)=43.92m I(R4)=76.86m',
  },
  {
    topic: 'divider',
    source: 'KUP ch 6, "Voltage divider circuits"',
    circuit: 'V1 1 0 45; R1 1 2 5k; R2 2 3 10k; R3 3 0 7.5k',
    printed: 'I(R1)=2m V(1,2)=10 V(2,3)=20 V(3)=15',
  },
  {
    topic: 'divider at four times the volts',
    source: 'KUP ch 6, "Voltage divider circuits"',
    circuit: 'V1 1 0 180; R1 1 2 5k; R2 2 3 10k; R3 3 0 7.5k',
    printed: 'V(1,2)=40 V(2,3)=80 V(3)=60',
  },
  {
    topic: 'ladder',
    source: 'UP2 §10.2, figure before the combining example',
    circuit: 'V1 1 0 24; R1 1 2 7; R2 2 0 10; R3 2 3 6; R4 3 0 4',
    printed: 'I(R1)=2 V(1,2)=14 V(2)=10 V(2,3)=6 V(3)=4 I(R2)=1 I(R4)=1 P(R1)=28 P(R2)=10 P(R3)=6 P(R4)=4 P(V1)=48',
  },
  {
    topic: 'wire resistance before two loads',
    source: 'UP2 §10.2, "Combining Series and Parallel Circuits"',
    circuit: 'V1 1 0 12; R1 1 2 1; R2 2 0 6; R3 2 0 13',
    printed: 'I(R1)=2.35 V(1,2)=2.35 I(R2)=1.61 P(R2)=15.5',
  },
  {
    topic: 'powers in series',
    source: 'UP2 §10.2, "Equivalent Resistance, Current, and Power in a Series Circuit"',
    circuit: 'V1 1 0 9; R1 1 2 20; R2 2 3 20; R3 3 4 20; R4 4 5 20; R5 5 0 10',
    printed: 'I(R1)=0.1 V(1,2)=2 V(4,5)=2 V(5)=1 P(V1)=0.9',
  },
  {
    topic: 'powers in parallel',
    source: 'UP2 §10.2, "Analysis of a Parallel Circuit"',
    circuit: 'V1 1 0 3; R1 1 0 1; R2 1 0 2; R3 1 0 2',
    printed: 'I(V1)=6.00 I(R1)=3.00 I(R2)=1.50 I(R3)=1.50 P(R1)=9.00 P(R2)=4.50 P(R3)=4.50 P(V1)=18.00',
  },
  {
    topic: 'two sources',
    source: 'KUP ch 10, "Branch current method" and "Mesh current method"',
    circuit: 'V1 1 0 28; R1 1 n 4; R2 n 0 2; R3 n 3 1; V2 3 0 7',
    printed: 'V(n)=8 I(R1)=5 I(R2)=4 I(R3)=1 I(V2)=-1 V(1,n)=20 V(n,3)=1',
  },
  {
    topic: 'superposition: 28 V alone',
    source: 'KUP ch 10, "Superposition Theorem"',
    circuit: 'V1 1 0 28; R1 1 n 4; R2 n 0 2; R3 n 0 1',
    printed: 'V(1,n)=24 V(n)=4 I(R1)=6 I(R2)=2 I(R3)=4',
  },
  {
    topic: 'superposition: 7 V alone',
    source: 'KUP ch 10, "Superposition Theorem"',
    circuit: 'R1 0 n 4; R2 n 0 2; R3 n 3 1; V2 3 0 7',
    printed: 'V(n)=4 V(3,n)=3 I(R1)=-1 I(R2)=2 I(R3)=-3',
  },
  {
    topic: 'Thevenin: open terminals',
    source: 'KUP ch 10, "Thevenin\'s Theorem"',
    circuit: 'V1 1 0 28; R1 1 n 4; R3 n 3 1; V2 3 0 7',
    printed: 'V(n)=11.2 R(n,0)=0.8',
  },
  {
    topic: 'Thevenin: load on the equivalent',
    source: 'KUP ch 10, "Thevenin\'s Theorem"',
    circuit: 'V1 n 0 11.2 0.8; R2 n 0 2',
    printed: 'V(n)=8 I(R2)=4',
  },
  {
    topic: 'Norton: load on the equivalent',
    source: 'KUP ch 10, "Norton\'s Theorem"',
    circuit: 'I1 0 n 14; R1 n 0 0.8; R2 n 0 2',
    printed: 'V(n)=8 I(R2)=4',
  },
  {
    topic: 'greatest power in the load',
    source: 'KUP ch 10, "Maximum Power Transfer Theorem"',
    circuit: 'V1 n 0 11.2 0.8; R2 n 0 0.8',
    printed: 'P(R2)=39.2',
  },
  {
    topic: 'Millman: three branches',
    source: 'KUP ch 10, "Millman\'s Theorem"',
    circuit: 'V1 1 0 28; R1 1 n 4; R2 n 0 2; R3 n 3 1; V2 3 0 7',
    printed: 'R(n,0)=571.43m V(n)=8',
  },
  {
    topic: 'two unknown nodes',
    source: 'KUP ch 10, "Node voltage method", SPICE listing',
    circuit: 'V1 a 0 10; R1 a 1 2; R2 1 0 4; R3 1 2 2.5; R4 2 0 5; R5 2 b 1; V2 b 0 -4',
    printed: 'V(1)=3.8095 V(2)=-1.5476',
  },
  {
    topic: 'balanced bridge: Rx = 0.625 x 2500 ohm',
    source: 'CP2e §21.5, problem (R2/R1 = 0.625)',
    circuit: 'V1 1 0 10; R1 1 2 1000; R2 2 0 625; R3 1 3 2500; Rx 3 0 1562.5; Rg 2 3 100',
    printed: 'V(2,3)=0.000000 I(Rg)=0.000000',
  },
  {
    topic: 'two batteries opposed in one loop',
    source: 'UP2 §10.3, 2nd example (R3 = 20 ohm as in its figure and its powers)',
    circuit: 'V1 1 0 24; R1 1 2 10; R2 2 3 30; V2 3 4 12; R3 4 0 20',
    printed: 'I(R1)=0.20 P(R1)=0.40 P(R2)=1.20 P(R3)=0.80 P(V2)=-2.40 P(V1)=4.80',
  },
  {
    topic: 'battery internal resistance, light load',
    source: 'UP2 §10.1, example',
    circuit: 'V1 1 0 12 0.1; R1 1 0 10',
    // Printed 11.90 V, rounded up from 11.88: three digits are left.
    printed: 'I(R1)=1.188 V(1)=11.9',
  },
  {
    topic: 'battery internal resistance, heavy load',
    source: 'UP2 §10.1, example',
    circuit: 'V1 1 0 12 0.1; R1 1 0 0.5',
    printed: 'I(R1)=20.00 V(1)=10.00 P(R1)=200',
  },
  {
    topic: 'battery internal resistance grown to 0.5 ohm',
    source: 'UP2 §10.1, example',
    circuit: 'V1 1 0 12 0.5; R1 1 0 0.5',
    printed: 'I(R1)=12.00 V(1)=6.00 P(R1)=72.00',
  },
  {
    topic: 'starter, good terminals',
    source: 'CP2e §21.2, problem',
    circuit: 'V1 1 0 12 0.01; R1 1 0 0.05',
    printed: 'I(R1)=200 V(1)=10.0 P(R1)=2000',
  },
  {
    topic: 'the same starter behind a corroded terminal',
    source: 'CP2e §21.2, problem',
    circuit: 'V1 1 0 12 0.01; Rc 1 2 0.09; R1 2 0 0.05',
    printed: 'I(R1)=80.0 V(2)=4.0 P(R1)=320',
  },
  {
    topic: 'real battery under load',
    source: 'KUP ch 11, "Battery construction"',
    circuit: 'V1 1 0 10 0.2; R1 1 0 1',
    printed: 'I(R1)=8.333 V(1)=8.333',
  },
  {
    topic: 'real battery shorted',
    source: 'KUP ch 11, "Battery construction"',
    circuit: 'V1 1 0 10 0.2; R1 1 0 1u',
    printed: 'I(R1)=50.00',
  },
  ...agingBattery(),
  {
    topic: 'battery taking charge',
    source: 'CP2e §21.2, problem (12.0 V emf, 0.375 ohm, 8.00 A in)',
    circuit: 'I1 0 1 8; V1 1 0 12 0.375; R1 1 0 1000M',
    printed: 'V(1)=15.0',
  },
  ...twoLoads(),
  {
    topic: 'voltmeter loading: true volts',
    source: 'KUP ch 8, "Voltmeter impact on measured circuit"',
    circuit: 'V1 1 0 24; R1 1 2 1k; R2 2 0 1k',
    printed: 'V(2)=12',
  },
  {
    topic: 'voltmeter loading: 10 Mohm on 250 Mohm',
    source: 'KUP ch 8, "Voltmeter impact on measured circuit"',
    circuit: 'V1 1 0 24; R1 1 2 250M; R2 2 0 250M; Rm 2 0 10M',
    printed: 'V(2)=0.8889',
  },
  {
    topic: 'voltmeter loading: 250 Mohm with 10 Mohm beside it',
    source: 'KUP ch 8, "Voltmeter impact on measured circuit"',
    circuit: 'R2 2 0 250M; Rm 2 0 10M',
    printed: 'R(2,0)=9.615M',
  },
  {
    topic: 'ammeter burden: true current',
    source: 'KUP ch 8, "Ammeter impact on measured circuit"',
    circuit: 'V1 1 0 2; R1 1 0 3; R2 1 0 1.5',
    printed: 'I(R1)=666.7m I(R2)=1.333',
  },
  {
    topic: 'ammeter burden: meter in the 3 ohm branch',
    source: 'KUP ch 8, "Ammeter impact on measured circuit"',
    circuit: 'V1 1 0 2; Rm 1 2 0.5; R1 2 0 3',
    printed: 'I(R1)=571.43m',
  },
  {
    topic: 'ammeter burden: meter in the 1.5 ohm branch',
    source: 'KUP ch 8, "Ammeter impact on measured circuit"',
    circuit: 'V1 1 0 2; Rm 1 2 0.5; R2 2 0 1.5',
    printed: 'I(R2)=1',
  },
  {
    topic: 'shunt',
    source: 'KUP ch 8, "Ammeter design", SPICE listing',
    circuit: 'V1 1 0 12; Rs 1 2 1; R1 2 0 15k',
    printed: 'V(1,2)=0.7999m I(R1)=0.7999m',
  },
  ...meterDesign(),
  {
    topic: 'wire sizing: 10 V drop over both wires',
    source: 'KUP ch 12, "Specific resistance" (25 A, 0.2 ohm a wire)',
    circuit: 'V1 1 0 230; Ra 1 2 0.2; Rl 2 3 8.8; Rb 3 0 0.2',
    printed: 'I(Rl)=25 V(2,3)=220',
  },
  {
    topic: 'wire sizing: short circuit at the end of AWG 14',
    // Printed 20.352 A, from ohms with more digits than the 5.651 that it prints.
    source: 'KUP ch 12, "Specific resistance" (2300 ft each way, 5.651 ohm a wire)',
    circuit: 'V1 1 0 230; Ra 1 2 5.651; Rb 2 0 5.651',
    printed: 'I(Ra)=20.35',
  },
  {
    topic: 'headlamp, hot',
    source: 'CP2e §20.2 and §20.4',
    circuit: 'V1 1 0 12.0; R1 1 0 4.80',
    printed: 'I(R1)=2.50 P(R1)=30.0',
  },
  {
    topic: 'the same headlamp, cold: inrush',
    source: 'CP2e §20.2 and §20.4',
    circuit: 'V1 1 0 12.0; R1 1 0 0.350',
    // Printed 411 W.
    printed: 'I(R1)=34.3 P(R1)=411',
  },
  {
    topic: 'three resistors on 120 V',
    source: 'DOE, ES-02 p 28',
    circuit: 'V1 1 0 120; R1 1 2 40; R2 2 3 60; R3 3 0 100',
    printed: 'I(R1)=0.6',
  },
  {
    topic: 'weak relay feed: 90 ohm coil behind 100 ohm stays under its 7.2 V',
    source: 'arithmetic; 90 ohm and 7.2 V from a mini-relay datasheet',
    circuit: 'V1 1 0 12.6; R1 1 2 100; Rcoil 2 0 90',
    printed: 'V(2)=5.97',
  },
  {
    topic: 'ghost volts: 1 Mohm of leakage read with a 10 Mohm meter',
    source: 'arithmetic',
    circuit: 'V1 1 0 12.6; R1 1 2 1M; Rm 2 0 10M',
    printed: 'V(2)=11.45',
  },
  {
    topic: 'ghost volts gone with a 90 ohm coil on the wire',
    source: 'arithmetic',
    circuit: 'V1 1 0 12.6; R1 1 2 1M; Rm 2 0 10M; Rcoil 2 0 90',
    printed: 'V(2)=1.1m',
  },
  ...healthyCrank(),
];

/** A battery that grows old under the same 100 ohm load: KUP ch 11, "Battery ratings". */
function agingBattery(): Example[] {
  const ages = [
    ['13.2 0.1', '13.187'],
    ['13.0 5', '12.381'],
    ['11.5 20', '9.583'],
    ['7.5 50', '5'],
  ];
  return ages.map(([battery, volts]) => ({
    topic: `ageing battery ${battery.replace(' ', ' V, ')} ohm`,
    source: 'KUP ch 11, "Battery ratings"',
    circuit: `V1 1 0 ${battery}; R1 1 0 100`,
    printed: `V(1)=${volts}`,
  }));
}

/** r from the fall of 2.00 V for 5.00 A more; the emf remains unknown: UP2 §10.1, problem. */
function twoLoads(): Example[] {
  return ['12', '24'].map((emf) => ({
    topic: `r from two loads: 0.400 ohm, with ${emf} V behind it`,
    source: 'UP2 §10.1, problem (-2.00 V for +5.00 A)',
    circuit: `V1 1 0 ${emf} 0.400; I1 1 0 5.00; R1 1 0 1000M`,
    printed: `V(1)=${Number(emf) - 2}.00`,
  }));
}

/** Full scale of a movement of 1 mA and 500 ohm: KUP ch 8, "Voltmeter design" and "Ammeter design". */
function meterDesign(): Example[] {
  const multipliers = [
    ['10', '9.5k'],
    ['100', '99.5k'],
    ['1000', '999.5k'],
  ];
  const shunts = [
    ['0.1', '5.05051'],
    ['1', '500.5005m'],
    ['10', '50.005m'],
    ['100', '5.00005m'],
  ];
  return [
    ...multipliers.map(([volts, ohms]) => ({
      topic: `multiplier for ${volts} V full scale`,
      source: 'KUP ch 8, "Voltmeter design" (movement 1 mA, 500 ohm)',
      circuit: `V1 1 0 ${volts}; R1 1 2 ${ohms}; Rm 2 0 500`,
      printed: 'I(Rm)=1.000m',
    })),
    ...shunts.map(([amps, ohms]) => ({
      topic: `shunt for ${amps} A full scale`,
      source: 'KUP ch 8, "Ammeter design" (movement 1 mA, 500 ohm)',
      circuit: `I1 0 1 ${amps}; Rs 1 0 ${ohms}; Rm 1 0 500`,
      printed: 'I(Rm)=1.0000m',
    })),
  ];
}

/** 12.6 V behind 5 mohm, 0.6 mohm of plus cable, 0.4 mohm of ground: 0.20 V per 100 A is kept; then with a bad terminal. */
function healthyCrank(): Example[] {
  const way = (amps: number): string => `V1 p m 12.6 0.005; Rp t s 0.6m; Rg c m 0.4m; I1 s c ${amps}; Rref m 0 1`;
  const healthy = [
    [200, 'V(p,m)=11.6 V(p,s)=0.12 V(c,m)=0.08 V(s,c)=11.4'],
    [300, 'V(p,m)=11.1 V(p,s)=0.18 V(c,m)=0.12 V(s,c)=10.8'],
    [400, 'V(p,m)=10.6 V(p,s)=0.24 V(c,m)=0.16 V(s,c)=10.2'],
  ] as const;
  const limits = [
    ['light and medium duty', '2m', '0.6'],
    ['heavy duty', '1m', '0.3'],
  ];
  return [
    ...healthy.map(([amps, printed]) => ({
      topic: `healthy crank at ${amps} A`,
      source: 'arithmetic; 0.20 V per 100 A of SAE J541 light duty',
      circuit: way(amps).replace('Rp t', 'Rp p'),
      printed,
    })),
    {
      topic: 'the same at 200 A behind a terminal of 10 mohm',
      source: 'arithmetic',
      circuit: `Rt p t 10m; ${way(200)}`,
      printed: 'V(p,t)=2.0 V(s,c)=9.4',
    },
    ...limits.map(([duty, ohms, volts]) => ({
      topic: `greatest loss of the start circuit at 300 A, ${duty}`,
      source: 'SAE J541 through a secondary text',
      circuit: `I1 0 1 300; R1 1 0 ${ohms}`,
      printed: `V(1)=${volts}`,
    })),
  ];
}
