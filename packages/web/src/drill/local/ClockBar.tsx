import type { DrillView } from '@plugside/drill';
import { Button } from 'react-aria-components';
import { Switcher } from '../../editing/Switcher.tsx';
import { clockText } from '../words.ts';
import type { LocalLink } from './local-link.ts';

interface ClockBarProps {
  view: DrillView;
  link: LocalLink;
  onReset(): void;
}

/** The drill's clock: pause, speed, begin anew. */
export function ClockBar({ view, link, onReset }: ClockBarProps) {
  return (
    <div className="clock-bar">
      <p className="clock figures">
        <span className="hidden-text">Drill time</span>
        <b>{clockText(view.timeS)}</b>
      </p>
      <Button
        className="plain-button pause-button"
        onPress={() => link.clock({ do: view.paused ? 'resume' : 'pause' })}
      >
        {view.paused ? 'Go on' : 'Pause'}
      </Button>
      <Switcher
        label="Speed of the drill"
        value={String(view.speed)}
        options={[
          { value: '1', text: '1×', spoken: 'As in life' },
          { value: '2', text: '2×', spoken: 'Twice as fast' },
          { value: '4', text: '4×', spoken: 'Four times as fast' },
        ]}
        onChange={(speed) => link.clock({ do: 'set speed', speed: Number(speed) })}
      />
      <Button className="plain-button" onPress={onReset}>
        Begin anew
      </Button>
    </div>
  );
}
