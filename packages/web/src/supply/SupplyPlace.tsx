import { Button } from 'react-aria-components';
import { getDistrict } from '../api/district.ts';
import { situationAt } from '../api/situation.ts';
import { useLoaded } from '../api/use-loaded.ts';
import { PlaceHeader } from '../places/PlaceHeader.tsx';
import { usePathname } from '../places/place.ts';
import { Unreachable } from '../places/Unreachable.tsx';
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
      <main className="supply-page">{id ? <Opened id={id} /> : <FindBuilding />}</main>
    </div>
  );
}

function Opened({ id }: { id: string }) {
  const [loaded, retry] = useLoaded(`situation:${id}`, (signal) =>
    situationAt(id, undefined, signal),
  );
  switch (loaded.state) {
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
            <b>This building could not be read.</b> {loaded.reason}
          </p>
          <p>
            <Button className="plain-button" onPress={retry}>
              Try again
            </Button>
          </p>
        </div>
      );
    case 'ready':
      return <SupplyBoard key={id} answer={loaded.value} />;
  }
}
