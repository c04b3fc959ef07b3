import { useEffect, useMemo } from 'react';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';

/** Broad lines that are seen through whatever lies in front: pairs of ends, three numbers each; `width` in pixels. */
export const FatLines = ({ ends, colour, width }: { readonly ends: readonly number[]; readonly colour: string; readonly width: number }) => {
  const lines = useMemo(() => {
    const geometry = new LineSegmentsGeometry().setPositions([...ends]);
    return new LineSegments2(geometry, new LineMaterial({ color: colour, linewidth: width, depthTest: false }));
  }, [ends, colour, width]);
  useEffect(() => () => {
    lines.geometry.dispose();
    lines.material.dispose();
  }, [lines]);
  return <primitive object={lines} renderOrder={2} />;
};
