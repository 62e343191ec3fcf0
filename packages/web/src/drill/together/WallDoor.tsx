import { goTo } from '../../places/place.ts';
import { roomAddress } from './address.ts';
import { keepSeat, keptSeat } from './kept-seats.ts';
import { RoomScreen } from './RoomScreen.tsx';

/** `/drill/<code>/wall`: watching, whatever role this device has. */
export function WallDoor({ code }: { code: string }) {
  return (
    <RoomScreen
      key={code}
      code={code}
      inRole="observer"
      kept={undefined}
      onSeat={({ roomId }) => keepSeat(code, { ...keptSeat(code), roomId })}
      onLeave={() => goTo(roomAddress(code))}
    />
  );
}
