import { PlaceHeader } from '../../places/PlaceHeader.tsx';
import { AfterRoom } from '../replay/AfterRoom.tsx';
import { PastDrills } from '../replay/PastDrills.tsx';
import { ReplayPage } from '../replay/ReplayPage.tsx';
import type { TogetherAddress } from './address.ts';
import { NewRoom } from './NewRoom.tsx';
import { RoomDoor } from './RoomDoor.tsx';
import { WallDoor } from './WallDoor.tsx';
import '../../field-tests/field-tests.css';
import './together.css';

/** Drills that several devices share: made, joined, led, watched, looked at again. */
export function TogetherPlace({ address }: { address: TogetherAddress }) {
  // A wall has the header's place for itself.
  if (address.at === 'wall') {
    return (
      <div className="page together">
        <WallDoor key={address.code} code={address.code} />
      </div>
    );
  }
  return (
    <div className="page together">
      <PlaceHeader />
      <main>
        <Named address={address} />
      </main>
    </div>
  );
}

function Named({ address }: { address: Exclude<TogetherAddress, { at: 'wall' }> }) {
  switch (address.at) {
    case 'new':
      return <NewRoom />;
    case 'room':
      return <RoomDoor key={address.code} code={address.code} />;
    case 'after':
      return <AfterRoom code={address.code} />;
    case 'replay':
      return <ReplayPage key={address.roomId} roomId={address.roomId} />;
    case 'past':
      return <PastDrills />;
  }
}
