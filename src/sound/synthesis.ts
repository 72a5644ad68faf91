/** Sounds worked out at run time from sines, noise and decay. Mono, 22 kHz, 16 bit, as WAV data. */
const RATE = 22_050;

type Wave = (seconds: number) => number;

/** A small generator of its own, so that a sound is the same each time. */
function noise(): () => number {
  let x = 0x2f6e2b1;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return (x >>> 0) / 2_147_483_648 - 1;
  };
}

const sine = (hertz: number, s: number): number => Math.sin(2 * Math.PI * hertz * s);
const decay = (s: number, half: number): number => (s < 0 ? 0 : 2 ** (-s / half));

/** Contacts of a relay: a bright tick and a duller one after it, the other way round when it falls out. */
export function click(): Wave {
  const hiss = noise();
  return (s) =>
    0.6 * hiss() * decay(s, 0.004) +
    0.5 * sine(1900, s) * decay(s, 0.006) +
    0.4 * sine(900, s - 0.012) * decay(s - 0.012, 0.008);
}

export function clunk(): Wave {
  const hiss = noise();
  return (s) =>
    0.8 * sine(95, s) * decay(s, 0.05) + 0.4 * sine(310, s) * decay(s, 0.02) + 0.3 * hiss() * decay(s, 0.01);
}

/** About eight strokes a second, as the book has it. */
export function chatter(): Wave {
  const one = clunk();
  return (s) => (s < 1.1 ? 0.8 * one(s % 0.125) : 0);
}

/** The starter against compression: four strokes a turn of the engine over two turns, at `rpm` of the crankshaft. */
export function cranking(rpm: number): Wave {
  const hiss = noise();
  const strokes = (rpm / 60) * 2;
  return (s) => {
    const labour = 0.55 + 0.45 * sine(strokes, s);
    return s < 1.5 ? labour * (0.35 * sine(strokes * 24, s) + 0.25 * sine(70, s) + 0.2 * hiss()) : 0;
  };
}

export function idling(): Wave {
  const hiss = noise();
  let low = 0;
  return (s) => {
    low += 0.08 * (hiss() - low);
    const fire = Math.max(0, sine(28, s));
    return 0.5 * fire * (sine(56, s) + 0.5 * sine(112, s)) + 0.8 * low;
  };
}

export const beep = (): Wave => (s) => (s < 0.35 ? 0.35 * sine(2400, s) : 0);
export const horn = (): Wave => (s) => (s < 0.6 ? 0.3 * (Math.sign(sine(410, s)) * 0.6 + sine(515, s)) : 0);

export function pop(): Wave {
  const hiss = noise();
  return (s) => 0.9 * hiss() * decay(s, 0.012) + 0.5 * sine(220, s) * decay(s, 0.03);
}

export function latch(): Wave {
  const hiss = noise();
  return (s) => 0.4 * hiss() * decay(s, 0.006) + 0.5 * sine(2600, s - 0.03) * decay(s - 0.03, 0.005);
}

export function cover(): Wave {
  const hiss = noise();
  return (s) =>
    0.4 * hiss() * decay(s, 0.03) +
    0.5 * sine(160, s) * decay(s, 0.06) +
    0.3 * sine(163, s - 0.1) * decay(s - 0.1, 0.05);
}

/** A data URI, since the page allows no blobs as media. */
export function wav(wave: Wave, seconds: number): string {
  const count = Math.round(seconds * RATE);
  const bytes = new DataView(new ArrayBuffer(44 + 2 * count));
  const word = (at: number, text: string): void => {
    for (let i = 0; i < text.length; i++) bytes.setUint8(at + i, text.charCodeAt(i));
  };
  word(0, 'RIFF');
  bytes.setUint32(4, 36 + 2 * count, true);
  word(8, 'WAVEfmt ');
  bytes.setUint32(16, 16, true);
  bytes.setUint16(20, 1, true);
  bytes.setUint16(22, 1, true);
  bytes.setUint32(24, RATE, true);
  bytes.setUint32(28, 2 * RATE, true);
  bytes.setUint16(32, 2, true);
  bytes.setUint16(34, 16, true);
  word(36, 'data');
  bytes.setUint32(40, 2 * count, true);
  for (let i = 0; i < count; i++) {
    const value = Math.max(-1, Math.min(1, 0.7 * wave(i / RATE)));
    bytes.setInt16(44 + 2 * i, Math.round(value * 32_767), true);
  }
  let text = '';
  for (let i = 0; i < bytes.byteLength; i++) text += String.fromCharCode(bytes.getUint8(i));
  return `data:audio/wav;base64,${btoa(text)}`;
}
