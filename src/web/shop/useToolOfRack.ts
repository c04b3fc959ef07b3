import { useMemo, useState } from 'react';
import { type Tool, parseRack } from '../../shop/index.js';
import { FRESH_TOOLS } from './freshTools.js';
import { type Tree, at, isTree } from './tree.js';
import { type Draft, useDraft } from './useDraft.js';
import { useEntry } from './useEntry.js';

export type ToolList = 'punches' | 'dies' | 'risers';
const LISTS: readonly ToolList[] = ['punches', 'dies', 'risers'];

const listOf = (tool: Tree): ToolList => (tool['kind'] === 'punch' ? 'punches' : tool['kind'] === 'die' ? 'dies' : 'risers');

/** The tool of an id in a rack's data. */
const toolIn = (rack: unknown, id: string): unknown => LISTS.flatMap((list) => (at(rack, list) ?? []) as readonly Tree[]).find((tool) => tool['id'] === id);

/** The tool as the rack's parser reads it, alone so that its own faults are told first; then its id beside the others. */
const readTool = (rack: Tree, list: ToolList, tool: Tree, before: Tree | undefined): ReturnType<typeof parseRack> => {
  const read = parseRack({ ...rack, punches: [], dies: [], risers: [], [list]: [tool] });
  const others = LISTS.flatMap((l) => rack[l] as readonly Tree[]).filter((t) => t !== before);
  if (!read.ok || !others.some((t) => t['id'] === tool['id'])) return read;
  const id = String(tool['id']);
  return { ok: false, fault: { code: 'sense', entry: id, field: 'id', sentence: `${id}: id ('${id}') names another tool of this rack; each needs its own.` } };
};

/**
 * One tool of a rack as it is typed on: where it stands, how it reads, the rack with it and without it. `id` may be 'new-punch', 'new-die' or
 * 'new-riser'; what is typed is held in this tab until it is kept or forgotten.
 */
export const useToolOfRack = (rackId: string, id: string) => {
  const rackPath = `/api/racks/${encodeURIComponent(rackId)}`;
  const entry = useEntry(rackPath);
  const [draft, setDraft] = useDraft(`tool ${rackId} ${id}`);
  const after = draft?.after ?? entry.latest;
  const forget = draft && ((): void => { setDraft(undefined); entry.again(); });
  const rack = entry.value?.data as Readonly<Record<ToolList, readonly Tree[]>> & Tree | undefined;
  const fresh = FRESH_TOOLS[id];
  const list = fresh?.[0] ?? LISTS.find((l) => rack?.[l].some((t) => t['id'] === id)) ?? (draft && isTree(draft.data) ? listOf(draft.data) : undefined);
  const before = fresh?.[1] ?? (rack && list ? rack[list].find((t) => t['id'] === id) : undefined);
  const tool = draft && isTree(draft.data) ? draft.data : before;
  const read = useMemo(() => (rack && list && tool ? readTool(rack, list, tool, before) : undefined), [rack, list, tool, before]);
  const good: Tool | undefined = read?.ok ? [...read.value.punches, ...read.value.dies][0] : undefined;
  const [last, setLast] = useState<Tool>();
  if (good && good !== last) setLast(good);
  // one that somebody else took out while it was typed on comes back with what was typed
  const next = rack && list && tool ? { ...rack, [list]: rack[list].some((t) => t === before) ? rack[list].map((t) => (t === before ? tool : t)) : [...rack[list], tool] } : undefined;
  const without = rack && list && !fresh && before ? { ...rack, [list]: rack[list].filter((t) => t !== before) } : undefined;
  return {
    entry, isNew: fresh !== undefined, rack, list, tool, read, next, without, after, forget,
    /** The tool as it was last right, and whether it is now. */
    last, good: good !== undefined,
    changed: fresh !== undefined || (draft !== undefined && JSON.stringify(draft.data) !== JSON.stringify(before)),
    /** There is something to type on: nothing is typed before the revision of the rack that it follows is here. */
    ready: rack !== undefined || draft !== undefined,
    type: (data: unknown): void => setDraft({ after, data }),
    /** How it is brought together with what somebody else kept of the rack meanwhile. */
    merge: { path: rackPath, mine: tool, of: (data: unknown) => toolIn(data, id), take: (typed: Draft): void => { setDraft(typed); entry.again(); } },
    kept: (): void => { setDraft(undefined); entry.again(); },
  };
};
