import type { DrillView, NoticedEvent } from '@plugside/drill';
import { useEffect, useRef, useState } from 'react';
import { ToggleButton } from 'react-aria-components';
import { heardIn, signalsAfter } from './heard.ts';
import { openSpeaker, type Speaker } from './speaker.ts';

interface DrillSoundProps {
  view: DrillView;
  events: readonly NoticedEvent[];
}

/** Off until it is asked for: the pumps at hand by ear, a tone for the radio and one for cautions. */
export function DrillSound({ view, events }: DrillSoundProps) {
  const [speaker, setSpeaker] = useState<Speaker | null>(null);
  const told = useRef(view.tick);
  useEffect(() => () => speaker?.close(), [speaker]);
  useEffect(() => {
    if (!speaker) return;
    speaker.hear(heardIn(view));
    for (const which of signalsAfter(told.current, view, events)) speaker.signal(which);
    told.current = Math.max(view.tick, events.at(-1)?.tick ?? 0, view.radio.at(-1)?.tick ?? 0);
  }, [speaker, view, events]);
  return (
    <ToggleButton
      className="plain-button all-ports"
      isSelected={speaker !== null}
      onChange={(on) => {
        told.current = view.tick;
        setSpeaker(on ? openSpeaker() : null);
      }}
    >
      {speaker ? 'Sound is on' : 'Sound is off'}
    </ToggleButton>
  );
}
