/** Hands the file contract to the window, one method for one question; no logic. Runs in the sandbox. */
import { contextBridge, ipcRenderer, webUtils } from 'electron';
import { questionsBy, type FileService, type HandedName, type MenuCommand } from '../../renderer/files/fileService';
import { ASKED, HAND_DROPPED, HANDED, LIST_SAMPLES, QUESTION, READ_SAMPLE } from './channelNames';

const files: FileService = {
  shell: 'desktop',
  listSamples: () => ipcRenderer.invoke(LIST_SAMPLES),
  readSample: (name) => ipcRenderer.invoke(READ_SAMPLE, name),
  whenHanded: (take) => void ipcRenderer.on(HANDED, (_event, file: HandedName) => take(file)),
  whenAsked: (take) => void ipcRenderer.on(ASKED, (_event, command: MenuCommand) => take(command)),
  // the path is Chromium's own word for a file that a person dropped; a script of the page cannot make one up
  handDropped: (file) => ipcRenderer.invoke(HAND_DROPPED, webUtils.getPathForFile(file)),
  ...questionsBy((method, asked) => ipcRenderer.invoke(QUESTION, { method, asked })),
};

contextBridge.exposeInMainWorld('jounce', files);
