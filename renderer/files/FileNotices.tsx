import { useState } from 'react';
import { VerdictShape } from '../look/controls/VerdictShape';
import { useBench, useWindow } from '../shell/benchContext';
import { openRecentPicked } from '../state/actions/chooseCar';
import { takeTheirs } from '../state/actions/openCar';
import { dismissNotice, downloadCar, saveCar, saveCarAs, saveOver } from '../state/actions/saveCar';
import type { FileNotice, NoticeWay } from '../state/filesState';
import { clockTime } from './times';

const WORDS: Readonly<Record<NoticeWay, string>> = {
  openAgain: 'Open it again…',
  saveAgain: 'Save again',
  saveOver: 'Keep mine: write it',
  takeTheirs: 'Take theirs',
  saveAs: 'Save as…',
  download: 'Download a copy',
};

const useWays = (notice: FileNotice): Readonly<Record<NoticeWay, () => void>> => {
  const { store, files } = useWindow();
  return {
    openAgain: () => void openRecentPicked(store, files, notice.name ?? ''),
    saveAgain: () => void saveCar(store, files),
    saveOver: () => void saveOver(store, files),
    takeTheirs: () => void takeTheirs(store, files),
    saveAs: () => void saveCarAs(store, files),
    download: () => downloadCar(store, 'copy'),
  };
};

interface BarProps {
  readonly notice: FileNotice;
  readonly onClose?: () => void;
}

const Bar = ({ notice, onClose }: BarProps) => {
  const ways = useWays(notice);
  const { title, text, news } = notice;
  return (
    <div className={`filenotice ${news === 'good' ? 'news' : ''}`} role={news ? 'status' : 'alert'}>
      <VerdictShape verdict={news === 'good' ? 'within' : 'close'} />
      <div className="said">
        <b>{title}</b> {text}
      </div>
      {notice.ways.map((way) => (
        <button key={way} type="button" className="button" onClick={ways[way]}>
          {WORDS[way]}
        </button>
      ))}
      {onClose && (
        <button type="button" className="button" onClick={onClose}>
          Close
        </button>
      )}
    </div>
  );
};

/** A file of the same name, size and time in another folder would look the same. */
const NOT_SURE = 'A browser does not tell where a file is; this one has the same name, size and time of writing. ';

/** What there is to say about the open file, between header and page. Each message says what, where and the ways on. */
export const FileNotices = () => {
  const { store } = useWindow();
  const { notice, lostAt, others, alike } = useBench((state) => state.files);
  const [read, setRead] = useState(0);
  const lost: FileNotice | null =
    lostAt === null
      ? null
      : {
          title: `The program behind this window ended at ${clockTime(lostAt)}.`,
          text: 'You can go on working here, but changes are not kept on the disk any more and cannot be saved to the file. Download a copy, then start Jounce again with npm start.',
          ways: ['download'],
        };
  const count = others + alike;
  const isSure = others > 0;
  const elsewhere: FileNotice | null =
    count === 0 || count === read
      ? null
      : {
          title: `This file ${isSure ? 'is' : 'seems to be'} open in another window too.`,
          text: `${isSure ? '' : NOT_SURE}Whichever saves second is asked before it writes over the other’s changes.`,
          ways: [],
          news: 'mind',
        };
  return (
    <div className="filenotices">
      {lost && <Bar notice={lost} />}
      {notice && <Bar notice={notice} onClose={() => dismissNotice(store)} />}
      {elsewhere && <Bar notice={elsewhere} onClose={() => setRead(count)} />}
    </div>
  );
};
