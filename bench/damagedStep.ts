import { mulberry32 } from './mulberry32.js';

/** What a reader meets once in its life in the place of a number. */
const EXTREMES = ['0.', '-1.', '1.E308', '-1.E308', '1.E-320', '1.E400', 'NaN', '999999999', '-2147483648', '4294967296', '1.E17', '1.E-9', '', '$', '*', '()', "'x'", '.T.', '1.0000003'];
const HEAD = "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((''),'2;1');\nFILE_NAME('','',(''),(''),'','','');\nFILE_SCHEMA(('AUTOMOTIVE_DESIGN'));\nENDSEC;\nDATA;\n";
const TAIL = 'ENDSEC;\nEND-ISO-10303-21;\n';

/** Product, context and representation that hold one item; numbers below 100 are taken. */
const held = (item: string, rest: readonly string[], unit = "(LENGTH_UNIT() NAMED_UNIT(*) SI_UNIT(.MILLI.,.METRE.))"): string =>
  [
    HEAD,
    "#1=APPLICATION_CONTEXT('x');", "#2=PRODUCT_CONTEXT('',#1,'mechanical');", "#3=PRODUCT('p','p','',(#2));", "#4=PRODUCT_DEFINITION_FORMATION('','',#3);",
    "#5=PRODUCT_DEFINITION_CONTEXT('part definition',#1,'design');", "#6=PRODUCT_DEFINITION('design','',#4,#5);", "#7=PRODUCT_DEFINITION_SHAPE('','',#6);",
    '#8=SHAPE_DEFINITION_REPRESENTATION(#7,#9);', `#9=ADVANCED_BREP_SHAPE_REPRESENTATION('',(#15,${item}),#10);`,
    "#10=(GEOMETRIC_REPRESENTATION_CONTEXT(3) GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((#14)) GLOBAL_UNIT_ASSIGNED_CONTEXT((#11,#12,#13)) REPRESENTATION_CONTEXT('',''));",
    `#11=${unit};`, '#12=(NAMED_UNIT(*) PLANE_ANGLE_UNIT() SI_UNIT($,.RADIAN.));', '#13=(NAMED_UNIT(*) SI_UNIT($,.STERADIAN.) SOLID_ANGLE_UNIT());',
    "#14=UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(1.E-7),#11,'distance_accuracy_value','');", "#15=AXIS2_PLACEMENT_3D('',#16,#17,#18);",
    "#16=CARTESIAN_POINT('',(0.,0.,0.));", "#17=DIRECTION('',(0.,0.,1.));", "#18=DIRECTION('',(1.,0.,0.));", ...rest, TAIL,
  ].join('\n');

/** Files made to hang or burst a reader: numbers, counts, nests and rings beyond all measure. */
const traps = (random: () => number): readonly (() => string)[] => {
  const many = Math.floor(10 ** (3 + 9 * random()));
  const some = Math.floor(10 ** (2 + 2.5 * random()));
  const row = (n: number, of: (i: number) => string): string => Array.from({ length: n }, (_, i) => of(i)).join(',');
  const points = (n: number): string[] => Array.from({ length: n }, (_, i) => `#${1000 + i}=CARTESIAN_POINT('',(${i % 7}.,${i % 5}.,${(random() * 100).toFixed(3)}));`);
  const face = (surface: string): string[] => [
    "#100=MANIFOLD_SOLID_BREP('',#101);", "#101=CLOSED_SHELL('',(#102));", `#102=ADVANCED_FACE('',(#103),${surface},.T.);`, "#103=FACE_BOUND('',#104,.T.);", "#104=EDGE_LOOP('',(#105));",
    "#105=ORIENTED_EDGE('',*,*,#106,.T.);", "#106=EDGE_CURVE('',#107,#107,#108,.T.);", "#107=VERTEX_POINT('',#16);", "#108=CIRCLE('',#15,1.);", "#109=PLANE('',#15);",
  ];
  return [
    // numbers of records in the billions, the same number over and over, references to nothing
    () => held(`#${many}`, [`#${many}=MANIFOLD_SOLID_BREP('',#4294967295);`, `#4294967295=CLOSED_SHELL('',(${row(some, (i) => `#${many + i + 1}`)}));`]),
    () => held('#100', Array.from({ length: some }, () => "#100=MANIFOLD_SOLID_BREP('',#100);")),
    // brackets in brackets, a string and a comment without an end, one record without an end
    () => `${HEAD}#1=CARTESIAN_POINT('',${'('.repeat(10 * some)}0.${')'.repeat(random() < 0.5 ? 10 * some : 0)});\n${TAIL}`,
    () => `${HEAD}#1=CARTESIAN_POINT('${'a'.repeat(20 * some)}`,
    () => `${HEAD}/*${'* '.repeat(20 * some)}`,
    () => `${HEAD}#1=CLOSED_SHELL('',(${row(10 * some, () => '#1')}`,
    // rings: a shell of itself, a loop of a face, a placement of itself, trimmed curves of one another
    () => held('#100', [...face('#109').filter((line) => !line.startsWith('#104')), `#104=EDGE_LOOP('',(${row(some, () => '#105')}));`]),
    () => held('#100', ["#100=MANIFOLD_SOLID_BREP('',#101);", "#101=CLOSED_SHELL('',(#102,#101));", "#102=ORIENTED_CLOSED_SHELL('',*,#101,.T.);"]),
    () => held('#100', face('#110').concat("#110=OFFSET_SURFACE('',#110,1.,.F.);")),
    () => held('#100', [...face('#110'), "#110=SURFACE_OF_LINEAR_EXTRUSION('',#111,#112);", "#111=TRIMMED_CURVE('',#111,(PARAMETER_VALUE(0.)),(PARAMETER_VALUE(1.)),.T.,.PARAMETER.);", "#112=VECTOR('',#17,1.);"]),
    // a thousand faces that are one, an offset of an offset of an offset
    () => held('#100', face('#109').map((line) => (line.startsWith('#101') ? `#101=CLOSED_SHELL('',(${row(some, () => '#102')}));` : line))),
    () => held('#100', [...face('#2000'), ...Array.from({ length: some }, (_, i) => `#${2000 + i}=OFFSET_SURFACE('',#${i + 1 < some ? 2001 + i : 109},1.,.F.);`)]),
    // splines: degrees and multiplicities beyond all measure, knots that fall, points that are no points
    () => held('#100', [...face('#109').filter((line) => !line.startsWith('#108')), ...points(50), `#108=B_SPLINE_CURVE_WITH_KNOTS('',${many},(${row(50, (i) => `#${1000 + i}`)}),.UNSPECIFIED.,.F.,.F.,(${many},${many}),(0.,1.),.UNSPECIFIED.);`]),
    () => held('#100', [...face('#109').filter((line) => !line.startsWith('#108')), ...points(some), `#108=B_SPLINE_CURVE_WITH_KNOTS('',3,(${row(some, (i) => `#${1000 + i}`)}),.UNSPECIFIED.,.F.,.F.,(4,${row(some - 4, () => '1')},4),(${row(some - 2, (i) => `${random() < 0.1 ? -i : i}.`)}),.UNSPECIFIED.);`]),
    () => held('#100', [...face('#110'), ...points(36), `#110=B_SPLINE_SURFACE_WITH_KNOTS('',5,5,(${row(6, (i) => `(${row(6, (j) => `#${1000 + 6 * i + j}`)})`)}),.UNSPECIFIED.,.F.,.F.,.F.,(${many},6),(6,6),(0.,1.),(0.,${random()}),.UNSPECIFIED.);`]),
    // radii and units beyond all measure
    () => held('#100', face('#110').concat(`#110=CYLINDRICAL_SURFACE('',#15,${(10 ** (600 * random() - 300)).toExponential(3).toUpperCase().replace('E+', 'E')});`)),
    () => held('#100', face('#109'), `(CONVERSION_BASED_UNIT('INCH',#20) LENGTH_UNIT() NAMED_UNIT(#21)); #20=LENGTH_MEASURE_WITH_UNIT(LENGTH_MEASURE(1.E300),#11); #21=DIMENSIONAL_EXPONENTS(1.,0.,0.,0.,0.,0.,0.)`),
    // an assembly in which each product holds the next one twice: 2^n bodies
    () => {
      const depth = 4 + Math.floor(26 * random());
      const product = (k: number): string[] => {
        const b = 10_000 + 100 * k;
        return [
          `#${b}=PRODUCT('a${k}','','',(#2));`, `#${b + 1}=PRODUCT_DEFINITION_FORMATION('','',#${b});`, `#${b + 2}=PRODUCT_DEFINITION('design','',#${b + 1},#5);`,
          `#${b + 3}=PRODUCT_DEFINITION_SHAPE('','',#${b + 2});`, `#${b + 4}=SHAPE_DEFINITION_REPRESENTATION(#${b + 3},#${b + 5});`, `#${b + 5}=SHAPE_REPRESENTATION('',(#15),#10);`,
          ...[0, 1].flatMap((copy) => {
            const c = b + 10 + 10 * copy;
            const [below, shape] = k + 1 < depth ? [b + 102, b + 105] : [6, 9];
            return [
              `#${c}=NEXT_ASSEMBLY_USAGE_OCCURRENCE('${k}${copy}','','',#${b + 2},#${below},$);`, `#${c + 1}=PRODUCT_DEFINITION_SHAPE('','',#${c});`,
              `#${c + 2}=CONTEXT_DEPENDENT_SHAPE_REPRESENTATION(#${c + 3},#${c + 1});`,
              `#${c + 3}=(REPRESENTATION_RELATIONSHIP('','',#${shape},#${b + 5}) REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION(#${c + 4}) SHAPE_REPRESENTATION_RELATIONSHIP());`,
              `#${c + 4}=ITEM_DEFINED_TRANSFORMATION('','',#15,#${c + 5});`, `#${c + 5}=AXIS2_PLACEMENT_3D('',#${c + 6},#17,#18);`, `#${c + 6}=CARTESIAN_POINT('',(${copy + 1}.,${k}.,0.));`,
            ];
          }),
        ];
      };
      return held('#100', [...face('#109'), ...Array.from({ length: depth }, (_, k) => product(k)).flat()]);
    },
  ];
};

/** A text with `count` of the places at which a pattern occurs after the header, chosen at random, changed. */
const changed = (text: string, pattern: RegExp, count: number, random: () => number, by: (found: string) => string): string => {
  const from = Math.max(0, text.indexOf('DATA;'));
  const places = [...text.slice(from).matchAll(pattern)];
  if (places.length === 0) return text;
  const chosen = new Map(Array.from({ length: count }, () => places[Math.floor(random() * places.length)]!).map((m) => [m.index + from, m[0]]));
  let [made, at] = ['', 0];
  for (const [index, found] of [...chosen].sort((a, b) => a[0] - b[0])) {
    made += text.slice(at, index) + by(found);
    at = index + found.length;
  }
  return made + text.slice(at);
};

/** A damaged or hostile STEP file by its seed, made from the sound files given (bytes as they are on disk). */
export const damagedStep = (seed: number, sound: readonly Uint8Array[]): Uint8Array => {
  const random = mulberry32(seed);
  const pick = (n: number): number => Math.floor(random() * n);
  const coded = (text: string): Uint8Array => Buffer.from(text, 'latin1');
  if (seed % 8 === 0 || sound.length === 0) {
    const all = traps(random);
    return coded(all[Math.floor(seed / 8) % all.length]!());
  }
  const source = sound[Math.floor(seed / 8) % sound.length]!;
  const text = Buffer.from(source).toString('latin1');
  const few = 1 + pick(12);
  const records = /\n#\d+\s*=[^;]*;/g;
  switch (seed % 8) {
    case 1: {
      const bytes = Uint8Array.from(source);
      for (let k = 1 + pick(40); k > 0; k--) bytes[pick(bytes.length)] = pick(256);
      return bytes;
    }
    case 2:
      // cut at the end, or a piece cut out, closed as a file should be or not
      return coded((random() < 0.5 ? text.slice(0, pick(text.length)) : ((a) => text.slice(0, a) + text.slice(a + pick(text.length / 4)))(pick(text.length))) + (random() < 0.5 ? `\n${TAIL}` : ''));
    case 3:
      return coded(changed(text, /(?<=[(,])\s*-?\d+\.\d*(?:E[+-]?\d+)?/gi, few, random, () => EXTREMES[pick(EXTREMES.length)]!));
    case 4: {
      const numbers = [...text.matchAll(/\n#(\d+)/g)].map((m) => m[1]!);
      return coded(changed(text, /(?<=[(,])\s*#\d+/g, few, random, () => (random() < 0.8 ? `#${numbers[pick(numbers.length)] ?? 1}` : ['#0', '#99999999999', '#', '$', '*'][pick(5)]!)));
    }
    case 5:
      // records left out, or drawn twice under one number
      return coded(changed(text, records, few, random, (found) => (random() < 0.7 ? '' : found + found)));
    case 6: {
      const names = [...new Set([...text.matchAll(/=\s*([A-Z_0-9]+)\s*\(/g)].map((m) => m[1]!))];
      return coded(changed(text, /(?<=\n#\d+\s*=\s*)[A-Z_0-9]+/g, few, random, () => names[pick(names.length)] ?? 'POINT'));
    }
    default:
      // numbers moved a little or multiplied: bodies that do not close, radii that do not fit
      return coded(changed(text, /(?<=[(,])\s*-?\d+\.\d*(?:E[+-]?\d+)?/gi, 10 * few, random, (found) => {
        const x = Number(found) * (random() < 0.5 ? 1 + (random() - 0.5) * 10 ** (-6 * random()) : 10 ** (12 * random() - 6));
        const words = String(x).toUpperCase();
        return /[.E]/.test(words) ? words : `${words}.`;
      }));
  }
};
