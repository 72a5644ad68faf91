/** The book's named states of the machine (states table of the electrical book), as settings that differ from rest. */
export const STATES: Record<string, string> = {
  off: '',
  isolated: 'iso=0',
  run: 'key=run',
  run_prime: 'key=run prime=1',
  crank: 'key=start',
  stall: 'key=start stall=1',
  crank_lights: 'key=start lights=head wlf=1 wlr=1 blower=3',
  crank_F: 'key=start lever=F',
  crank_seatoff: 'key=start seat=off',
  crank_nobrake: 'key=start pbrake=0',
  preheat: 'key=run heat=1',
  idle: 'key=run rpm=850',
  work: 'key=run rpm=2200 pbrake=0 hydsw=1 lever=F second=1 aux=plus',
  reverse: 'key=run rpm=1500 pbrake=0 hydsw=1 lever=R',
  lights: 'key=run rpm=2200 lights=head wlf=1 wlr=1 beacon=1 blower=3 hazard=0 turn=L',
  lights_stopped: 'key=run lights=head wlf=1 wlr=1 beacon=1 blower=3 hazard=0 turn=L',
};

export function settingsOf(text: string): Map<string, string> {
  return new Map(
    text
      .split(' ')
      .filter((word) => word !== '')
      .map((word): [string, string] => {
        const [name, value] = word.split('=');
        return [name, value];
      }),
  );
}

/** `run+wlf=1+blower=3`: a named state with more settings. */
export function stateText(name: string): string {
  const [base, ...more] = name.split('+');
  const known = STATES[base];
  if (known === undefined) throw new Error(`no such state in the book: ${base}`);
  return [known, ...more].join(' ').trim();
}
