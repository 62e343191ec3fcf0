import type { HydrantClass } from '@plugside/fireground';

/** A hydrant's class of NFPA 291: its colour, and always its letter and the colour's name. */
export function ClassMark({ of }: { of: HydrantClass }) {
  return (
    <span className="class-mark">
      <span className="class-disc" data-class={of.name} aria-hidden="true" />
      Class {of.name}, {of.colour}
    </span>
  );
}
