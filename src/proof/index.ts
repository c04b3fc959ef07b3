export { type ProofOptions, type ProvenStep, proveTrial } from './proveTrial.js';
