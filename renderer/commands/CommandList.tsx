import { Command as List } from 'cmdk';
import { useEffect, useMemo, useRef, useState } from 'react';
import { useWindow } from '../shell/benchContext';
import { judgeCommand, markTyped, type Command } from './command';
import { windowCommands } from './windowCommands';

const Row = ({ command, typed }: { readonly command: Command; readonly typed: string }) => (
  <>
    <span className="commandlabel">
      {markTyped(command.label, typed).map((run, index) => (run.typed ? <b key={index}>{run.text}</b> : run.text))}
    </span>
    <span className="quiet">{command.where}</span>
    <span className="commandkeys">{command.keys}</span>
  </>
);

const judge = (_id: string, typed: string, [label = '', ...others]: string[] = []): number => judgeCommand(label, others, typed);

/** The one list that reaches everything: type a few letters of it, Enter does it. */
export const CommandList = ({ onClose }: { readonly onClose: () => void }) => {
  const tools = useWindow();
  const commands = useMemo(() => windowCommands(tools), [tools]);
  const [typed, setTyped] = useState('');
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
    dialog.current?.querySelector('input')?.focus();
  }, []);
  const choose = (command: Command) => {
    dialog.current?.close();
    command.run();
  };
  return (
    <dialog
      ref={dialog}
      className="commandlist"
      aria-label="Command list"
      onClose={onClose}
      onClick={(event) => event.target === dialog.current && dialog.current.close()}
    >
      <List label="Command list" loop filter={judge}>
        <div className="commandinput">
          <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
            <circle cx="7" cy="7" r="4.6" />
            <path d="M10.5 10.5L15 15" />
          </svg>
          <List.Input value={typed} onValueChange={setTyped} placeholder="What do you want to do?" />
          <span className="quiet">{commands.length} commands</span>
        </div>
        <List.List label="Commands">
          <List.Empty className="none">Nothing is called “{typed}”. Try fewer letters.</List.Empty>
          {commands.map((command) => (
            <List.Item
              key={command.id}
              value={command.id}
              keywords={[command.label, command.where, ...(command.words ?? [])]}
              onSelect={() => choose(command)}
            >
              <Row command={command} typed={typed} />
            </List.Item>
          ))}
        </List.List>
      </List>
      <p className="commandfoot quiet">Enter does it · arrows choose · Esc closes, nothing changed</p>
    </dialog>
  );
};
