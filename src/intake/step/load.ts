import type { Brep } from './brep.js';
import { extractBreps } from './extract.js';
import type { Kernel } from './kernel.js';

/** What the kernel made of a STEP file: its bodies, or in one word why it made nothing. */
export type Loaded = { readonly bodies: readonly Brep[] } | { readonly failed: 'not STEP' | 'no shape' };

/** Reads a STEP file through the kernel's own file system; lengths come out in millimetres whatever the file's unit. */
export const loadStep = (oc: Kernel, bytes: Uint8Array): Loaded => {
  const name = 'in.step';
  oc.FS.writeFile(name, bytes);
  const reader = new oc.STEPControl_Reader();
  try {
    if (reader.ReadFile(name) !== oc.IFSelect_ReturnStatus.IFSelect_RetDone) return { failed: 'not STEP' };
    reader.TransferRoots();
    if (reader.NbShapes() === 0) return { failed: 'no shape' };
    const shape = reader.OneShape();
    try {
      return shape.IsNull() ? { failed: 'no shape' } : { bodies: extractBreps(oc, shape) };
    } finally {
      shape.delete();
    }
  } finally {
    reader.delete();
    oc.FS.unlink(name);
  }
};
