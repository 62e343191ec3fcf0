import type { ReactNode } from 'react';
import { ViewSwitches } from '../app/ViewSwitches.tsx';
import { Wordmark } from '../app/Wordmark.tsx';
import { PlaceNav } from './PlaceNav.tsx';

interface PlaceHeaderProps {
  /** Left out where the place has its own heading below. */
  title?: string;
  /** Data made up for practice: marked beside the title. */
  invented?: boolean;
  /** The place's own buttons, before units and theme. */
  children?: ReactNode;
}

/** Top of every place but the lay, which has its plan's title there. */
export function PlaceHeader({ title, invented, children }: PlaceHeaderProps) {
  return (
    <header className="header">
      <Wordmark />
      <PlaceNav />
      <div className="plan-title">
        {title !== undefined && <h1 className="place-title">{title}</h1>}
        {invented && <span className="invented">invented for practice</span>}
      </div>
      <div className="header-actions">
        {children}
        <ViewSwitches />
      </div>
    </header>
  );
}
