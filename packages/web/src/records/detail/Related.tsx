import type { Kind } from '@plugside/records/model';
import type { Values } from '../form/draft.ts';
import { AdoptedSwitch } from './AdoptedSwitch.tsx';
import { HoseTestResult } from './HoseTestResult.tsx';
import { HydrantTests } from './HydrantTests.tsx';
import { FlowTestOf, PumpTestOf } from './OneTest.tsx';
import { RelatedList } from './RelatedList.tsx';
import { RigTests } from './RigTests.tsx';
import { ServiceTestsAhead } from './ServiceTestsAhead.tsx';

/** What hangs on a record: a hydrant's tests, a rig's hose, a building's plans. */
export function Related({ kind, record }: { kind: Kind; record: Values }) {
  const id = record.id as string;
  switch (kind) {
    case 'hydrants':
      return (
        <div className="related">
          <HydrantTests hydrant={record} />
        </div>
      );
    case 'flow-tests':
      return (
        <div className="related">
          <FlowTestOf test={record} />
        </div>
      );
    case 'rigs':
      return (
        <div className="related">
          <RigTests rig={record} />
          <RelatedList title="Hose on it" kind="hose" field="rigId" id={id} />
        </div>
      );
    case 'pump-tests':
      return (
        <div className="related">
          <PumpTestOf test={record} />
        </div>
      );
    case 'hose-tests':
      return (
        <div className="related">
          <HoseTestResult test={record} />
          <AdoptedSwitch test={record} />
          <RelatedList
            title="Other tests of hose of this size"
            kind="hose-tests"
            field="size"
            id={String(record.size)}
            but={id}
          />
        </div>
      );
    case 'hose':
      return (
        <div className="related">
          <ServiceTestsAhead hose={record} />
          <RelatedList
            title="Tests of hose of this size"
            kind="hose-tests"
            field="size"
            id={String(record.size)}
          />
        </div>
      );
    case 'buildings':
      return (
        <div className="related">
          <RelatedList title="Plans for it" kind="plans" field="buildingId" id={id} />
        </div>
      );
    case 'stations':
      return (
        <div className="related">
          <RelatedList title="Rigs here" kind="rigs" field="stationId" id={id} />
        </div>
      );
    default:
      return null;
  }
}
