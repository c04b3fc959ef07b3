/** ms of processor time that this process has used: a clock that other work on the machine does not turn. */
export const cpuMilliseconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
