import { type AssistValve, nameOf } from '@plugside/fireground';
import { memo, useMemo, useRef, useState } from 'react';
import {
  Button,
  Label,
  Slider,
  SliderOutput,
  SliderThumb,
  SliderTrack,
} from 'react-aria-components';
import { Switcher } from '../../editing/Switcher.tsx';
import { useUnits } from '../../editing/use-units.ts';
import { type Answered, problemIn } from '../../plan-store/ask.ts';
import { setHandle } from '../../plan-store/edits/settings.ts';
import { usePlan } from '../../plan-store/plan-store.ts';
import { useSetPdp } from '../../settings/use-set-pdp.ts';
import { useWidth } from '../use-drawing.ts';
import { boosterOn, tryPressure, valveSentence } from './booster-trial.ts';
import { ValveDrawing } from './ValveDrawing.tsx';
import { ValveValues } from './ValveValues.tsx';

const MOST_TRIED_PSI = 200;

/** Close-ups of every hydrant assist valve in the plan; nothing where there is none. */
export const ValveCloseUp = memo(function ValveCloseUp({ answered }: { answered: Answered }) {
  const valves = answered.plan.appliances.filter(
    (one): one is AssistValve => one.kind === 'assist-valve',
  );
  return valves.map((valve) => <OneValve key={valve.id} answered={answered} valve={valve} />);
});

function OneValve({ answered, valve }: { answered: Answered; valve: AssistValve }) {
  const units = useUnits();
  const frame = useRef<HTMLElement>(null);
  const widthPx = useWidth(frame);
  const change = usePlan((state) => state.change);
  const plan = usePlan((state) => state.history.present);
  const setPdp = useSetPdp(answered);
  const [triedPsi, setTriedPsi] = useState<number | null>(null);
  const rigId = boosterOn(answered.plan, valve);
  const rig = answered.state.rigs.find((one) => one.id === rigId);
  const trial = useMemo(() => {
    if (triedPsi === null || rigId === undefined) return null;
    try {
      return { now: tryPressure(answered.plan, valve.id, rigId, triedPsi), problem: null };
    } catch (error) {
      return { now: null, problem: problemIn(error) };
    }
  }, [answered.plan, valve.id, rigId, triedPsi]);
  const state = (trial?.now ?? answered).state.assistValves.find((one) => one.id === valve.id);
  if (!state) return null;
  const planned =
    plan.appliances.find(
      (one): one is AssistValve => one.kind === 'assist-valve' && one.id === valve.id,
    ) ?? valve;
  const name = nameOf(valve);
  const shown = (trial?.now ?? answered).state;
  const netPsi = shown.rigs.find((one) => one.id === rigId)?.netPsi ?? 0;
  const sentence = valveSentence(state, netPsi);
  const { sceneGpm } = shown;
  return (
    <section className="valve-close-up" ref={frame} aria-label={`Close-up of ${name}`}>
      <h2 className="section-name">{name}, cut open</h2>
      <ValveDrawing valve={state} label={`${name}. ${sentence}`} widthPx={Math.min(widthPx, 560)} />
      <p className="valve-sentence">
        {sentence}{' '}
        <span className="soft-text figures">{units.text(sceneGpm, 'flow')} to the scene.</span>
      </p>
      <div className="valve-controls">
        <Switcher
          label={`Handle of ${name}, in the close-up`}
          value={valve.handle}
          options={[
            { value: 'hydrant', text: 'Handle at hydrant' },
            { value: 'boost', text: 'Handle at boost' },
          ]}
          onChange={(handle) => {
            setTriedPsi(null);
            change('Valve handle', (plan) => setHandle(plan, valve.id, handle));
          }}
        />
        {rigId !== undefined && (
          <Slider
            className="trial"
            value={triedPsi ?? Math.min(rig?.pdpPsi ?? 0, MOST_TRIED_PSI)}
            minValue={0}
            maxValue={MOST_TRIED_PSI}
            step={1}
            onChange={(value) => setTriedPsi(value)}
          >
            <div className="trial-head">
              <Label>Try a booster pressure</Label>
              <SliderOutput className="figures">
                {({ state: slider }) => units.text(slider.values[0] ?? 0, 'pressure')}
              </SliderOutput>
            </div>
            <SliderTrack className="trial-track">
              <SliderThumb className="trial-thumb" />
            </SliderTrack>
          </Slider>
        )}
      </div>
      {trial?.problem && <p className="caution-word">{trial.problem}</p>}
      {rigId !== undefined && (
        <p className="trial-acts" data-idle={triedPsi === null || undefined}>
          <Button className="quiet-button" onPress={() => setTriedPsi(null)}>
            Back to the plan
          </Button>
          <Button
            className="quiet-button"
            onPress={() => {
              setPdp(rigId, Math.max(triedPsi ?? 0, 1));
              setTriedPsi(null);
            }}
          >
            Set this pressure
          </Button>
        </p>
      )}
      <ValveValues valve={planned} />
    </section>
  );
}
