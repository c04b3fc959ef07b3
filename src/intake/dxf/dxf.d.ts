/** What is used of the `dxf` package, which has no types of its own: its plain reading of a file, entity by entity. */
declare module 'dxf' {
  interface DxfPoint {
    readonly x?: number;
    readonly y?: number;
    readonly z?: number;
    readonly bulge?: number;
  }
  interface DxfEntity {
    readonly type: string;
    readonly layer?: string;
    readonly lineTypeName?: string;
    readonly visible?: boolean;
    readonly paperSpace?: number;
    readonly extrusionZ?: number;
    readonly x?: number;
    readonly y?: number;
    readonly r?: number;
    /** Radians, for arcs and ellipses alike. */
    readonly startAngle?: number;
    readonly endAngle?: number;
    readonly start?: DxfPoint;
    readonly end?: DxfPoint;
    readonly vertices?: readonly DxfPoint[];
    readonly closed?: boolean;
    readonly polygonMesh?: boolean;
    readonly polyfaceMesh?: boolean;
    readonly majorX?: number;
    readonly majorY?: number;
    readonly axisRatio?: number;
    readonly controlPoints?: readonly DxfPoint[];
    readonly knots?: readonly number[];
    readonly weights?: readonly number[];
    readonly degree?: number;
    /** Of writing. */
    readonly string?: string;
    readonly textHeight?: number;
    readonly nominalTextHeight?: number;
    readonly x2?: number;
    readonly y2?: number;
    readonly hAlign?: number;
    readonly vAlign?: number;
    readonly xAxisX?: number;
    readonly xAxisY?: number;
    readonly attachmentPoint?: number;
    /** Of an insert. */
    readonly block?: string;
    readonly scaleX?: number;
    readonly scaleY?: number;
    readonly rotation?: number;
    readonly rowCount?: number;
    readonly columnCount?: number;
    readonly rowSpacing?: number;
    readonly columnSpacing?: number;
  }
  interface DxfFile {
    readonly header: { readonly insUnits?: number; readonly measurement?: number };
    readonly tables: {
      readonly layers: Readonly<Record<string, { readonly lineTypeName?: string; readonly flags?: number; readonly colorNumber?: number }>>;
    };
    readonly blocks: readonly { readonly name?: string; readonly x?: number; readonly y?: number; readonly entities: readonly DxfEntity[] }[];
    readonly entities: readonly DxfEntity[];
  }
  export const parseString: (text: string) => DxfFile;
}
