import { lazy, Suspense } from 'react';
import { usePathname } from '../places/place.ts';
import { DrillPlace } from './DrillPlace.tsx';
import { readTogetherAddress } from './together/address.ts';

const TogetherPlace = lazy(async () => ({
  default: (await import('./together/TogetherPlace.tsx')).TogetherPlace,
}));

/** The drill's place: alone, or with others over the server. */
export function DrillDoor() {
  const address = readTogetherAddress(usePathname());
  if (!address) return <DrillPlace />;
  return (
    <Suspense fallback={<p className="nothing">Opening…</p>}>
      <TogetherPlace address={address} />
    </Suspense>
  );
}
