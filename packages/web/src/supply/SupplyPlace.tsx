import { useState } from 'react';
import { Button } from 'react-aria-components';
import { getDistrict } from '../api/district.ts';
import { situationAt } from '../api/situation.ts';
import { useLoaded } from '../api/use-loaded.ts';
import { PlaceHeader } from '../places/PlaceHeader.tsx';
import { usePathname } from '../places/place.ts';
import { Unreachable } from '../places/Unreachable.tsx';
import { useLast } from '../records/use-last.ts';
import { buildingIn } from './address.ts';
import { FindBuilding } from './FindBuilding.tsx';
import { SupplyBoard } from './SupplyBoard.tsx';
// Rows, the trail and the fields are drawn as in those places.
import '../district/district.css';
import '../field-tests/field-tests.css';
import './supply.css';

/** The ways to supply a building with what is coming, and which to choose. */
export function SupplyPlace() {
  const id = buildingIn(usePathname());
  const [district] = useLoaded('district', getDistrict);
  const invented = district.state === 'ready' && district.value.invented;
  return (
    <div className="page">
      <PlaceHeader title={id ? undefined : 'Supply'} invented={invented} />
      <main className="supply-page">{id ? <Opened key={id} id={id} /> : <FindBuilding />}</main>
    </div>
  );
}

function Opened({ id }: { id: string }) {
  // A building without a needed flow on record has no ways until somebody says what it needs.
  const [needGpm, setNeedGpm] = useState<number | undefined>(undefined);
  const [loaded, retry] = useLoaded(`situation:${id}:${needGpm ?? ''}`, (signal) =>
    situationAt(id, needGpm, signal),
  );
  const shown = useLast(loaded);
  switch (shown.state) {
    case 'loading':
      return (
        <p className="nothing" role="status">
          Gathering what there is to work with…
        </p>
      );
    case 'unreachable':
      return <Unreachable what="Choosing a supply" onRetry={retry} />;
    case 'failed':
      return (
        <div className="unreachable" role="alert">
          <p>
            <b>This building could not be read.</b> {shown.reason}
          </p>
          <p>
            <Button className="plain-button" onPress={retry}>
              Try again
            </Button>
          </p>
        </div>
      );
    case 'ready':
      return <SupplyBoard answer={shown.value} onNeeds={setNeedGpm} />;
  }
}
