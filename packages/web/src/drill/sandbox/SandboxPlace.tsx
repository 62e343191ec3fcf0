import { type Evolution, mayDo, type PlayedRole, playedRoles, rolesIn } from '@plugside/drill';
import { useState } from 'react';
import { Button, Checkbox } from 'react-aria-components';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { CautionList } from '../local/CautionList.tsx';
import { ClockBar } from '../local/ClockBar.tsx';
import { JudgementList } from '../local/JudgementList.tsx';
import { RoleSwitch } from '../local/RoleSwitch.tsx';
import { useLocalDrill } from '../local/use-local-drill.ts';
import { DrillStage } from '../stage/index.ts';

const nobody: readonly PlayedRole[] = [];

/** Free play on an evolution: every post by a switch, nothing told, the water answers. */
export function SandboxPlace({ evolution }: { evolution: Evolution }) {
  const [role, setRole] = useState<PlayedRole>(() => rolesIn(evolution.scene())[0]!);
  const [helped, setHelped] = useState(false);
  const computer = helped ? playedRoles.filter((one) => one !== role) : nobody;
  const { scene, link, heard, progress, reset } = useLocalDrill(evolution, role, computer);
  const { view } = heard;
  if (heard.failed) {
    return (
      <p className="nothing" role="alert">
        The drill stopped. {heard.failed}{' '}
        <Button className="plain-button" onPress={reset}>
          Begin anew
        </Button>
      </p>
    );
  }
  if (!view || !link) {
    return (
      <p className="nothing" role="status">
        Laying out the hose…
      </p>
    );
  }
  // The old view stands until the new one is here: nothing jumps.
  const shown = view.role as PlayedRole;
  return (
    <>
      <div className="drill-bar">
        <PlaceLink href="/drill">‹ All evolutions</PlaceLink>
        <RoleSwitch scene={scene} role={role} onChange={setRole} />
        <Checkbox className="slowly" isSelected={helped} onChange={setHelped}>
          <span className="tick-box" aria-hidden="true" />
          Computer plays the other posts
        </Checkbox>
        <ClockBar view={view} link={link} onReset={reset} />
      </div>
      <DrillStage
        scene={scene}
        view={view}
        role={shown}
        can={(action) => mayDo(shown, scene, action)}
        onAction={(action) => {
          if (shown === role) link.act(action);
        }}
        refused={heard.refused}
        events={heard.events}
        history={heard.history}
      />
      {progress && (
        <details className="judged-so-far">
          <summary>Judged so far</summary>
          <JudgementList judgements={progress.judgements} />
        </details>
      )}
      <CautionList scene={scene} />
    </>
  );
}
