import { type ReactNode, type RefObject, useLayoutEffect, useRef } from 'react';
import { clockText, roleWords } from '../words.ts';
import { Code } from './Code.tsx';
import { ConnectionMark } from './ConnectionMark.tsx';
import type { RoomLink } from './room-link.ts';
import { heldIn, type RoomState } from './room-state.ts';

interface RoomBarProps {
  link: RoomLink | null;
  room: RoomState;
  /** Its own buttons, at the end. */
  children?: ReactNode;
}

/** Over every screen of a shared drill: who one is, the drill's clock, and the connection. */
export function RoomBar({ link, room, children }: RoomBarProps) {
  const { code, role, view } = room;
  const bar = useRef<HTMLElement>(null);
  useHeightForPage(bar);
  const held = heldIn(room);
  return (
    <section className="room-bar" aria-label="Drill" ref={bar}>
      <h1 className="room-role">{roleWords[role]}</h1>
      {view && <p className="room-drill">{view.title}</p>}
      <p className="room-code-small">
        Code <Code code={code} />
      </p>
      <p className="room-clock figures">
        <b>{view ? clockText(view.timeS) : '–'}</b>
        {view && view.speed !== 1 && <span className="soft-text"> at × {view.speed}</span>}
      </p>
      <ConnectionMark link={link} room={room} />
      {children && <div className="room-bar-actions">{children}</div>}
      <p className="room-held" role="status">
        {held === 'instructor' &&
          (view && view.timeS < 1
            ? 'The drill has not begun: the instructor starts it.'
            : 'The instructor has stopped the clock.')}
        {held === 'nobody here' && 'The clock stood while nobody was here.'}
        {held === 'not kept' && 'The server cannot write to its disk: the clock stands.'}
      </p>
    </section>
  );
}

/** Tells the page how high an element on top of it is: what sticks under it has to know. */
function useHeightForPage(element: RefObject<HTMLElement | null>): void {
  useLayoutEffect(() => {
    const node = element.current;
    const page = node?.parentElement;
    if (!node || !page) return;
    const observer = new ResizeObserver(() =>
      page.style.setProperty('--stage-top', `${node.offsetHeight}px`),
    );
    observer.observe(node);
    return () => observer.disconnect();
  }, [element]);
}
