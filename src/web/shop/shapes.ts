/** The parameters of each cross-section, by the shop's own names; lengths in mm. */
export const SHAPES: Readonly<Record<string, readonly (readonly [name: string, label: string, usual: number])[]>> = {
  rectangle: [['back.0', 'Back, from', -40], ['back.1', 'Back, to', 40], ['up.0', 'Up, from', 0], ['up.1', 'Up, to', 100]],
  beam: [['front', 'Front face before the bending plane', 40], ['thickness', 'Thickness', 80], ['from', 'Begins over the shoulder seat', 55], ['height', 'Height', 900]],
  clamp: [['width', 'Width', 80], ['height', 'Height', 55], ['chamfer', 'Lower corners taken off by', 8]],
  bed: [['topWidth', 'Width at the top', 80], ['topDepth', 'Down to', 120], ['bodyWidth', 'Width below', 180], ['depth', 'Depth in all', 850]],
  finger: [['noseHeight', 'Nose height', 10], ['stepBehind', 'Step behind the nose', 25], ['stepHeight', 'Step height', 24], ['clear', 'Clear below to', 62], ['drop', 'Drop behind', 14], ['length', 'Length', 105]],
  straight: [['bodyWidth', 'Width of the body', 12], ['bodyTop', 'Body up to', 78], ['shoulderWidth', 'Width of the shoulder', 30], ['shoulderFrom', 'Shoulder from', 92]],
  gooseneck: [
    ['noseFront', 'Nose before the bending plane', 5], ['noseFrontTo', 'Nose upright to', 14], ['noseBack', 'Flank ends behind the plane', 20], ['throat', 'Relief: neck front behind the plane', 14],
    ['throatFrom', 'Relief from', 38], ['throatTo', 'Relief to', 108], ['neckBack', 'Neck back behind the plane', 40], ['neckFrom', 'Neck back from', 58], ['neckTo', 'Neck back to', 122],
    ['shoulderWidth', 'Width of the shoulder', 32], ['shoulderFront', 'Shoulder in front from', 140], ['shoulderBack', 'Shoulder behind from', 150],
  ],
  flattening: [['faceWidth', 'Width of the face', 30], ['faceTop', 'Face up to', 60], ['shoulderWidth', 'Width of the shoulder', 30], ['shoulderFrom', 'Shoulder from', 92]],
  offset: [['landWidth', 'Width of both lands', 36], ['landTop', 'Lands up to', 20], ['shoulderWidth', 'Width of the shoulder', 30], ['shoulderFrom', 'Shoulder from', 26]],
  step: [['landWidth', 'Width of both lands', 50]],
  block: [['topWidth', 'Width at the top', 26], ['baseWidth', 'Width at the base', 30], ['stepAt', 'Step at', 30], ['flat', 'Floor of the V', 0.6]],
  anvil: [['width', 'Width', 40]],
};
