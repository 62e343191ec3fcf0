import type { HoseEndView } from '@plugside/drill';
import { useEffect, useRef } from 'react';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { useUnits } from '../../editing/use-units.ts';
import { hoseName, hoseSizeWords } from '../words.ts';
import { endMark } from './marks.ts';
import { StageRefusal } from './StageRefusal.tsx';
import { useStage } from './stage-context.ts';

const looksWords: Readonly<Record<HoseEndView['looks'], string>> = {
  flat: 'flat',
  filling: 'filling',
  hard: 'full and hard',
  soft: 'full but soft',
  burst: 'burst',
};

/** Every hose end at hand, with where it can go: the drawing's work by list and keyboard. */
export function HoseEndList() {
  const { view } = useStage();
  if (view.hoseEnds.length === 0) return <p className="soft-text">No hose at hand here.</p>;
  return (
    <ul className="end-list">
      {view.hoseEnds.map((one) => (
        <li key={`${one.hose}:${one.end}`}>
          <HoseEndControl end={one} />
        </li>
      ))}
    </ul>
  );
}

/** One hose end: what it looks like, couple it or take it off. */
export function HoseEndControl({ end }: { end: HoseEndView }) {
  const { scene, view, act, marks } = useStage();
  const units = useUnits();
  const hose = scene.hoses.find(({ id }) => id === end.hose)!;
  const name = hoseName(hose);
  const mark = endMark(end.hose, end.end);
  const on = view.ports.find(({ port }) => port === end.port);
  const free = view.ports.filter((port) => port.free);
  // Its button gives way to the other one: who pressed it by keyboard stays there.
  const button = useRef<HTMLButtonElement>(null);
  const pressed = useRef(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: when the end has gone on or come off
  useEffect(() => {
    if (pressed.current) button.current?.focus();
    pressed.current = false;
  }, [end.port]);
  const spoken = `${name}, end ${end.end === 'from' ? 'nearer the water' : 'nearer the fire'}`;
  return (
    <div className="end-control" data-marked={marks.has(mark) || undefined}>
      <div className="end-words">
        <b>{name}</b> <span className="soft-text">{hoseSizeWords(hose, units)}</span>
        <br />
        <span className={end.looks === 'burst' ? 'tone-warning' : undefined}>
          {on
            ? `on ${on.label}`
            : (end.port ??
              `loose, ${end.end === 'from' ? 'end nearer the water' : 'end nearer the fire'}`)}
          , {looksWords[end.looks]}
        </span>
      </div>
      {end.port === null ? (
        <MenuTrigger>
          <Button ref={button} className="plain-button" aria-label={`Couple ${spoken} to…`}>
            Couple to… ▾
          </Button>
          <Popover className="popover">
            <Menu
              className="list"
              aria-label={`Couple ${spoken} to`}
              onAction={(port) => {
                pressed.current = true;
                act({ do: 'couple', hose: end.hose, end: end.end, port: String(port) });
              }}
            >
              {free.map(({ port, label }) => (
                <MenuItem key={port} id={port} className="list-item" textValue={label}>
                  {label}
                </MenuItem>
              ))}
            </Menu>
          </Popover>
        </MenuTrigger>
      ) : (
        <Button
          ref={button}
          className="plain-button"
          aria-label={`Uncouple ${spoken}`}
          onPress={() => {
            pressed.current = true;
            act({ do: 'uncouple', hose: end.hose, end: end.end });
          }}
        >
          Uncouple
        </Button>
      )}
      {end.port !== null && end.looks === 'hard' && (
        <p className="end-caution">
          <span className="caution-shape" aria-hidden="true" /> Under pressure: shut the valve and
          bleed it off before you uncouple.
        </p>
      )}
      <StageRefusal mark={mark} />
    </div>
  );
}
