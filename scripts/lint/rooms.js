import { dirname, resolve, sep } from 'node:path';

/** The rooms of src/, in order: a file imports only from its own room and from rooms to the left of it. */
export const rooms = [
  'geometry', 'metal', 'forming', 'sheet', 'shop', 'trial', 'proof', 'stroke', 'fit',
  'intake', 'papers', 'store', 'server', 'cli', 'web',
];

/** Rooms whose code runs unchanged in Node, in a worker and in a browser. */
export const pureRooms = rooms.slice(0, rooms.indexOf('fit') + 1);

/** Of these the proof may know the types alone: it is independent of the code that it checks. */
const typesOnlyForProof = new Set(['sheet', 'shop', 'trial']);
const webPackages = /^(react|react-dom|three|@react-three\/fiber|@fontsource\/[^/]+)(\/|$)/;
const test = /\.test\.tsx?$/;

/** Where a path lies: { room, inside } with `inside` the path within the room, or null outside src's rooms. */
const place = (path) => {
  const parts = path.split(sep).join('/').split('/');
  const at = parts.lastIndexOf('src');
  const room = parts[at + 1];
  return at >= 0 && rooms.includes(room) ? { room, inside: parts.slice(at + 2).join('/') } : null;
};

const onlyTypes = (node) => {
  if (node.type === 'TSImportType') return true;
  if (node.importKind === 'type' || node.exportKind === 'type') return true;
  const specifiers = node.specifiers ?? [];
  return specifiers.length > 0 && specifiers.every((s) => s.importKind === 'type' || s.exportKind === 'type');
};

/** The message id for an import of `to` in `from`, or null where it is allowed. */
const faultOf = (from, to, types) => {
  if (to.room === from.room) return null;
  if (to.inside !== 'index.js') return 'door';
  if (from.room === 'web') return pureRooms.includes(to.room) || types ? null : 'web';
  if (rooms.indexOf(to.room) > rooms.indexOf(from.room)) return 'order';
  if (from.room === 'proof' && typesOnlyForProof.has(to.room) && !types) return 'proof';
  return null;
};

/** Holds the directions between the rooms. Tests may import what they like: an oracle may lie in any room. */
export const imports = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      door: "'{{to}}' is entered by its door only: import from '../{{to}}/index.js'.",
      order: "'{{from}}' may not import from '{{to}}', which lies below it (docs/architecture.md).",
      proof: "'proof' may import only types from '{{to}}': it checks that room's work.",
      web: "'web' may import from the pure rooms; of '{{to}}' it may know types only.",
      package: "'web' may not use the package '{{to}}'.",
      nowhere: 'A file of src/ lies in one of the rooms: {{to}}.',
    },
  },
  create(context) {
    const path = context.filename;
    const from = place(path);
    if (test.test(path)) return {};
    const check = (node, source) => {
      if (typeof source?.value !== 'string' || from === null) return;
      const name = source.value;
      const report = (messageId, to) => context.report({ node: source, messageId, data: { from: from.room, to } });
      if (!name.startsWith('.')) {
        if (from.room === 'web' && !webPackages.test(name)) report('package', name);
        return;
      }
      const to = place(resolve(dirname(path), name));
      const fault = to && faultOf(from, to, onlyTypes(node));
      if (fault) report(fault, to.room);
    };
    return {
      Program: (node) => {
        if (from === null) context.report({ node, messageId: 'nowhere', data: { to: rooms.join(', ') } });
      },
      ImportDeclaration: (node) => check(node, node.source),
      ExportNamedDeclaration: (node) => check(node, node.source),
      ExportAllDeclaration: (node) => check(node, node.source),
      ImportExpression: (node) => check(node, node.source),
      TSImportType: (node) => check(node, node.source),
    };
  },
};

const impureGlobals = new Set([
  'process', 'document', 'window', 'navigator', 'performance', 'localStorage', 'fetch', 'setTimeout', 'setInterval', 'Buffer', 'console',
]);
const impureMembers = { Date: new Set(['now']), Math: new Set(['random']) };

/** Keeps files, clock, chance, page and process out of the pure rooms. */
export const pure = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      node: "'{{room}}' is pure: it may not import '{{what}}'.",
      global: "'{{room}}' is pure: it may not use {{what}}; let the caller hand it in.",
    },
  },
  create(context) {
    const room = place(context.filename)?.room;
    if (!pureRooms.includes(room) || test.test(context.filename)) return {};
    const forbidNode = (source) => {
      if (typeof source?.value === 'string' && source.value.startsWith('node:')) {
        context.report({ node: source, messageId: 'node', data: { room, what: source.value } });
      }
    };
    const global = (node, what) => context.report({ node, messageId: 'global', data: { room, what } });
    return {
      ImportDeclaration: (node) => forbidNode(node.source),
      ExportNamedDeclaration: (node) => forbidNode(node.source),
      ExportAllDeclaration: (node) => forbidNode(node.source),
      ImportExpression: (node) => forbidNode(node.source),
      NewExpression: (node) => {
        if (node.callee.name === 'Date' && node.arguments.length === 0) global(node, 'new Date()');
      },
      MemberExpression: (node) => {
        if (node.computed || !impureMembers[node.object.name]?.has(node.property.name)) return;
        global(node, `${node.object.name}.${node.property.name}`);
      },
      'Program:exit': (node) => {
        // names that no scope of the file declares are globals
        const scope = context.sourceCode.getScope(node);
        for (const { identifier, isTypeReference } of scope.through) {
          if (!isTypeReference && impureGlobals.has(identifier.name)) global(identifier, identifier.name);
        }
      },
    };
  },
};
