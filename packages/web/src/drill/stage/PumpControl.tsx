import type { PumpView } from '@plugside/drill';
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { QuantityField } from '../../editing/QuantityField.tsx';
import { stepped } from '../../editing/quantity-entry.ts';
import { Switcher } from '../../editing/Switcher.tsx';
import { useUnits } from '../../editing/use-units.ts';
import { gearMark, governorMark } from './marks.ts';
import { StageRefusal } from './StageRefusal.tsx';
import { useStage } from './stage-context.ts';

const GOVERNOR = { min: 0, max: 400, step: { us: 5, si: 0.25 } };
const THROTTLE = { min: 0.3, max: 1.1 };

const soundWords: Readonly<Record<PumpView['sounds'], string>> = {
  quiet: 'Engine idles, pump stands still.',
  pumping: 'Pump runs smoothly.',
  rattling: 'Pump rattles: air in it, or it wants more water than it gets.',
  'no water': 'Pump runs dry.',
};

/** A pump: in gear, and its governor or throttle. */
export function PumpControl({ pump }: { pump: PumpView }) {
  const { act, marks } = useStage();
  const units = useUnits();
  const { rigId, label, inGear, setting, sounds } = pump;
  const set = setting.mode === 'governed' ? setting.pdpPsi : 50;
  const speed = setting.mode === 'throttled' ? setting.speedFraction : 0.5;
  // What the hand has asked for stands until the drill has answered with it.
  const [asked, setAsked] = useState<number | null>(null);
  const shown = asked ?? set;
  useEffect(() => {
    if (asked !== null && Math.abs(set - asked) < 0.1) setAsked(null);
  }, [asked, set]);
  const govern = (pdpPsi: number) => {
    setAsked(pdpPsi);
    act({ do: 'set governor', rig: rigId, pdpPsi });
  };
  const throttle = (to: number) =>
    act({
      do: 'set throttle',
      rig: rigId,
      speedFraction: Math.min(THROTTLE.max, Math.max(THROTTLE.min, Math.round(to * 100) / 100)),
    });
  const governed = setting.mode !== 'throttled';
  const step = (steps: number) => govern(stepped(shown, steps, 'pressure', units.system, GOVERNOR));
  const stepText = (steps: number) => {
    const by = GOVERNOR.step[units.system] * Math.abs(steps);
    return `${steps < 0 ? '−' : '+'}${by}`;
  };
  return (
    <div className="pump-control">
      <div className="control-head" data-marked={marks.has(gearMark(rigId)) || undefined}>
        <span className="control-name">{label}, pump</span>
        <Switcher
          label={`${label}, pump`}
          value={inGear ? 'in' : 'out'}
          options={[
            { value: 'out', text: 'Out of gear' },
            { value: 'in', text: 'In gear' },
          ]}
          onChange={(value) => act({ do: 'pump in gear', rig: rigId, inGear: value === 'in' })}
        />
      </div>
      <StageRefusal mark={gearMark(rigId)} />
      <p className={sounds === 'rattling' || sounds === 'no water' ? 'tone-warning' : 'soft-text'}>
        {soundWords[sounds]}
      </p>
      <div className="control" data-marked={marks.has(governorMark(rigId)) || undefined}>
        <div className="control-head">
          <Switcher
            label={`${label}, pressure held by`}
            value={governed ? 'governor' : 'throttle'}
            options={[
              { value: 'governor', text: 'Governor' },
              { value: 'throttle', text: 'Throttle' },
            ]}
            onChange={(value) => (value === 'governor' ? govern(set) : throttle(speed))}
          />
        </div>
        {governed ? (
          <div className="stepper">
            {[-2, -1].map((steps) => (
              <Button
                key={steps}
                className="stop-button"
                aria-label={`${label} governor: ${stepText(steps)}`}
                onPress={() => step(steps)}
              >
                {stepText(steps)}
              </Button>
            ))}
            <QuantityField
              label={`${label} governor`}
              value={shown}
              kind="pressure"
              size="figure"
              onChange={govern}
              {...GOVERNOR}
            />
            {[1, 2].map((steps) => (
              <Button
                key={steps}
                className="stop-button"
                aria-label={`${label} governor: ${stepText(steps)}`}
                onPress={() => step(steps)}
              >
                {stepText(steps)}
              </Button>
            ))}
          </div>
        ) : (
          <div className="stepper">
            <Button
              className="stop-button"
              onPress={() => throttle(speed - 0.05)}
              aria-label={`${label} throttle: less`}
            >
              −5 %
            </Button>
            <span className="stepper-value figures">
              <b>{Math.round(speed * 100)}</b> <span className="unit">% of full speed</span>
            </span>
            <Button
              className="stop-button"
              onPress={() => throttle(speed + 0.05)}
              aria-label={`${label} throttle: more`}
            >
              +5 %
            </Button>
          </div>
        )}
        {!inGear && <p className="soft-text">Takes hold once the pump is in gear.</p>}
        <StageRefusal mark={governorMark(rigId)} />
      </div>
    </div>
  );
}
