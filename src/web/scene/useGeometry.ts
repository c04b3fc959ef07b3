import { useEffect, useMemo } from 'react';
import { BufferGeometry, Color, Float32BufferAttribute } from 'three';
import { COLOURS } from './look.js';

const useDisposed = (geometry: BufferGeometry): BufferGeometry => {
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
};

/** Triangles with a normal each, and the hatch's places where given (mm, `pitch` mm to a tile). */
export const useFaces = (corners: readonly number[], hatch?: readonly number[], pitch = 1): BufferGeometry =>
  useDisposed(useMemo(() => {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new Float32BufferAttribute(corners, 3));
    if (hatch) geometry.setAttribute('uv', new Float32BufferAttribute(hatch.map((v) => v / pitch), 2));
    geometry.computeVertexNormals();
    return geometry;
  }, [corners, hatch, pitch]));

/** All edges of a body as one object; tangent lines are paler. */
export const useEdges = (ends: readonly number[], soft?: readonly boolean[]): BufferGeometry =>
  useDisposed(useMemo(() => {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new Float32BufferAttribute(ends, 3));
    const [ink, pale] = [new Color(COLOURS.ink), new Color(COLOURS.soft)];
    const colours: number[] = [];
    for (let i = 0; i < ends.length / 3; i++) {
      const c = soft?.[Math.floor(i / 2)] ? pale : ink;
      colours.push(c.r, c.g, c.b);
    }
    geometry.setAttribute('color', new Float32BufferAttribute(colours, 3));
    return geometry;
  }, [ends, soft]));
