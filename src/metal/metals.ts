import type { Metal } from './metal.js';
import { nonferrous } from './nonferrous.js';
import { steels } from './steels.js';

/** Every metal that comes with the program. A shop adds its own beside them. */
export const metals: readonly Metal[] = [...steels, ...nonferrous];

/** The metal of that id, or undefined. */
export const metalById = (id: string, among: readonly Metal[] = metals): Metal | undefined =>
  among.find((metal) => metal.id === id);
