import { evolutionOf, evolutions } from '@plugside/drill';
import { Button, Label, Radio, RadioGroup } from 'react-aria-components';
import { listRecords } from '../../api/index.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { Choice } from '../../editing/Choice.tsx';
import { BuildingSource } from './BuildingSource.tsx';
import { HydrantSource } from './HydrantSource.tsx';
import type { DrillSource } from './new-room.ts';
// The finder of records is drawn as in that place.
import '../../records/records.css';

/** The boost comes first to mind where a hydrant is weak. */
export const usualEvolution = 'boost through valve';

interface SourceChoiceProps {
  source: DrillSource;
  onChange(source: DrillSource): void;
  layTitle: string;
}

/** What to drill: an evolution, also on a hydrant of the records, or a plan, also for a building of the records. */
export function SourceChoice({ source, onChange, layTitle }: SourceChoiceProps) {
  const ways: readonly { from: DrillSource['from']; text: string; means?: string }[] = [
    { from: 'evolution', text: 'An evolution', means: 'on an invented hydrant' },
    { from: 'hydrant', text: 'A hydrant on record', means: 'an evolution with what it gives' },
    { from: 'building', text: 'A building on record', means: 'by the way chosen to supply it' },
    { from: 'record', text: 'A plan on record' },
    { from: 'lay', text: 'The plan open in the lay', means: layTitle },
  ];
  return (
    <>
      <RadioGroup
        className="room-radios"
        value={source.from}
        onChange={(from) => onChange(begun(from as DrillSource['from']))}
      >
        <Label>What to drill</Label>
        {ways.map(({ from, text, means }) => (
          <Radio key={from} value={from} className="room-radio">
            <i className="room-ring" aria-hidden="true" />
            <span>
              <b>{text}</b> {means !== undefined && <span className="soft-text">{means}</span>}
            </span>
          </Radio>
        ))}
      </RadioGroup>
      {source.from === 'evolution' && (
        <div className="room-under">
          <Choice
            label="Evolution"
            value={source.key}
            options={evolutions.map(({ key, title }) => ({ value: key, text: title }))}
            onChange={(key) => onChange({ from: 'evolution', key })}
          />
          <p className="soft-text">{evolutionOf(source.key)?.teaches}</p>
        </div>
      )}
      {source.from === 'hydrant' && <HydrantSource source={source} onChange={onChange} />}
      {source.from === 'building' && <BuildingSource source={source} onChange={onChange} />}
      {source.from === 'record' && (
        <PlanOnRecord
          planId={source.planId}
          onPick={(planId) => onChange({ from: 'record', planId })}
        />
      )}
    </>
  );
}

function begun(from: DrillSource['from']): DrillSource {
  switch (from) {
    case 'evolution':
      return { from, key: evolutions[0]!.key };
    case 'hydrant':
      return { from, key: usualEvolution, hydrantId: '', fits: false };
    case 'building':
      return { from, buildingId: '', way: null };
    case 'record':
      return { from, planId: '' };
    case 'lay':
      return { from };
  }
}

function PlanOnRecord({ planId, onPick }: { planId: string; onPick(planId: string): void }) {
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
        onChange={onPick}
      />
    </div>
  );
}
