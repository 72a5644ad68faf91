export { accuracy, OVERLOAD, type Quantity, type Scaled, show } from './display.ts';
export {
  BLANK,
  INPUT_OHMS,
  JACK_FUSE_AMPS,
  jackOhms,
  jackVolts,
  LIVE_VOLTS,
  type MeterFunction,
  meterLoad,
  type Reading,
  readMeter,
  readOpenJack,
  SHUNT_OHMS,
} from './multimeter.ts';
export { type Glow, glowOf, LAMP_OHMS, lampLoad, readLamp } from './test-lamp.ts';
