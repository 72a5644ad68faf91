/** The meter's four buttons. Hold only keeps what is shown; the others change what is read, and stand in the log. */
import { CAPTURE_MS, isVolts, rangesOf } from '../../instruments/index.ts';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { ui } from '../state/ui.ts';
import { rangeWord } from '../words/leads.ts';
import { t } from '../words/words.ts';

export function Buttons({ session }: { session: Session }) {
  const { meterHold } = useObservable(ui);
  const { dial, range, zero, minMax } = session.bench;
  const ranges = rangesOf(dial);
  const isOff = dial === 'off';
  return (
    <fieldset class="meter-buttons" aria-label={t('meter.buttons')}>
      <Button
        print={t('meter.hold')}
        name={t('meter.holdHint')}
        pressed={meterHold}
        disabled={isOff}
        onPress={() => ui.update({ meterHold: !meterHold })}
      />
      <Button
        print={t('meter.minMax')}
        name={t('meter.minMaxHint', { ms: CAPTURE_MS })}
        pressed={minMax}
        disabled={!isVolts(dial) && dial !== 'amps'}
        onPress={() => session.act({ do: 'minmax', on: !minMax })}
      />
      <Button
        print={t('meter.range')}
        name={rangeWord(dial, range)}
        pressed={range !== null}
        disabled={ranges.length === 0}
        onPress={() => session.act({ do: 'range', to: next(range, ranges.length) })}
      />
      <Button
        print={t('meter.zero')}
        name={t('meter.zeroHint')}
        pressed={zero !== null}
        disabled={isOff}
        onPress={() => session.act({ do: 'zero', on: zero === null })}
      />
    </fieldset>
  );
}

/** Through all ranges from the finest, then the meter chooses again. */
const next = (range: number | null, count: number): number | null => {
  const up = range === null ? 0 : range + 1;
  return up < count ? up : null;
};

interface Props {
  print: string;
  name: string;
  pressed: boolean;
  disabled: boolean;
  onPress: () => void;
}

function Button({ print, name, pressed, disabled, onPress }: Props) {
  return (
    <button
      type="button"
      aria-label={`${print}. ${name}`}
      title={name}
      aria-pressed={pressed}
      aria-disabled={disabled}
      onClick={() => (disabled ? undefined : onPress())}
    >
      {print}
    </button>
  );
}
