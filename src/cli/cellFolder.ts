import { mkdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { FitCell } from '../fit/index.js';
import type { CellCache } from '../server/index.js';
import { Fault } from './fault.js';
import { writeWhole } from './writeFile.js';

/** Cells of the fit board kept in a folder, one file each, named by what they depend on. A file that cannot be read is computed again. */
export const cellFolder = async (folder: string): Promise<CellCache> => {
  await mkdir(folder, { recursive: true }).catch(() => {
    throw new Fault(`${folder}: it cannot be made a folder for the cells.`);
  });
  const file = (key: string): string => join(folder, `${key}.json`);
  return {
    get: async (key) => {
      try {
        return JSON.parse(await readFile(file(key), 'utf8')) as FitCell;
      } catch {
        return undefined;
      }
    },
    put: (key, cell) => writeWhole(file(key), JSON.stringify(cell)),
  };
};
