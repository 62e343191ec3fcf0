import { evolutionOf, evolutions } from '@plugside/drill';
import { flowTestResult } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import { useEffect, useMemo } from 'react';
import { Button } from 'react-aria-components';
import { type HydrantSupply, hydrantSupply } from '../../api/district.ts';
import { getRecord } from '../../api/records.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { todayIso } from '../../district/words.ts';
import { Choice } from '../../editing/Choice.tsx';
import { useUnits } from '../../editing/use-units.ts';
import { Findings } from '../../field-tests/Findings.tsx';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { newPath } from '../../records/address.ts';
import { FindHydrant } from './FindHydrant.tsx';
import { hydrantFit, isShort } from './hydrant-fit.ts';
import type { DrillSource } from './new-room.ts';
import { SourceNotRead } from './SourceNotRead.tsx';

type OnHydrant = Extract<DrillSource, { from: 'hydrant' }>;

interface HydrantSourceProps {
  source: OnHydrant;
  onChange(source: OnHydrant): void;
}

/** An evolution on a hydrant of the records: the hydrant found by its words, and what is to be known of it. */
export function HydrantSource({ source, onChange }: HydrantSourceProps) {
  const { hydrantId, key } = source;
  return (
    <div className="room-under">
      {hydrantId === '' ? (
        <FindHydrant onPick={(id) => onChange({ ...source, hydrantId: id, fits: false })} />
      ) : (
        <Picked key={hydrantId} source={source} onChange={onChange} />
      )}
      <Choice
        label="Evolution"
        value={key}
        options={evolutions.map((one) => ({ value: one.key, text: one.title }))}
        onChange={(next) => onChange({ ...source, key: next })}
      />
      <p className="soft-text">{evolutionOf(key)?.teaches}</p>
    </div>
  );
}

function Picked({ source, onChange }: HydrantSourceProps) {
  const { hydrantId } = source;
  const [loaded, retry] = useLoaded(`drill-hydrant:${hydrantId}`, async (signal) => {
    const [record, supply] = await Promise.all([
      getRecord('hydrants', hydrantId, signal),
      hydrantSupply(hydrantId, signal),
    ]);
    return { record, supply };
  });
  const another = (
    <Button
      className="plain-button"
      onPress={() => onChange({ ...source, hydrantId: '', fits: false })}
    >
      Another hydrant
    </Button>
  );
  if (loaded.state === 'loading') return <p role="status">Reading the hydrant…</p>;
  if (loaded.state !== 'ready')
    return <SourceNotRead what="The hydrant" onRetry={retry} another={another} />;
  return (
    <div className="source-picked">
      <div className="source-head">
        <p className="source-name">{loaded.value.record.name}</p>
        {another}
      </div>
      <Facts {...loaded.value} source={source} onChange={onChange} />
    </div>
  );
}

interface FactsProps extends HydrantSourceProps {
  record: Stored<'hydrants'>;
  supply: HydrantSupply;
}

function Facts({ record, supply, source, onChange }: FactsProps) {
  const units = useUnits();
  const test = supply.test ?? undefined;
  const { key } = source;
  const fit = useMemo(() => hydrantFit(key, record, test, todayIso()), [key, record, test]);
  const { fits, notices, problem, lines } = fit;
  // The form above waits for it.
  // biome-ignore lint/correctness/useExhaustiveDependencies: told once for each answer
  useEffect(() => {
    if (source.fits !== fits) onChange({ ...source, fits });
  }, [fits, source.fits]);
  const q20Gpm = test && flowTestResult(test, { today: todayIso() }).q20Gpm;
  const needsTest = notices.some(
    ({ code }) => code === 'no-flow-test' || code === 'test-not-usable',
  );
  const short = lines && isShort(lines) ? lines : undefined;
  return (
    <>
      {q20Gpm !== undefined && q20Gpm !== null && (
        <p className="figures">
          {units.text(q20Gpm, 'flow')} at {units.text(20, 'pressure')}, by the test of{' '}
          <span className="source-date">{test?.testedOn}</span>
          {record.main !== undefined && <>; main: {record.main}</>}
        </p>
      )}
      <div role="status">
        {problem !== undefined && <p className="tone-warning">{problem}</p>}
        {short && (
          <p className="tone-warning">
            With it the lines get {units.text(short.mostGpm, 'flow')} at most of the{' '}
            {units.text(short.demandGpm, 'flow')} that they take: the crews will be short of water,
            and some steps may not come off.
          </p>
        )}
      </div>
      <Findings findings={notices} />
      {needsTest && (
        <PlaceLink className="plain-link" href={newPath('flow-tests', { hydrantId: record.id })}>
          Add a flow test
        </PlaceLink>
      )}
    </>
  );
}
