import { useRef } from 'react';
import {
  Button,
  Header as ListHeader,
  Menu,
  MenuItem,
  MenuSection,
  MenuTrigger,
  Popover,
} from 'react-aria-components';
import { usePlan } from '../plan-store/plan-store.ts';
import { starts } from '../plan-store/starts.ts';
import { linkTo, openText, savePlan } from '../share/files.ts';

/** New plans, examples, files and the link. */
export function PlanMenu() {
  const file = useRef<HTMLInputElement>(null);
  const open = usePlan((state) => state.open);
  const tell = usePlan((state) => state.tell);

  const openFile = async (picked: File | undefined) => {
    if (!picked) return;
    const opened = openText(await picked.text(), picked.name);
    if (opened.ok) open(opened.plan, `Open ${picked.name}`);
    else tell(opened.message);
  };
  const act = async (key: string) => {
    const plan = usePlan.getState().history.present;
    const start = starts.find((one) => one.id === key);
    if (start) open(start.make(), `Start: ${start.text}`);
    else if (key === 'open') file.current?.click();
    else if (key === 'save-yaml') savePlan(plan, 'yaml');
    else if (key === 'save-json') savePlan(plan, 'json');
    else if (key === 'link') {
      const link = linkTo(plan, window.location.href);
      window.history.replaceState(null, '', link);
      try {
        await navigator.clipboard.writeText(link);
        tell({
          kind: 'done',
          text: 'Link copied. The whole plan travels in it; no server keeps it.',
        });
      } catch {
        tell({
          kind: 'done',
          text: 'The address of this page now carries the plan: copy it from there.',
        });
      }
    }
  };
  const list = (kind: 'pattern' | 'example') =>
    starts
      .filter((one) => one.kind === kind)
      .map((one) => (
        <MenuItem key={one.id} id={one.id} className="list-item" textValue={one.text}>
          {one.text}
        </MenuItem>
      ));
  return (
    <>
      <MenuTrigger>
        <Button className="quiet-button">Plan ▾</Button>
        <Popover className="popover">
          <Menu className="list" onAction={(key) => void act(String(key))}>
            <MenuSection>
              <ListHeader className="list-name">This plan</ListHeader>
              <MenuItem id="open" className="list-item">
                Open a file…
              </MenuItem>
              <MenuItem id="save-yaml" className="list-item">
                Save as YAML
              </MenuItem>
              <MenuItem id="save-json" className="list-item">
                Save as JSON
              </MenuItem>
              <MenuItem id="link" className="list-item">
                Copy a link with the plan
              </MenuItem>
            </MenuSection>
            <MenuSection>
              <ListHeader className="list-name">Examples, invented</ListHeader>
              {list('example')}
            </MenuSection>
            <MenuSection>
              <ListHeader className="list-name">Start a new plan</ListHeader>
              {list('pattern')}
            </MenuSection>
          </Menu>
        </Popover>
      </MenuTrigger>
      <input
        ref={file}
        type="file"
        hidden
        aria-label="Plan file"
        accept=".yaml,.yml,.json,application/yaml,application/json"
        onChange={(event) => {
          void openFile(event.target.files?.[0]);
          // The same file may be picked again once it is mended.
          event.target.value = '';
        }}
      />
    </>
  );
}
