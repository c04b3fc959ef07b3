import type { TopoDS_Shape } from 'replicad-opencascadejs';
import { type Part, develop } from '../../sheet/index.js';
import { type NoSolid, foldedSolid } from './foldedSolid.js';
import type { Kernel } from './kernel.js';

/** A shape as the text of a STEP file (AP214, millimetres). */
export const stepText = (oc: Kernel, shape: TopoDS_Shape, name: string): string => {
  const file = 'out.step';
  const writer = new oc.STEPControl_Writer();
  const progress = new oc.Message_ProgressRange();
  try {
    oc.Interface_Static.SetCVal('write.step.product.name', name.replace(/[^\x20-\x7e]/g, '_'));
    writer.Transfer(shape, oc.STEPControl_StepModelType.STEPControl_AsIs, true, progress);
    if (writer.Write(file) !== oc.IFSelect_ReturnStatus.IFSelect_RetDone) throw new Error('the kernel wrote no STEP file');
    return new TextDecoder('latin1').decode(oc.FS.readFile(file) as Uint8Array);
  } finally {
    progress.delete();
    writer.delete();
    try {
      oc.FS.unlink(file);
    } catch {
      // nothing was written: the fault above tells it
    }
  }
};

const written = (oc: Kernel, part: Part, shares: readonly number[]): { readonly text: string; readonly mm3: number } | NoSolid => {
  const sheet = develop(part, { name: 'K-factor', k: 0.5 });
  const solid = foldedSolid(oc, sheet, part.bends.map((bend, i) => bend.bendAngle * shares[i]!));
  if ('sentence' in solid) return solid;
  const properties = new oc.GProp_GProps();
  try {
    oc.BRepGProp.VolumeProperties(solid, properties, false, false, false);
    return { text: stepText(oc, solid, part.name), mm3: properties.Mass() };
  } finally {
    properties.delete();
    solid.delete();
  }
};

/**
 * The part as STEP text with each bend turned through a share (0 flat, 1 finished) of its angle; part-way the middle of
 * the sheet keeps its length (K = 0.5). `mm3`: the kernel's own volume of the solid. What the kernel cannot build
 * (plates that run through each other, for instance) is said in a sentence.
 */
export const writeStep = (oc: Kernel, part: Part, shares: readonly number[]): ReturnType<typeof written> => {
  try {
    return written(oc, part, shares);
  } catch (fault) {
    // the kernel's own exceptions carry no words of use; anything else is a defect of ours
    if (fault instanceof Error) throw fault;
    return { sentence: `The geometry kernel could not build ${part.name} as one solid of ${part.plates.length} plates and ${part.bends.length} bends.` };
  }
};
