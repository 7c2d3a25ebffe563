import {jsonSchema} from '../records/schema/index.ts';
import type {Command} from './command.ts';

export const command: Command = {
  declare() {},
  async run(invocation) {
    const schema = jsonSchema();
    invocation.answer(schema, () => JSON.stringify(schema, null, 2));
  },
};
