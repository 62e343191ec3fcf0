import { TICKS_PER_S } from '@plugside/drill';
import { useEffect, useRef, useState } from 'react';
import { Button, Slider, SliderThumb, SliderTrack } from 'react-aria-components';
import { Switcher } from '../../editing/Switcher.tsx';
import { clockText } from '../words.ts';
import type { Mark } from './marks.ts';

const SPEEDS = ['1', '4', '10'] as const;
type Speed = (typeof SPEEDS)[number];
/** How often a running replay moves on [ms]. */
const BEAT_MS = 100;

interface ScrubberProps {
  timeS: number;
  lastS: number;
  marks: readonly Mark[];
  onTime(timeS: number): void;
}

/** Any moment of the drill: by hand, from mark to mark, or as it ran. */
export function Scrubber({ timeS, lastS, marks, onTime }: ScrubberProps) {
  const [speed, setSpeed] = useState<Speed>('4');
  const [runs, setRuns] = useState(false);
  const now = useRef(timeS);
  now.current = timeS;
  const tell = useRef(onTime);
  tell.current = onTime;
  useEffect(() => {
    if (!runs) return;
    let before = performance.now();
    const timer = setInterval(() => {
      const at = performance.now();
      const next = now.current + ((at - before) / 1000) * Number(speed);
      before = at;
      tell.current(Math.min(next, lastS));
      if (next >= lastS) setRuns(false);
    }, BEAT_MS);
    return () => clearInterval(timer);
  }, [runs, speed, lastS]);
  const deeds = marks.filter(({ kind }) => kind !== 'event').map(({ tick }) => tick / TICKS_PER_S);
  const before = deeds.filter((one) => one < timeS - 0.01).at(-1);
  const after = deeds.find((one) => one > timeS + 0.01);
  return (
    <section className="scrubber" aria-label="Time">
      <div className="scrubber-row">
        <Button
          className="plain-button main-button"
          onPress={() => {
            if (!runs && timeS >= lastS) onTime(0);
            setRuns(!runs);
          }}
        >
          {runs ? 'Stop' : 'Play'}
        </Button>
        <Switcher<Speed>
          label="Speed of the replay"
          value={speed}
          options={SPEEDS.map((value) => ({ value, text: `× ${value}` }))}
          onChange={setSpeed}
        />
        <Button
          className="plain-button"
          isDisabled={before === undefined}
          aria-label="To the action before"
          onPress={() => before !== undefined && onTime(before)}
        >
          ‹ Before
        </Button>
        <Button
          className="plain-button"
          isDisabled={after === undefined}
          aria-label="To the next action"
          onPress={() => after !== undefined && onTime(after)}
        >
          Next ›
        </Button>
        <p className="scrubber-time figures">
          <b>{clockText(timeS)}</b> of {clockText(lastS)}
        </p>
      </div>
      <Slider
        className="scrubber-slider"
        aria-label="Moment of the drill"
        minValue={0}
        maxValue={Math.max(lastS, 1)}
        step={0.5}
        value={timeS}
        onChange={(value) => {
          setRuns(false);
          onTime(Math.min(value as number, lastS));
        }}
      >
        <SliderTrack className="scrubber-track">
          <SliderThumb className="scrubber-thumb" />
        </SliderTrack>
      </Slider>
    </section>
  );
}
