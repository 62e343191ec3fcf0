import { type DrillStart, evolutionOf, evolutions } from '@plugside/drill';
import { useState } from 'react';
import { Button, Label, Radio, RadioGroup, Switch } from 'react-aria-components';
import { listRecords } from '../../api/index.ts';
import { reasonOf } from '../../api/reason.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { Choice } from '../../editing/Choice.tsx';
import { WordField } from '../../field-tests/WordField.tsx';
import { goTo } from '../../places/place.ts';
import { usePlan } from '../../plan-store/plan-store.ts';
import { roomAddress } from './address.ts';
import { BenchmarkForm } from './BenchmarkForm.tsx';
import { keepBenchmarks, keptBenchmarks } from './benchmark-fields.ts';
import { type DrillSource, makeRoom, type RoomWish, seedProblem } from './new-room.ts';

const starts: readonly { value: DrillStart; text: string; means: string }[] = [
  { value: 'hose laid', text: 'Hose laid', means: 'It lies in place, coupled nowhere, dry.' },
  { value: 'hose connected', text: 'Hose connected', means: 'Coupled as planned, dry.' },
  { value: 'water flowing', text: 'Water flowing', means: 'The plan runs as it stands.' },
];

/** What the address asks to drill; the boost through the valve where it names nothing. */
function sourceIn(search: URLSearchParams): DrillSource {
  const planId = search.get('plan');
  if (planId) return { from: 'record', planId };
  if (search.get('from') === 'lay') return { from: 'lay' };
  return { from: 'evolution', key: 'boost through valve' };
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
  const noPlan = wish.source.from === 'record' && wish.source.planId === '';
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
      <Source wish={wish} change={change} layTitle={plan.title} />
      {wish.source.from !== 'evolution' && (
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
      {wish.source.from === 'evolution' && (
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
          isDisabled={state === 'making' || seedWrong !== undefined || noPlan}
          onPress={make}
        >
          {state === 'making' ? 'Making the drill…' : 'Make the drill'}
        </Button>
        {noPlan && <span className="soft-text">Choose a plan first.</span>}
      </p>
    </div>
  );
}

interface SourceProps {
  wish: RoomWish;
  change(part: Partial<RoomWish>): void;
  layTitle: string;
}

function Source({ wish, change, layTitle }: SourceProps) {
  const { source } = wish;
  const choose = (from: DrillSource['from']) => {
    if (from === 'evolution') change({ source: { from, key: evolutions[0]!.key } });
    else change({ source: from === 'lay' ? { from } : { from, planId: '' } });
  };
  const evolution = source.from === 'evolution' ? evolutionOf(source.key) : undefined;
  return (
    <RadioGroup
      className="room-radios"
      value={source.from}
      onChange={(value) => choose(value as DrillSource['from'])}
    >
      <Label>What to drill</Label>
      <Radio value="evolution" className="room-radio">
        <i className="room-ring" aria-hidden="true" />
        <b>An evolution</b>
      </Radio>
      {source.from === 'evolution' && (
        <div className="room-under">
          <Choice
            label="Evolution"
            value={source.key}
            options={evolutions.map(({ key, title }) => ({ value: key, text: title }))}
            onChange={(key) => change({ source: { from: 'evolution', key } })}
          />
          <p className="soft-text">{evolution?.teaches}</p>
        </div>
      )}
      <Radio value="record" className="room-radio">
        <i className="room-ring" aria-hidden="true" />
        <b>A plan on record</b>
      </Radio>
      {source.from === 'record' && <PlanOnRecord planId={source.planId} change={change} />}
      <Radio value="lay" className="room-radio">
        <i className="room-ring" aria-hidden="true" />
        <span>
          <b>The plan open in the lay</b> <span className="soft-text">{layTitle}</span>
        </span>
      </Radio>
    </RadioGroup>
  );
}

function PlanOnRecord({ planId, change }: { planId: string; change: SourceProps['change'] }) {
  const [plans, retry] = useLoaded('plans', (signal) =>
    listRecords('plans', { limit: 500 }, signal),
  );
  if (plans.state === 'loading') return <p className="room-under">Reading the plans…</p>;
  if (plans.state !== 'ready') {
    return (
      <p className="room-under tone-warning">
        The plans could not be read.{' '}
        <Button className="plain-button" onPress={retry}>
          Try again
        </Button>
      </p>
    );
  }
  const { records } = plans.value;
  if (records.length === 0) {
    return (
      <p className="room-under soft-text">
        No plan is on record yet. Save one under Records, or drill the plan open in the lay.
      </p>
    );
  }
  return (
    <div className="room-under">
      <Choice
        label="Plan"
        value={planId}
        options={[
          ...(planId === '' ? [{ value: '', text: 'Choose a plan' }] : []),
          ...records.map(({ id, name }) => ({ value: id, text: name })),
        ]}
        onChange={(id) => change({ source: { from: 'record', planId: id } })}
      />
    </div>
  );
}
