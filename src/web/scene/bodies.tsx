import { useMemo } from 'react';
import { DoubleSide, Matrix4, type Texture } from 'three';
import type { Rigid } from '../../geometry/index.js';
import { FatLines } from './FatLines.js';
import type { LetterSpot } from './letterSpot.js';
import { COLOURS, hatchTexture, letterTexture } from './look.js';
import type { SheetMesh } from './sheetMesh.js';
import type { Prism } from './toolMesh.js';
import { useEdges, useFaces } from './useGeometry.js';

const matrixOf = ({ x, y, z, o }: Rigid): Matrix4 =>
  new Matrix4().set(x[0], y[0], z[0], o[0], x[1], y[1], z[1], o[1], x[2], y[2], z[2], o[2], 0, 0, 0, 1);

/** Faces stand back a little so that the edges on them are whole. */
const BACK = { polygonOffset: true, polygonOffsetFactor: 1.5, polygonOffsetUnits: 2 } as const;

const Edges = ({ ends, soft }: { readonly ends: readonly number[]; readonly soft?: readonly boolean[] }) => (
  <lineSegments geometry={useEdges(ends, soft)}><lineBasicMaterial vertexColors /></lineSegments>
);

interface LetterProps {
  readonly letter: 'A' | 'B';
  readonly map: Texture;
  readonly spot: LetterSpot;
  readonly pose: Rigid;
  readonly half: number;
  /** mm, the largest that a letter is written. */
  readonly most: number;
}

const Letter = ({ letter, map, spot, pose, half, most }: LetterProps) => {
  const size = Math.min(spot.room * 1.3, most);
  // clear of the face by a hair, so that it is not lost in it
  const height = half + Math.max(0.05, size * 0.004);
  return (
    <group matrixAutoUpdate={false} matrix={matrixOf(pose)}>
      <mesh position={[spot.at[0], spot.at[1], letter === 'A' ? height : -height]} rotation={letter === 'A' ? [0, 0, 0] : [Math.PI, 0, 0]}>
        <planeGeometry args={[size, size]} />
        <meshBasicMaterial map={map} toneMapped={false} />
      </mesh>
    </group>
  );
};

interface SheetBodyProps {
  readonly mesh: SheetMesh;
  readonly spots: readonly LetterSpot[];
  readonly thickness: number;
  /** mm between two hatch lines. */
  readonly pitch: number;
}

/** In hatch pitches: a plate with less room bears no letter, and none is larger than this. */
const LEAST_ROOM = 0.7;
const MOST_SIZE = 2.6;

/** The sheet: A plain with its letter, B hatched with its letter. */
export const SheetBody = ({ mesh, spots, thickness, pitch }: SheetBodyProps) => {
  const hatch = useMemo(hatchTexture, []);
  const letters = useMemo(() => [['A', letterTexture('A')], ['B', letterTexture('B')]] as const, []);
  return (
    <group>
      <mesh geometry={useFaces(mesh.A.corners)}><meshLambertMaterial color={COLOURS.paper} {...BACK} /></mesh>
      <mesh geometry={useFaces(mesh.B.corners, mesh.B.hatch, pitch)}><meshLambertMaterial map={hatch} {...BACK} /></mesh>
      <mesh geometry={useFaces(mesh.rim.corners)}><meshLambertMaterial color={COLOURS.rim} side={DoubleSide} {...BACK} /></mesh>
      <mesh geometry={useFaces(mesh.lit.corners)}><meshBasicMaterial color={COLOURS.lit} {...BACK} /></mesh>
      <Edges ends={mesh.edges} soft={mesh.soft} />
      {mesh.litLines.length > 0 && <FatLines ends={mesh.litLines} colour={COLOURS.accent} width={5} />}
      {spots.filter(({ room }) => room > pitch * LEAST_ROOM).map((spot) => letters.map(([letter, map]) => (
        <Letter key={`${spot.plate} ${letter}`} letter={letter} map={map} spot={spot} pose={mesh.poses[spot.plate]!} half={thickness / 2} most={pitch * MOST_SIZE} />
      )))}
    </group>
  );
};

/** A body of which the edges alone are drawn, so that it hides nothing. */
export const EdgesBody = ({ prism, up }: { readonly prism: Prism; readonly up: number }) => <group position={[0, 0, up]}><Edges ends={prism.edges} /></group>;

/** A tool, finger or the bed. */
export const PrismBody = ({ prism, colour, up = 0, back = 0 }: { readonly prism: Prism; readonly colour: string; readonly up?: number; readonly back?: number }) => (
  <group position={[0, back, up]}>
    <mesh geometry={useFaces(prism.corners)}><meshLambertMaterial color={colour} side={DoubleSide} {...BACK} /></mesh>
    <Edges ends={prism.edges} />
  </group>
);
