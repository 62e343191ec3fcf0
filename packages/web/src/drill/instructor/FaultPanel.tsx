import { type DrillScene, type DrillView, faultWords, TICKS_PER_S } from '@plugside/drill';
import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { Switcher } from '../../editing/Switcher.tsx';
import type { RoomLink } from '../together/room-link.ts';
import { armed, faultChoices, sameFault } from './fault-choices.ts';

const DELAYS = ['0', '15', '60'] as const;
type Delay = (typeof DELAYS)[number];

interface FaultPanelProps {
  link: RoomLink;
  scene: DrillScene;
  view: DrillView;
}

/** Makes things go wrong, and puts them right again. The crews see only what follows. */
export function FaultPanel({ link, scene, view }: FaultPanelProps) {
  const [delay, setDelay] = useState<Delay>('0');
  const choices = useMemo(() => faultChoices(scene), [scene]);
  const faults = view.truth?.state.faults ?? [];
  return (
    <section className="panel" aria-labelledby="faults-name">
      <h2 id="faults-name" className="section-name">
        Make something go wrong
      </h2>
      {faults.length > 0 && (
        <ul className="fault-list">
          {faults.map((fault) => {
            const leftS = ((fault.atTick ?? 0) - view.tick) / TICKS_PER_S;
            return (
              <li key={fault.id}>
                <span className="tone-warning">
                  {faultWords(scene, fault)}
                  {leftS > 0 && <span className="figures"> in {Math.ceil(leftS)} s</span>}
                </span>
                <Button
                  className="plain-button"
                  aria-label={`Put right: ${faultWords(scene, fault)}`}
                  onPress={() => link.act({ do: 'lift fault', fault: fault.id })}
                >
                  Put right
                </Button>
              </li>
            );
          })}
        </ul>
      )}
      <div className="panel-row">
        <Switcher<Delay>
          label="When it strikes"
          value={delay}
          options={DELAYS.map((value) => ({
            value,
            text: value === '0' ? 'Now' : `In ${value} s`,
          }))}
          onChange={setDelay}
        />
      </div>
      <ul className="fault-choices">
        {choices.map(({ piece, options }) => (
          <li key={piece}>
            <span className="fault-piece">{piece}</span>
            <span className="fault-options">
              {options.map((option) => {
                const on = faults.some((fault) => sameFault(fault, option.fault));
                return (
                  <Button
                    key={option.key}
                    className="plain-button"
                    isDisabled={on}
                    aria-label={`${piece}: ${option.text}`}
                    onPress={() => {
                      const atTick =
                        delay === '0' ? undefined : view.tick + Number(delay) * TICKS_PER_S;
                      link.act({ do: 'arm fault', fault: armed(option, view.tick, atTick) });
                    }}
                  >
                    {option.text}
                  </Button>
                );
              })}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
