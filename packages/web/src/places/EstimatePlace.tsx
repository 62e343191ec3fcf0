import { QuickEstimatePlace } from '../field-tests/index.ts';
import { PlaceHeader } from './PlaceHeader.tsx';

/** The quick estimate at the panel, under the app's header. */
export function EstimatePlace() {
  return (
    <div className="page">
      <PlaceHeader />
      <main>
        <QuickEstimatePlace />
      </main>
    </div>
  );
}
