import { PlaceHeader } from '../places/PlaceHeader.tsx';
import { usePathname } from '../places/place.ts';
import { ChooseFile } from './ChooseFile.tsx';
import { ImportScreen } from './ImportScreen.tsx';
import './import.css';

/** Lists from elsewhere into the records: `/import` takes a file, `/import/<id>` is one on its way. */
export function ImportPlace() {
  const id = usePathname().split('/')[2] ?? '';
  return (
    <div className="page">
      <PlaceHeader title="Import" />
      <main className="import">
        {id === '' ? <ChooseFile /> : <ImportScreen key={id} id={id} />}
      </main>
    </div>
  );
}
