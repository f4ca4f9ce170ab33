import { Popover } from '../look/controls/Popover';
import { useWindow } from '../shell/benchContext';
import { prefer } from '../state/actions/prefer';
import { RIDE_KINDS, type RideKind } from './ride';
import { PLAY_KIND, PLAY_LABELS } from './playChoices';

interface PlayControlProps {
  readonly kind: RideKind;
  readonly isSteered: boolean;
  readonly playing: boolean;
  readonly onToggle: () => void;
}

/** Play and stop, and what is played. */
export const PlayControl = ({ kind, isSteered, playing, onToggle }: PlayControlProps) => {
  const { store } = useWindow();
  return (
    <span className="playcontrol">
      <button
        type="button"
        className="play"
        aria-label={playing ? 'Stop' : `Play ${PLAY_LABELS[kind].toLowerCase()}`}
        title={`${playing ? 'Stop' : `Play ${PLAY_LABELS[kind].toLowerCase()}`} (space bar)`}
        aria-pressed={playing}
        onClick={onToggle}
      >
        <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
          <path d={playing ? 'M4 2h3.5v14H4zM10.5 2H14v14h-3.5z' : 'M4 2l11 7-11 7z'} fill="currentColor" />
        </svg>
      </button>
      <Popover
        label="What is played"
        role="menu"
        button={{
          className: 'playkind',
          label: `Played: ${PLAY_LABELS[kind].toLowerCase()}`,
          title: 'What is played',
          content: (
            <svg width="10" height="10" viewBox="0 0 10 10" aria-hidden="true">
              <path d="M1 3h8L5 8z" fill="currentColor" />
            </svg>
          ),
        }}
      >
        {(close) =>
          RIDE_KINDS.map((one) => (
            <button
              key={one}
              type="button"
              role="menuitemradio"
              tabIndex={-1}
              aria-checked={one === kind}
              disabled={one === 'steer' && !isSteered}
              onClick={() => {
                close();
                prefer(store, PLAY_KIND, one);
              }}
            >
              <svg className="tick" width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
                {one === kind && <path d="M2 6.5l3 3L10.5 2.5" fill="none" stroke="currentColor" strokeWidth="1.8" />}
              </svg>
              {one === 'combined' && !isSteered ? 'Bump and roll' : PLAY_LABELS[one]}
            </button>
          ))
        }
      </Popover>
    </span>
  );
};
