import type { ValveView } from '@plugside/drill';
import { useState } from 'react';
import {
  Button,
  Checkbox,
  Label,
  Slider,
  SliderOutput,
  SliderThumb,
  SliderTrack,
} from 'react-aria-components';
import { Switcher } from '../../editing/Switcher.tsx';
import { valveMark } from './marks.ts';
import { StageRefusal } from './StageRefusal.tsx';
import { useStage } from './stage-context.ts';
import { isSwitch, openingWord, slowMoveS } from './valve-words.ts';

interface ValveControlProps {
  valve: ValveView;
  name: string;
}

/** One valve, handle or bale: where it stands, where the hand is taking it, how fast. */
export function ValveControl({ valve, name }: ValveControlProps) {
  const { act, marks } = useStage();
  const { id, kind, opening, target } = valve;
  const [slowly, setSlowly] = useState(true);
  const [dragged, setDragged] = useState<number | null>(null);
  const mark = valveMark(id);
  const move = (to: number) => {
    setDragged(null);
    act({
      do: 'set valve',
      valve: id,
      opening: to,
      ...(slowly && to !== opening ? { overS: slowMoveS(kind, opening, to) } : {}),
    });
  };
  const moves = Math.abs(target - opening) > 0.005;
  if (isSwitch(kind)) {
    return (
      <div className="control" data-marked={marks.has(mark) || undefined}>
        <div className="control-head">
          <span className="control-name">{name}</span>
          <Switcher
            label={name}
            value={target > 0.5 ? 'open' : 'shut'}
            options={[
              { value: 'shut', text: 'Shut' },
              { value: 'open', text: 'Open' },
            ]}
            onChange={(value) => move(value === 'open' ? 1 : 0)}
          />
        </div>
        <StageRefusal mark={mark} />
      </div>
    );
  }
  const isHandle = kind === 'assist handle';
  return (
    <div className="control" data-marked={marks.has(mark) || undefined}>
      <Slider
        className="lever"
        value={Math.round((dragged ?? target) * 100)}
        minValue={0}
        maxValue={100}
        step={5}
        onChange={setDraggedShare(setDragged)}
        onChangeEnd={(value) => move(value / 100)}
      >
        <div className="control-head">
          <Label className="control-name">{name}</Label>
          <SliderOutput className="control-state figures">
            {() => (
              <>
                {openingWord(opening, kind)}
                {moves && <span className="soft-text"> → {openingWord(target, kind)}</span>}
              </>
            )}
          </SliderOutput>
        </div>
        <SliderTrack className="lever-track">
          <i className="lever-stands" style={{ width: `${opening * 100}%` }} aria-hidden="true" />
          <SliderThumb className="lever-thumb" aria-label={name} />
        </SliderTrack>
      </Slider>
      <div className="lever-stops">
        <Button
          className="stop-button"
          onPress={() => move(0)}
          aria-label={`${name}: ${isHandle ? 'to hydrant' : 'shut'}`}
        >
          {isHandle ? 'Hydrant' : 'Shut'}
        </Button>
        {[0.25, 0.5, 0.75].map((share) => (
          <Button
            key={share}
            className="stop-button"
            onPress={() => move(share)}
            aria-label={`${name}: ${share * 100} percent open`}
          >
            {openingWord(share, kind)}
          </Button>
        ))}
        <Button
          className="stop-button"
          onPress={() => move(1)}
          aria-label={`${name}: ${isHandle ? 'to boost' : 'open'}`}
        >
          {isHandle ? 'Boost' : 'Open'}
        </Button>
        <Checkbox
          className="slowly"
          isSelected={slowly}
          onChange={setSlowly}
          aria-label={`${name}: slowly`}
        >
          <span className="tick-box" aria-hidden="true" />
          Slowly
        </Checkbox>
      </div>
      <StageRefusal mark={mark} />
    </div>
  );
}

const setDraggedShare = (set: (share: number) => void) => (value: number) => set(value / 100);
