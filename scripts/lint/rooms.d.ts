import type { Rule } from 'eslint';

export declare const rooms: readonly string[];
export declare const pureRooms: readonly string[];
export declare const imports: Rule.RuleModule;
export declare const pure: Rule.RuleModule;
