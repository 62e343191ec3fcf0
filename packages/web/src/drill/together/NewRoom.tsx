import type { DrillStart } from '@plugside/drill';
import { useState } from 'react';
import { Button, Label, Radio, RadioGroup, Switch } from 'react-aria-components';
import { reasonOf } from '../../api/reason.ts';
import { WordField } from '../../field-tests/WordField.tsx';
import { goTo } from '../../places/place.ts';
import { usePlan } from '../../plan-store/plan-store.ts';
import { roomAddress } from './address.ts';
import { BenchmarkForm } from './BenchmarkForm.tsx';
import { keepBenchmarks, keptBenchmarks } from './benchmark-fields.ts';
import {
  type DrillSource,
  isScripted,
  makeRoom,
  type RoomWish,
  seedProblem,
  sourceProblem,
} from './new-room.ts';
import { SourceChoice, usualEvolution } from './SourceChoice.tsx';

const starts: readonly { value: DrillStart; text: string; means: string }[] = [
  { value: 'hose laid', text: 'Hose laid', means: 'It lies in place, coupled nowhere, dry.' },
  { value: 'hose connected', text: 'Hose connected', means: 'Coupled as planned, dry.' },
  { value: 'water flowing', text: 'Water flowing', means: 'The plan runs as it stands.' },
];

/** What the address asks to drill; the boost through the valve where it names nothing. */
function sourceIn(search: URLSearchParams): DrillSource {
  const planId = search.get('plan');
  if (planId) return { from: 'record', planId };
  const hydrantId = search.get('hydrant');
  if (hydrantId) return { from: 'hydrant', key: usualEvolution, hydrantId, fits: false };
  const buildingId = search.get('building');
  if (buildingId) return { from: 'building', buildingId, way: null };
  if (search.get('from') === 'lay') return { from: 'lay' };
  return { from: 'evolution', key: usualEvolution };
}

/** `/drill/new`: chooses what to drill, and makes the room. */
export function NewRoom() {
  const plan = usePlan((state) => state.history.present);
  const [wish, setWish] = useState<RoomWish>(() => ({
    source: sourceIn(new URLSearchParams(window.location.search)),
    start: 'hose connected',
    crew: '',
    guided: false,
    benchmarks: keptBenchmarks(),
    seed: '',
  }));
  const [state, setState] = useState<'idle' | 'making' | { problem: string }>('idle');
  const change = (part: Partial<RoomWish>) => setWish((before) => ({ ...before, ...part }));
  const seedWrong = seedProblem(wish.seed);
  const notYet = sourceProblem(wish.source);
  const make = async () => {
    setState('making');
    try {
      goTo(roomAddress(await makeRoom(wish, plan)));
    } catch (error) {
      setState({ problem: reasonOf(error) });
    }
  };
  return (
    <div className="room-page room-form">
      <h1 className="room-title">Start a drill together</h1>
      <p className="room-lead">
        Each crew joins on its own tablet by a code; you lead from here. The server must be in reach
        of all of them.
      </p>
      <SourceChoice
        source={wish.source}
        onChange={(source) => change({ source })}
        layTitle={plan.title}
      />
      {!isScripted(wish.source) && (
        <RadioGroup
          className="room-radios"
          value={wish.start}
          onChange={(value) => change({ start: value as DrillStart })}
        >
          <Label>How far the crews have got</Label>
          {starts.map(({ value, text, means }) => (
            <Radio key={value} value={value} className="room-radio">
              <i className="room-ring" aria-hidden="true" />
              <span>
                <b>{text}</b> <span className="soft-text">{means}</span>
              </span>
            </Radio>
          ))}
        </RadioGroup>
      )}
      <div className="test-fields room-words">
        <WordField
          label="Crew, by its name (no names of persons)"
          value={wish.crew}
          maxLength={120}
          onChange={(crew) => change({ crew })}
        />
      </div>
      {isScripted(wish.source) && (
        <Switch
          className="room-switch"
          isSelected={wish.guided}
          onChange={(guided) => change({ guided })}
        >
          <span className="room-switch-track" aria-hidden="true" />
          Show each role its next step
        </Switch>
      )}
      <BenchmarkForm
        own={wish.benchmarks}
        onChange={(benchmarks) => {
          keepBenchmarks(benchmarks);
          change({ benchmarks });
        }}
      />
      <details className="benchmarks">
        <summary>
          Seed <span className="soft-text">how restless the gauges are; the same seed repeats</span>
        </summary>
        <div className="test-fields room-words">
          <WordField
            label="Seed (empty: drawn)"
            value={wish.seed}
            maxLength={12}
            onChange={(seed) => change({ seed })}
          />
        </div>
        {seedWrong !== undefined && <p className="tone-warning">{seedWrong}</p>}
      </details>
      {typeof state === 'object' && (
        <p className="tone-warning" role="alert">
          The drill was not made. {state.problem}
        </p>
      )}
      <p className="room-actions">
        <Button
          className="plain-button main-button room-big-button"
          isDisabled={state === 'making' || seedWrong !== undefined || notYet !== undefined}
          onPress={make}
        >
          {state === 'making' ? 'Making the drill…' : 'Make the drill'}
        </Button>
        {notYet !== undefined && <span className="soft-text">{notYet}</span>}
      </p>
    </div>
  );
}
