/** Whether a process of this number runs on this machine. */
export const isRunning = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (reason) {
    return (reason as NodeJS.ErrnoException).code === 'EPERM';
  }
};
