import type { DrillView } from '@plugside/drill';
import { Button } from 'react-aria-components';
import { Switcher } from '../../editing/Switcher.tsx';
import type { RoomLink } from '../together/room-link.ts';

const SPEEDS = ['0.5', '1', '2', '4'] as const;

/** The drill's clock: stop it, let it run, faster or slower. */
export function ClockPanel({ link, view }: { link: RoomLink; view: DrillView }) {
  const speed = SPEEDS.find((one) => Number(one) === view.speed) ?? '1';
  const begun = view.timeS >= 1;
  return (
    <section className="panel" aria-labelledby="clock-name">
      <h2 id="clock-name" className="section-name">
        Clock
      </h2>
      <div className="panel-row">
        <Button
          className={`plain-button clock-button ${view.paused ? 'main-button' : ''}`}
          onPress={() => link.act({ do: view.paused ? 'resume' : 'pause' })}
        >
          {view.paused ? (begun ? 'Go on' : 'Begin the drill') : 'Stop the clock'}
        </Button>
        <Switcher
          label="Speed of the clock"
          value={speed}
          options={SPEEDS.map((value) => ({ value, text: `× ${value}` }))}
          onChange={(value) => link.act({ do: 'set speed', speed: Number(value) })}
        />
      </div>
    </section>
  );
}
