import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { openRoomLink, type RoomJoining, type RoomLink } from './room-link.ts';
import type { RoomState } from './room-state.ts';

/** A device's way into a drill for as long as the page shows it. */
export function useRoom({ code, role, key, onSeat }: RoomJoining): {
  link: RoomLink | null;
  room: RoomState;
} {
  const [link, setLink] = useState<RoomLink | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key comes back by itself once taken
  useEffect(() => {
    const opened = openRoomLink({ code, role, key, onSeat });
    setLink(opened);
    return () => {
      opened.end();
      setLink(null);
    };
  }, [code, role]);
  const before = useMemo(
    () =>
      createStore<RoomState>(() => ({
        code,
        role,
        connection: { is: 'joining' },
        waiting: 0,
        notDone: [],
      })),
    [code, role],
  );
  const room = useStore(link?.state ?? before);
  return { link, room };
}
