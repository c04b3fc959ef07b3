import { parentPort, workerData } from 'node:worker_threads';
import type { DxfReading } from '../../sheet/index.js';
import { readDxfPart } from '../readDxfPart.js';

export interface DrawingRequest {
  readonly bytes: Uint8Array;
  readonly name: string;
  readonly told: DxfReading;
}

const { bytes, name, told } = workerData as DrawingRequest;
parentPort?.postMessage(readDxfPart(bytes, name, told));
