import type { STEPControl_Reader, TopoDS_Shape, XSControl_Reader } from 'replicad-opencascadejs';
import type { Brep } from './brep.js';
import { extractBreps, soundBreps } from './extract.js';
import type { Kernel } from './kernel.js';

/** What the kernel made of a STEP file: its bodies, or in one word why it made nothing. */
export type Loaded = { readonly bodies: readonly Brep[] } | { readonly failed: 'not STEP' | 'no shape' };

const NAME = 'in.step';

/** The file opened in the kernel's own file system, handed on and let go; undefined where it is not STEP. */
const opened = <T>(oc: Kernel, bytes: Uint8Array, use: (reader: STEPControl_Reader) => T): T | undefined => {
  oc.FS.writeFile(NAME, bytes);
  const reader = new oc.STEPControl_Reader();
  try {
    return reader.ReadFile(NAME) === oc.IFSelect_ReturnStatus.IFSelect_RetDone ? use(reader) : undefined;
  } finally {
    reader.delete();
    oc.FS.unlink(NAME);
  }
};

const shapeOf = <T>(reader: XSControl_Reader, use: (shape: TopoDS_Shape) => T): T | undefined => {
  if (reader.NbShapes() === 0) return undefined;
  const shape = reader.OneShape();
  try {
    return shape.IsNull() ? undefined : use(shape);
  } finally {
    shape.delete();
  }
};

/** Reads a STEP file, mended by the kernel as it mends any file; lengths come out in millimetres whatever the file's unit, times `scale`. */
export const loadStep = (oc: Kernel, bytes: Uint8Array, scale = 1): Loaded =>
  opened(oc, bytes, (reader): Loaded => {
    reader.TransferRoots();
    return shapeOf(reader, (shape) => ({ bodies: extractBreps(oc, shape, scale) })) ?? { failed: 'no shape' };
  }) ?? { failed: 'not STEP' };

/**
 * Reads a STEP file as it is written. The kernel's mending takes some twenty times as long as making the shape, and sound files need none
 * of it; undefined where any body is not sound.
 */
export const loadAsWritten = (oc: Kernel, bytes: Uint8Array, scale = 1): readonly Brep[] | undefined =>
  opened(oc, bytes, (reader) => {
    // the roots are found by the STEP reader, which sets the units, and taken over by the general one, which mends nothing
    const roots = reader.NbRootsForTransfer();
    const session = reader.WS();
    const bare = new oc.XSControl_Reader(session, false);
    try {
      for (let i = 1; i <= roots; i++) {
        const root = reader.RootForTransfer(i);
        const done = bare.TransferEntity(root);
        root.delete();
        if (!done) return undefined;
      }
      return shapeOf(bare, (shape) => soundBreps(oc, shape, scale));
    } finally {
      bare.delete();
      session.delete();
    }
  });
