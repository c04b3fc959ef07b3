import { parentPort, workerData } from 'node:worker_threads';
import type { DxfReading } from '../../sheet/index.js';
import { readBlankDxf } from '../readBlankDxf.js';
import { readDxfPart } from '../readDxfPart.js';

/** A flat drawing of a part with what is told of it; without that, any outline as it is drawn. */
export interface DrawingRequest {
  readonly bytes: Uint8Array;
  readonly name: string;
  readonly told?: DxfReading;
}

const { bytes, name, told } = workerData as DrawingRequest;
parentPort?.postMessage(told === undefined ? readBlankDxf(bytes) : readDxfPart(bytes, name, told));
