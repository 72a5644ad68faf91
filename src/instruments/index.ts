export { accuracy, OVERLOAD, type Quantity, rangeName, type Scaled, show } from './display.ts';
export {
  BLANK,
  INPUT_OHMS,
  JACK_FUSE_AMPS,
  jackVolts,
  LOW_OHMS,
  type MeterFunction,
  meterLoad,
  type Reading,
  readMeter,
  readOpenJack,
  type Setting,
  SHUNT_OHMS,
} from './multimeter.ts';
export { DIODE_AMPS, LIVE_VOLTS, TEST_VOLTS } from './test-current.ts';
export { type Glow, glowOf, LAMP_OHMS, lampLoad, readLamp } from './test-lamp.ts';
