import {
  type ComponentType,
  lazy,
  Suspense,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { App } from '../app/App.tsx';
import { useTheme } from '../app/use-theme.ts';
import { PlaceGuard } from './PlaceGuard.tsx';
import { PlaceHeader } from './PlaceHeader.tsx';
import { type PlaceName, placeAt, places, usePathname } from './place.ts';

/** The lay comes with the page; what the others need is fetched when they are first gone to. */
const laterPlaces: Readonly<Partial<Record<PlaceName, ComponentType>>> = {
  district: lazy(async () => ({
    default: (await import('../district/DistrictPlace.tsx')).DistrictPlace,
  })),
  supply: lazy(async () => ({
    default: (await import('../supply/SupplyPlace.tsx')).SupplyPlace,
  })),
  estimate: lazy(async () => ({
    default: (await import('./EstimatePlace.tsx')).EstimatePlace,
  })),
  drill: lazy(async () => ({ default: (await import('../drill/DrillDoor.tsx')).DrillDoor })),
  records: lazy(async () => ({
    default: (await import('../records/RecordsPlace.tsx')).RecordsPlace,
  })),
  import: lazy(async () => ({ default: (await import('../import/ImportPlace.tsx')).ImportPlace })),
};

/** The app: whichever place the address names. */
export function Shell() {
  useTheme();
  const name = placeAt(usePathname());
  const text = places.find((one) => one.name === name)?.text ?? '';
  useEffect(() => {
    document.title = name === 'lay' ? 'Plugside' : `${text} · Plugside`;
  }, [name, text]);
  useTopOnArrival(name);
  const Later = laterPlaces[name];
  return (
    <>
      {Later ? (
        <PlaceGuard name={text} resetOn={name}>
          <Suspense fallback={<Opening text={text} />}>
            <Later />
          </Suspense>
        </PlaceGuard>
      ) : (
        <App />
      )}
      <Arrival text={text} />
    </>
  );
}

/** A place that is gone to is seen from its top; one that is gone back to stays with the browser. */
function useTopOnArrival(name: PlaceName): void {
  const seen = useRef(name);
  const wentBack = useRef(false);
  useEffect(() => {
    const back = () => {
      wentBack.current = true;
    };
    window.addEventListener('popstate', back);
    return () => window.removeEventListener('popstate', back);
  }, []);
  useLayoutEffect(() => {
    if (seen.current === name) return;
    seen.current = name;
    if (!wentBack.current) window.scrollTo({ top: 0 });
    wentBack.current = false;
  }, [name]);
}

function Opening({ text }: { text: string }) {
  return (
    <div className="page">
      <PlaceHeader title={text} />
      <main>
        <p className="nothing" role="status">
          Opening…
        </p>
      </main>
    </div>
  );
}

/** Tells a screen reader which place it has come to, once it has gone somewhere. */
function Arrival({ text }: { text: string }) {
  const first = useRef(text);
  const [told, setTold] = useState('');
  useEffect(() => {
    if (text === first.current && told === '') return;
    first.current = '';
    setTold(text);
  }, [text, told]);
  return (
    <p className="hidden-text" role="status">
      {told}
    </p>
  );
}
