import { spawn } from 'node:child_process';
import { root } from './paths.mjs';

/** Runs a command in the project's folder, its output on ours unless `quiet`; resolves to its exit code and, when quiet, output. */
export const run = (command, args, { quiet = false, env = {}, stdout = 'inherit' } = {}) =>
  new Promise((done) => {
    const child = spawn(command, args, {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: quiet ? ['ignore', 'pipe', 'pipe'] : ['ignore', stdout, 'inherit'],
    });
    let output = '';
    child.stdout?.on('data', (piece) => (output += piece));
    child.stderr?.on('data', (piece) => (output += piece));
    child.on('error', (fault) => done({ code: 127, output: `${command}: ${fault.message}` }));
    child.on('close', (code, signal) => done({ code: code ?? (signal ? 1 : 0), output }));
  });

/** npm itself, the same one that runs us where it does. */
export const npm = (args, options) => {
  const script = process.env.npm_execpath;
  if (script?.endsWith('.js')) return run(process.execPath, [script, ...args], options);
  return run(process.platform === 'win32' ? 'npm.cmd' : 'npm', args, options);
};

/** A program of a package in node_modules, by the path of its script. */
export const tool = (script, args, options) => run(process.execPath, [script, ...args], options);
