import type { Role } from '@plugside/drill';
import { useEffect, useState } from 'react';
import { ChooseRole } from './ChooseRole.tsx';
import { type KeptSeat, keepSeat, keptSeat, keyFor } from './kept-seats.ts';
import { RoomScreen } from './RoomScreen.tsx';

/** `/drill/<code>`: back in the role that this device has, or the choice of one. */
export function RoomDoor({ code }: { code: string }) {
  const [seat, setSeat] = useState(() => keptSeat(code));
  const [told, setTold] = useState<string | undefined>(undefined);
  useEffect(() => setSeat(keptSeat(code)), [code]);
  const change = (next: KeptSeat) => {
    keepSeat(code, next);
    setSeat(next);
  };
  const choose = (role: Role) => {
    setTold(undefined);
    change({ ...seatless(keptSeat(code)), role });
  };
  if (seat.role === undefined) {
    return (
      <ChooseRole
        code={code}
        mayInstruct={seat.instructorKey !== undefined}
        told={told}
        onChoose={choose}
      />
    );
  }
  const { role } = seat;
  return (
    <RoomScreen
      key={`${code} ${role}`}
      code={code}
      inRole={role}
      kept={keyFor(role, seat)}
      onSeat={({ key, roomId }) =>
        change({
          ...keptSeat(code),
          roomId,
          ...(role !== 'instructor' && key !== undefined && { key }),
        })
      }
      onLeave={(why) => {
        setTold(why);
        change(seatless(keptSeat(code)));
      }}
    />
  );
}

/** Without a role; what else the device has of the drill stays. */
function seatless({ role: _, key: __, ...rest }: KeptSeat): KeptSeat {
  return rest;
}
