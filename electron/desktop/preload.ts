/** Hands the file contract to the window, one method for one channel; no logic. Runs in the sandbox. */
import { contextBridge, ipcRenderer } from 'electron';
import type { FileService } from '../../renderer/files/fileService';
import { LIST_SAMPLES, READ_SAMPLE } from './channelNames';

const files: FileService = {
  listSamples: () => ipcRenderer.invoke(LIST_SAMPLES),
  readSample: (name) => ipcRenderer.invoke(READ_SAMPLE, name),
};

contextBridge.exposeInMainWorld('jounce', files);
