import {
  type DrillAction,
  type DrillStep,
  type Evolution,
  mayDo,
  type PlayedRole,
  playedRoles,
  rolesIn,
} from '@plugside/drill';
import { useEffect, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { Choice } from '../../editing/Choice.tsx';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { drillAddress } from '../address.ts';
import { CautionList } from '../local/CautionList.tsx';
import { ClockBar } from '../local/ClockBar.tsx';
import { JudgementList } from '../local/JudgementList.tsx';
import { RoleSwitch } from '../local/RoleSwitch.tsx';
import { useLocalDrill } from '../local/use-local-drill.ts';
import { DrillStage } from '../stage/index.ts';
import { clockText, roleWords } from '../words.ts';
import { dropPlace, keepPlace, keptPlace } from './kept-place.ts';
import { firstOpen, stepNow, type TooEarly, tooEarly, type WrongPort, wrongPort } from './order.ts';
import { StepPanel } from './StepPanel.tsx';

type Plays = 'all' | PlayedRole;

/** An evolution learned step by step, alone or in one role with the computer in the others. */
export function LearnPlace({ evolution }: { evolution: Evolution }) {
  const [before] = useState(() => keptPlace(evolution));
  const [plays, setPlays] = useState<Plays>(before?.plays ?? 'all');
  const [role, setRole] = useState<PlayedRole>(() =>
    plays === 'all' ? evolution.scene().steps[0]!.role : plays,
  );
  const [cameBack, setCameBack] = useState(before !== undefined);
  const [early, setEarly] = useState<TooEarly | null>(null);
  const [wrong, setWrong] = useState<WrongPort | null>(null);
  const own = useMemo(() => (plays === 'all' ? playedRoles : [plays]), [plays]);
  const computer = useMemo(() => playedRoles.filter((one) => !own.includes(one)), [own]);
  /** Nothing more is kept: it is done, or being begun anew. */
  const isDone = useRef(false);
  const { scene, link, heard, progress, reset } = useLocalDrill(evolution, role, computer, {
    left: before?.state,
    onPlace: (state) => {
      if (!isDone.current) keepPlace(evolution, { state, plays });
    },
  });
  const done = useMemo(() => new Set(progress?.done.map(({ step }) => step)), [progress]);
  const step = progress ? stepNow(scene, done, own) : undefined;
  const waitsFor = progress ? firstOpen(scene, done) : undefined;
  const finished = progress !== null && waitsFor === undefined;
  useEffect(() => {
    if (link) isDone.current = false;
  }, [link]);
  // What is done is not come back to.
  useEffect(() => {
    isDone.current = finished;
    if (finished) dropPlace(evolution);
  }, [finished, evolution]);
  const stands = heard.view?.paused;
  useEffect(() => {
    if (stands === false) setCameBack(false);
  }, [stands]);
  const stepRole = step?.role;
  // Who plays everyone goes where the next step is.
  useEffect(() => {
    if (plays === 'all' && stepRole) setRole(stepRole);
  }, [plays, stepRole]);
  // Told once: when what should have come first is done, the matter is settled.
  useEffect(() => {
    if (early && done.has(early.before.id)) setEarly(null);
  }, [early, done]);
  const begin = (next: Plays) => {
    setPlays(next);
    setRole(next === 'all' ? scene.steps[0]!.role : next);
    setEarly(null);
    setWrong(null);
    setCameBack(false);
    isDone.current = true;
    dropPlace(evolution);
    reset();
  };
  if (heard.failed) {
    return (
      <p className="nothing" role="alert">
        The drill stopped. {heard.failed}{' '}
        <Button className="plain-button" onPress={() => begin(plays)}>
          Begin anew
        </Button>
      </p>
    );
  }
  const { view } = heard;
  if (!view || !link) {
    return (
      <p className="nothing" role="status">
        Laying out the hose…
      </p>
    );
  }
  // The old view stands until the new one is here: nothing jumps.
  const shown = view.role as PlayedRole;
  const act = (action: DrillAction) => {
    if (shown !== role) return;
    setEarly(tooEarly(scene, done, role, action) ?? null);
    const misplaced = wrongPort(scene, action);
    if (misplaced) setWrong(misplaced);
    else if (action.do === 'uncouple' || action.do === 'couple') setWrong(null);
    link.act(action);
  };
  const show = (one: DrillStep) => {
    for (const how of one.how) {
      const astray =
        how.do === 'couple' &&
        view.hoseEnds.some(
          ({ hose, end, port }) => hose === how.hose && end === how.end && port !== null,
        );
      if (astray) act({ do: 'uncouple', hose: how.hose, end: how.end });
      act(how);
    }
  };
  return (
    <>
      <div className="drill-bar">
        <PlaceLink href="/drill">‹ All evolutions</PlaceLink>
        <div className="drill-plays">
          You play{' '}
          <Choice<Plays>
            label="You play"
            value={plays}
            options={[
              { value: 'all', text: 'everyone, in turn' },
              ...rolesIn(scene)
                .filter((one) => scene.steps.some((step) => step.role === one))
                .map((one) => ({ value: one, text: `the ${one}, the computer the others` })),
            ]}
            onChange={begin}
          />
        </div>
        {plays === 'all' && <RoleSwitch scene={scene} role={role} onChange={setRole} />}
        <ClockBar view={view} link={link} onReset={() => begin(plays)} />
      </div>
      {cameBack && view.paused && !finished && (
        <p className="came-back" role="status">
          <span>
            You were here before: the drill stands where you left it, at{' '}
            <span className="figures">{clockText(view.timeS)}</span>.
          </span>
          <Button className="plain-button main-button" onPress={() => link.clock({ do: 'resume' })}>
            Go on
          </Button>
          <Button className="plain-button" onPress={() => begin(plays)}>
            Begin anew
          </Button>
        </p>
      )}
      {finished && progress && (
        <section className="finished" aria-labelledby="finished">
          <h2 id="finished" role="status">
            Done: {evolution.title.charAt(0).toLowerCase()}
            {evolution.title.slice(1)}.
          </h2>
          <JudgementList judgements={progress.judgements} />
          <p className="soft-text">
            Limits are ours where your department has set none. The drill goes on: look at the
            gauges, or leave.
          </p>
          <p className="finished-acts">
            <Button className="plain-button" onPress={() => begin(plays)}>
              Learn it again
            </Button>
            <PlaceLink className="plain-link" href={drillAddress('sandbox', evolution.key)}>
              Free play
            </PlaceLink>
            <PlaceLink className="plain-link" href="/drill">
              Other evolutions
            </PlaceLink>
          </p>
        </section>
      )}
      <DrillStage
        scene={scene}
        view={view}
        role={shown}
        can={(action) => mayDo(shown, scene, action)}
        onAction={act}
        refused={heard.refused}
        events={heard.events}
        history={heard.history}
        {...(finished
          ? {}
          : {
              guide: {
                step,
                panel: (
                  <>
                    <StepPanel
                      scene={scene}
                      role={role}
                      step={step}
                      waitsFor={waitsFor}
                      doneCount={done.size}
                      early={early}
                      wrong={wrong}
                      onShow={show}
                    />
                    {step && step.role !== role && (
                      <p className="step-elsewhere">
                        This step is the {step.role}&rsquo;s.{' '}
                        <Button className="plain-button" onPress={() => setRole(step.role)}>
                          Go to {roleWords[step.role].toLowerCase()}
                        </Button>
                      </p>
                    )}
                  </>
                ),
              },
            })}
      />
      <CautionList scene={scene} />
    </>
  );
}
