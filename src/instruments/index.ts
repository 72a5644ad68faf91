export { accuracy, OVERLOAD, type Quantity, rangeName, type Scaled, show } from './display.ts';
export { CAPTURE_MS, MinMax } from './min-max.ts';
export {
  BLANK,
  INPUT_OHMS,
  isVolts,
  JACK_FUSE_AMPS,
  jackVolts,
  LEAD_OHMS,
  LOW_OHMS,
  type MeterFunction,
  meterLoad,
  QUANTITY_OF,
  type Reading,
  rangesOf,
  readMeter,
  readOpenJack,
  type Setting,
  SHUNT_OHMS,
} from './multimeter.ts';
export { DIODE_AMPS, LIVE_VOLTS, TEST_VOLTS } from './test-current.ts';
export { type Glow, glowOf, LAMP_OHMS, lampLoad, readLamp } from './test-lamp.ts';
