import { type Beam, type CrowningDevice, sectionBeam } from '../forming/index.js';
import type { Machine } from '../shop/index.js';

/** Ram and bed of a machine as beams, and its crowning device. */
export interface MachineBeams {
  readonly ram: Beam;
  readonly bed: Beam;
  readonly device: CrowningDevice | null;
}

/**
 * The ram hangs on its two cylinders; the bed stands on the side frames. Sections from the machine's data. A crowning
 * device is taken to lift the bed between the frames to a parabola (common practice, no source): the data name no shape.
 */
export const machineBeams = (machine: Machine): MachineBeams => ({
  ram: sectionBeam(machine.beam, machine.cylinders.spacing),
  bed: sectionBeam(machine.bed, machine.betweenFrames),
  device: machine.crowning === 'none' ? null : { shape: 'parabola', length: machine.betweenFrames },
});
