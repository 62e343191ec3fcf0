import { PlaceHeader } from '../places/PlaceHeader.tsx';
import { PlaceLink } from '../places/PlaceLink.tsx';
import { usePathname } from '../places/place.ts';
import { readDrillAddress } from './address.ts';
import { LearnPlace } from './learn/LearnPlace.tsx';
import { SandboxPlace } from './sandbox/SandboxPlace.tsx';
import { StartPage } from './start/StartPage.tsx';
import './drill.css';

/** Drills: learn an evolution, or play it freely. */
export function DrillPlace() {
  const address = readDrillAddress(usePathname());
  const played = address.at === 'learn' || address.at === 'sandbox';
  return (
    <div className="page">
      <PlaceHeader title={played ? address.evolution.title : 'Drill'} invented={played} />
      <main className="drill-page">
        {address.at === 'start' && <StartPage />}
        {address.at === 'unknown' && (
          <p className="nothing">
            There is no such evolution. <PlaceLink href="/drill">See all evolutions</PlaceLink>
          </p>
        )}
        {address.at === 'learn' && (
          <LearnPlace key={address.evolution.key} evolution={address.evolution} />
        )}
        {address.at === 'sandbox' && (
          <SandboxPlace key={address.evolution.key} evolution={address.evolution} />
        )}
      </main>
    </div>
  );
}
