import { Canvas, useThree } from '@react-three/fiber';
import { useLayoutEffect, useMemo, useRef, useState, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';
import { OrthographicCamera } from 'three';
import { add3, scale3 } from '../../geometry/index.js';
import { type Direction, type Extent, axesOf } from './extent.js';
import type { Ray } from './pickFeature.js';

/** Where the eye stands; `zoom` 1 shows all. */
interface Eye extends Direction {
  readonly zoom: number;
}

interface View3dProps {
  /** What is shown, for those who do not see it. */
  readonly label: string;
  readonly extent: Extent;
  readonly from: Direction;
  /** Stands in where the browser has no WebGL. */
  readonly instead: ReactNode;
  readonly children: ReactNode;
  /** Something was touched, not dragged: the line of sight there, and how many mm a pixel is. */
  readonly touch?: ((ray: Ray, pixel: number) => void) | undefined;
}

const STEP = 15;
/** Pixels that a finger may slip and still have touched, not dragged. */
const STILL = 6;
const within = (v: number, low: number, high: number): number => Math.min(high, Math.max(low, v));

/** The share of the view that is filled. */
const FILLED = 0.94;

const Aim = ({ extent: { centre, radius, half }, eye }: { readonly extent: Extent; readonly eye: Eye }) => {
  const { camera, size, invalidate } = useThree();
  useLayoutEffect(() => {
    if (!(camera instanceof OrthographicCamera)) return;
    const { towards } = axesOf(eye);
    const far = radius * 6;
    camera.up.set(0, 0, 1);
    camera.position.set(centre[0] + far * towards[0], centre[1] + far * towards[1], centre[2] + far * towards[2]);
    camera.lookAt(...centre);
    [camera.near, camera.far] = [radius * 0.5, radius * 14];
    camera.zoom = Math.min(size.width / (2 * half[0]), size.height / (2 * half[1])) * FILLED * eye.zoom;
    camera.updateProjectionMatrix();
    invalidate();
  }, [camera, size, invalidate, centre, radius, half, eye]);
  return null;
};

const hasWebGl = (): boolean => {
  const probe = document.createElement('canvas').getContext('webgl2');
  probe?.getExtension('WEBGL_lose_context')?.loseContext();
  return probe !== null;
};

/** Something in space that can be turned by dragging, by the arrow keys and by buttons; drawn only when it changes. */
export const View3d = ({ label, extent, from, instead, children, touch }: View3dProps) => {
  const can = useMemo(hasWebGl, []);
  const [eye, setEye] = useState<Eye>({ ...from, zoom: 1 });
  const held = useRef<readonly [number, number]>(null);
  const began = useRef<readonly [number, number]>(null);
  const turn = (round: number, up: number): void => setEye((e) => ({ ...e, round: e.round + round, up: within(e.up + up, -89, 89) }));
  const nearer = (factor: number): void => setEye((e) => ({ ...e, zoom: within(e.zoom * factor, 0.5, 12) }));
  const keys: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => turn(-STEP, 0), ArrowRight: () => turn(STEP, 0), ArrowUp: () => turn(0, STEP), ArrowDown: () => turn(0, -STEP),
    '+': () => nearer(1.25), '-': () => nearer(0.8), Home: () => setEye({ ...from, zoom: 1 }),
  };
  const press = (event: KeyboardEvent): void => {
    const act = keys[event.key];
    if (!act) return;
    event.preventDefault();
    event.stopPropagation();
    act();
  };
  const drag = (event: PointerEvent): void => {
    if (!held.current) return;
    turn((held.current[0] - event.clientX) * 0.5, (event.clientY - held.current[1]) * 0.5);
    held.current = [event.clientX, event.clientY];
  };
  const release = (event: PointerEvent): void => {
    held.current = null;
    const [x, y] = began.current ?? [Infinity, Infinity];
    if (!touch || Math.hypot(event.clientX - x, event.clientY - y) > STILL) return;
    const box = event.currentTarget.getBoundingClientRect();
    const pixel = 1 / (Math.min(box.width / (2 * extent.half[0]), box.height / (2 * extent.half[1])) * FILLED * eye.zoom);
    const { right, over, towards } = axesOf(eye);
    const across = scale3(right, (event.clientX - box.left - box.width / 2) * pixel);
    const upward = scale3(over, (box.top + box.height / 2 - event.clientY) * pixel);
    touch({ origin: add3(add3(add3(extent.centre, across), upward), scale3(towards, extent.radius * 6)), direction: scale3(towards, -1) }, pixel);
  };
  if (!can) return <div className="view3d flat">{instead}</div>;
  return (
    <div className="view3d">
      <div
        className="space" role="application" aria-label={`${label} Arrow keys turn it, plus and minus bring it nearer or further, Home puts it back.`} tabIndex={0} onKeyDown={press}
        onPointerDown={(event) => { held.current = [event.clientX, event.clientY]; began.current = held.current; event.currentTarget.setPointerCapture(event.pointerId); }}
        onPointerMove={drag} onPointerUp={release} onPointerCancel={() => { held.current = null; }}
      >
        <Canvas orthographic flat frameloop="demand" dpr={[1, 2]} gl={{ antialias: true, preserveDrawingBuffer: true }}>
          <Aim extent={extent} eye={eye} />
          <ambientLight intensity={2.3} />
          <directionalLight position={[2, -3, 5]} intensity={0.9} />
          {children}
        </Canvas>
      </div>
      <div className="view-buttons no-print">
        <button type="button" aria-label="Turn left" onClick={() => turn(-STEP, 0)}>←</button>
        <button type="button" aria-label="Turn right" onClick={() => turn(STEP, 0)}>→</button>
        <button type="button" aria-label="See more from above" onClick={() => turn(0, STEP)}>↑</button>
        <button type="button" aria-label="See more from below" onClick={() => turn(0, -STEP)}>↓</button>
        <button type="button" aria-label="Nearer" onClick={() => nearer(1.25)}>+</button>
        <button type="button" aria-label="Further" onClick={() => nearer(0.8)}>−</button>
      </div>
    </div>
  );
};
